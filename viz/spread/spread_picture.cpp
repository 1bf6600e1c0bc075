#include "viz/spread/spread_picture.h"

#include "viz/page/page.h"
#include "viz/wall/load_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::SpreadItem;
using solver::SpreadSum;

Rect box_of_disc(PagePoint at) {
  return {at.x - disc_radius, at.y - disc_radius, at.x + disc_radius, at.y + disc_radius};
}

/// Draws one needle's spread on the wall and finds places for the numbers.
class SpreadPicture {
 public:
  SpreadPicture(Canvas& canvas, const WallView& view, const Job& job, const SpreadParts& parts,
                LabelRoom& room)
      : canvas_(canvas), view_(view), job_(job), parts_(parts), room_(room) {}

  void draw_line_loads() {
    const std::vector<double> lifts = row_lifts(job_, spread_row_pitch);
    for (const SpreadStretch& stretch : parts_.line_loads) {
      const solver::LineLoad& load = job_.line_loads.at(static_cast<std::size_t>(stretch.load));
      const double lift = lifts.at(static_cast<std::size_t>(stretch.load));
      const auto height = [&](double x) {
        return view_.down(load.follows_top ? job_.wall.top_at(x) : load.level) - lift;
      };
      const double inside = 1e-6 * stretch.x.length();
      const double left = stretch.x.from + inside;
      const double right = stretch.x.to - inside;
      const int gaps =
          std::max(1, static_cast<int>(std::lround(view_.scale * stretch.x.length() / 8.0)));
      for (int i = 0; i <= gaps; ++i) {
        const double x = left + (right - left) * i / gaps;
        canvas_.arrow({view_.across(x), height(x) - spread_arrow},
                      {view_.across(x), height(x) - 0.6}, {.colour = ink, .width = 0.45});
      }
      Pen bar{.colour = ink, .width = 0.8};
      if (stretch.over >= 0 || stretch.wedge) bar.dash = {2.0, 1.2};
      std::vector<PagePoint> path{{view_.across(left), height(left) - spread_arrow}};
      for (const mesh::Point& corner : job_.wall.top)
        if (load.follows_top && corner.x > left && corner.x < right)
          path.push_back({view_.across(corner.x), height(corner.x) - spread_arrow});
      path.push_back({view_.across(right), height(right) - spread_arrow});
      canvas_.path(path, bar);
      room_.take({view_.across(left), std::min(height(left), height(right)) - spread_arrow,
                  view_.across(right), std::max(height(left), height(right))});
    }
  }

  void draw_point_loads() {
    for (const SpreadStretch& stretch : parts_.point_loads) {
      const solver::PointLoad& load = job_.point_loads.at(static_cast<std::size_t>(stretch.load));
      const PagePoint tip = view_.at({load.x, load.level});
      canvas_.line({view_.across(stretch.x.from), tip.y}, {view_.across(stretch.x.to), tip.y},
                   {.colour = ink, .width = 1.6});
      canvas_.arrow({tip.x, tip.y - 16.0}, {tip.x, tip.y - 0.8}, {.colour = ink, .width = 1.2});
      room_.take({tip.x - 3.0, tip.y - 16.0, tip.x + 3.0, tip.y});
    }
  }

  /// Every number of the sum at each place that it stands for.
  void number(const SpreadSum& sum) {
    int number = 0;
    for (const SpreadItem& item : sum.items) {
      ++number;
      if (item.area > 0.0)
        number_patches(item, number);
      else
        number_loads(item, number);
    }
  }

 private:
  void place(const std::vector<Rect>& candidates, int number) {
    if (const auto box = room_.place(candidates)) draw_disc(canvas_, box->middle(), number);
  }

  [[nodiscard]] static int lintel_of(const SpreadItem& item) {
    const auto* lintel = std::get_if<solver::LintelId>(&item.thing);
    return lintel != nullptr ? static_cast<int>(index_of(*lintel)) : -1;
  }

  /// Once in what comes straight down; once over each opening.
  void number_patches(const SpreadItem& item, int number) {
    const int lintel = lintel_of(item);
    std::vector<int> openings;
    for (const SpreadPatch& patch : parts_.patches)
      if (patch.lintel == lintel && (patch.over >= 0) == item.over_opening &&
          patch.wedge == item.wedge &&
          std::find(openings.begin(), openings.end(), patch.over) == openings.end())
        openings.push_back(patch.over);
    for (const int over : openings) {
      std::vector<const SpreadPatch*> own;
      for (const SpreadPatch& patch : parts_.patches)
        if (patch.lintel == lintel && patch.over == over && patch.wedge == item.wedge)
          own.push_back(&patch);
      place(places_in(own), number);
    }
  }

  /// Where a disc may stand on patches: from the middle of their area outwards, first where it is
  /// inside them, then anywhere near.
  [[nodiscard]] std::vector<Rect> places_in(const std::vector<const SpreadPatch*>& own) const {
    double area = 0.0;
    mesh::Point middle;
    for (const SpreadPatch* patch : own) {
      const double part = area_of({patch->outline});
      for (const mesh::Point& corner : patch->outline) {
        middle.x += 0.25 * part * corner.x;
        middle.y += 0.25 * part * corner.y;
      }
      area += part;
    }
    if (!(area > 0.0)) return {};
    const PagePoint start = view_.at({middle.x / area, middle.y / area});
    std::vector<Rect> inside;
    std::vector<Rect> near;
    for (const Rect& box : boxes_around(box_of_disc(start), {3.0, 3.0}, 40)) {
      const bool in = std::any_of(own.begin(), own.end(), [&](const SpreadPatch* patch) {
        return holds(*patch, box.middle());
      });
      (in ? inside : near).push_back(box);
    }
    inside.insert(inside.end(), near.begin(), near.end());
    return inside;
  }

  [[nodiscard]] bool holds(const SpreadPatch& patch, PagePoint at) const {
    const Loop loop = view_.at(patch.outline);
    if (loop.size() != 4 || at.x < loop[0].x || at.x > loop[1].x) return false;
    const double part = (at.x - loop[0].x) / (loop[1].x - loop[0].x);
    const double foot = loop[0].y + part * (loop[1].y - loop[0].y);
    const double top = loop[3].y + part * (loop[2].y - loop[3].y);
    return at.y <= foot && at.y >= top;
  }

  void number_loads(const SpreadItem& item, int number) {
    const std::vector<double> lifts = row_lifts(job_, spread_row_pitch);
    for (const SpreadStretch& stretch : parts_.line_loads) {
      const auto load = static_cast<std::size_t>(stretch.load);
      if (item.thing != solver::SpreadThing{solver::LineLoadId{load}} ||
          (stretch.over >= 0) != item.over_opening || stretch.wedge != item.wedge)
        continue;
      const double x = stretch.x.middle();
      const double level =
          job_.line_loads[load].follows_top ? job_.wall.top_at(x) : job_.line_loads[load].level;
      place(beside({view_.across(x), view_.down(level) - lifts[load] - spread_arrow - disc_radius}),
            number);
    }
    for (const SpreadStretch& stretch : parts_.point_loads) {
      const auto number_of_load = static_cast<std::size_t>(stretch.load);
      if (item.thing != solver::SpreadThing{solver::PointLoadId{number_of_load}} ||
          (stretch.over >= 0) != item.over_opening || stretch.wedge != item.wedge)
        continue;
      const solver::PointLoad& load = job_.point_loads[number_of_load];
      place(beside({view_.across(load.x), view_.down(load.level) - 16.0 - disc_radius}), number);
    }
  }

  [[nodiscard]] static std::vector<Rect> beside(PagePoint at) {
    return boxes_around(box_of_disc(at), {2.5, 2.5}, 16);
  }

  Canvas& canvas_;
  const WallView& view_;
  const Job& job_;
  const SpreadParts& parts_;
  LabelRoom& room_;
};

}  // namespace

void draw_disc(Canvas& canvas, PagePoint at, int number) {
  const std::array circle{circle_at(at, disc_radius)};
  canvas.fill(circle, white);
  canvas.outline(circle, {.colour = ink, .width = 0.6});
  canvas.text(at, fmt::format("{}", number), {.size = 7.0, .bold = true}, {});
}

Hatch over_opening_hatch() {
  return {.pen = {.colour = support, .width = 0.5}, .spacing = 3.4, .angle = 45.0};
}

Hatch wedge_hatch() {
  return {.pen = {.colour = support, .width = 0.5}, .spacing = 3.4, .angle = 0.0};
}

void fill_patches(Canvas& canvas, const WallView& view, const SpreadParts& parts) {
  std::vector<Loop> straight;
  std::vector<Loop> over;
  std::vector<Loop> wedge;
  for (const SpreadPatch& patch : parts.patches)
    (patch.wedge ? wedge : patch.over < 0 ? straight : over).push_back(view.at(patch.outline));
  canvas.fill(straight, support, spread_shade);
  canvas.hatch(over, over_opening_hatch());
  canvas.hatch(wedge, wedge_hatch());
}

void draw_spread_loads(Canvas& canvas, const WallView& view, const Job& job,
                       const SpreadParts& parts, LabelRoom& room) {
  SpreadPicture picture(canvas, view, job, parts, room);
  picture.draw_line_loads();
  picture.draw_point_loads();
}

void number_spread(Canvas& canvas, const WallView& view, const Job& job, const SpreadParts& parts,
                   const SpreadSum& sum, LabelRoom& room) {
  SpreadPicture(canvas, view, job, parts, room).number(sum);
}

}  // namespace deadshore::viz
