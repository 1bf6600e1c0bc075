#include "viz/wall_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr double usual_height = 590.0;  ///< leaves room for a caption on an A4 page
const Pen outline_pen{.colour = ink, .width = 0.7};

/// An I-section seen end-on in the box.
Loop section_loop(const Rect& box) {
  const double flange = 0.17 * box.height();
  const double half_web = std::max(0.5, 0.09 * box.width());
  const double x = box.middle().x;
  return {{box.left, box.top},
          {box.right, box.top},
          {box.right, box.top + flange},
          {x + half_web, box.top + flange},
          {x + half_web, box.bottom - flange},
          {box.right, box.bottom - flange},
          {box.right, box.bottom},
          {box.left, box.bottom},
          {box.left, box.bottom - flange},
          {x - half_web, box.bottom - flange},
          {x - half_web, box.top + flange},
          {box.left, box.top + flange}};
}

Size size_of_lines(std::span<const std::string> lines, const TextStyle& style) {
  Size size;
  for (const std::string& line : lines) {
    const Size one = text_size(line, style);
    size.width = std::max(size.width, one.width);
    size.height += one.height;
  }
  return size;
}

}  // namespace

Loop WallView::at(const Ring& ring) const {
  Loop loop;
  loop.reserve(ring.size());
  for (const mesh::Point& point : ring) loop.push_back(at(point));
  return loop;
}

std::vector<Loop> WallView::at(const Region& region) const {
  std::vector<Loop> loops;
  loops.reserve(region.size());
  for (const Ring& ring : region) loops.push_back(at(ring));
  return loops;
}

Rect WallView::frame(const mesh::WallShape& wall) const {
  return {across(0.0), down(wall.height()), across(wall.length), down(0.0)};
}

WallPage fit_wall(const mesh::WallShape& wall, const Margins& margins) {
  const double wide = page_width - margins.left - margins.right;
  const double high = usual_height - margins.top - margins.bottom;
  WallPage page;
  page.view.scale = std::min(wide / wall.length, high / wall.height());
  page.view.origin.x = margins.left + 0.5 * (wide - page.view.scale * wall.length);
  page.view.origin.y = margins.top + page.view.scale * wall.height();
  page.size = {page_width, page.view.origin.y + margins.bottom};
  return page;
}

void draw_heading(Canvas& canvas, const std::string& heading, const std::string& title) {
  const Rect box = canvas.text({4.0, 2.0}, heading, {.size = 9.0, .bold = true}, {0.0, 0.0});
  const double room = page_width - box.right - 24.0;
  if (room > 60.0 && !title.empty())
    canvas.text({page_width - 4.0, 3.5}, title, {.size = 7.0, .colour = quiet_ink, .width = room},
                {1.0, 0.0});
}

void draw_ground(Canvas& canvas, const WallView& view, const mesh::WallShape& wall) {
  const double left = view.across(0.0) - 10.0;
  const double right = view.across(wall.length) + 10.0;
  const double y = view.down(0.0);
  std::vector<PagePoint> strokes;
  for (double x = left + 4.0; x <= right; x += 6.0)
    strokes.insert(strokes.end(), {{x, y + 0.6}, {x - 4.0, y + 4.6}});
  canvas.strokes(strokes, {.colour = quiet_ink, .width = 0.4});
  canvas.line({left, y + 0.6}, {right, y + 0.6}, {.colour = ink, .width = 1.2});
}

void draw_held_ends(Canvas& canvas, const WallView& view, const solver::Job& job) {
  const auto strip = [&](double x, double top, double side) {
    const Rect box{std::min(view.across(x), view.across(x) + side * held_strip), view.down(top),
                   std::max(view.across(x), view.across(x) + side * held_strip),
                   view.down(job.wall.cut.soffit)};
    canvas.hatch(std::array{loop_of(box)}, {.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2});
    canvas.line({view.across(x), box.top}, {view.across(x), box.bottom}, {.width = 1.4});
  };
  if (job.left_end == solver::WallEnd::held) strip(0.0, job.wall.top_at(0.0), -1.0);
  if (job.right_end == solver::WallEnd::held)
    strip(job.wall.length, job.wall.top_at(job.wall.length), 1.0);
}

void draw_lintels(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                  LintelStyle style) {
  for (const mesh::LintelShape& lintel : wall.lintels) {
    const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
    const Rect box{view.across(extent.x.from), view.down(extent.y.to), view.across(extent.x.to),
                   view.down(extent.y.from)};
    if (style == LintelStyle::filled) canvas.fill(box, lintel_tint);
    canvas.outline(box, outline_pen);
  }
}

Rect needle_box(const WallView& view, const solver::Job& job, const solver::Needle& needle) {
  const double width = std::max(4.0, view.scale * needle.bearing_width);
  const double top = view.down(job.wall.cut.soffit) + 0.6;
  const double x = view.across(needle.x);
  return {x - 0.5 * width, top, x + 0.5 * width, top + std::clamp(1.1 * width, 6.0, 14.0)};
}

void draw_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                  std::span<const std::vector<std::string>> lines, std::span<const char> with_arrow,
                  LabelRoom& room) {
  const bool any_arrow = std::find(with_arrow.begin(), with_arrow.end(), 1) != with_arrow.end();
  const double shaft = any_arrow ? 20.0 : 1.0;
  const TextStyle style{.size = 7.5, .colour = support};
  const TextStyle mark_style{.size = 7.5, .bold = true, .colour = support};
  for (const solver::Needle& needle : job.needles) {
    Rect box = needle_box(view, job, needle);
    canvas.fill(std::array{section_loop(box)}, support);
    box.bottom += shaft;
    room.take(box);
  }
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Rect box = needle_box(view, job, job.needles[i]);
    const double x = box.middle().x;
    const double tail = box.bottom + shaft;
    Size size = size_of_lines(lines[i], mark_style);
    size.width += 2.0;
    const auto place =
        room.place(boxes_below(box_at({x, tail + 1.0}, size, {0.5, 0.0}), size.height + 1.0, 6));
    if (!place) continue;
    if (with_arrow[i] != 0)
      canvas.arrow({x, tail}, {x, box.bottom + 1.0}, {.colour = support, .width = 1.1});
    if (place->top > tail + 2.0)
      canvas.line({x, tail}, {x, place->top},
                  {.colour = support, .width = 0.4, .dash = {1.5, 1.5}});
    double y = place->top;
    for (std::size_t row = 0; row < lines[i].size(); ++row) {
      TextStyle fitted = row == 0 ? mark_style : style;
      y = canvas.text({x, y}, lines[i][row], fitted, {0.5, 0.0}).bottom;
    }
  }
}

Rect plate_box(PagePoint at, const std::string& text, const TextStyle& style) {
  const Size size = text_size(text, style);
  return box_at(at, {size.width + 4.0, size.height + 1.0}, {});
}

bool draw_plate(Canvas& canvas, LabelRoom& room, const std::string& text, const TextStyle& style,
                std::span<const Rect> candidates) {
  const auto place = room.place(candidates);
  if (!place) return false;
  canvas.fill(*place, white, 0.85);
  canvas.text(place->middle(), text, style, {});
  return true;
}

std::string short_number(double value) {
  const double size = std::abs(value);
  const int figures = size >= 100.0 || size == 0.0 ? 0 : size >= 10.0 ? 1 : size >= 0.1 ? 2 : 4;
  std::string text = fmt::format("{:.{}f}", value, figures);
  if (figures > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

std::string in_kN(double newtons) {
  return fmt::format("{:.1f} kN", newtons / 1000.0);
}

}  // namespace deadshore::viz
