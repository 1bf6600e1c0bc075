#include "solver/panel/support_reactions.h"
#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/stages/support_series.h"
#include "viz/wall/panel_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace deadshore::viz {
namespace {

using solver::JobResult;

constexpr double axis_room = 38.0;  ///< left of the plots, for the figures
constexpr double base_height = 130.0;
constexpr double other_height = 200.0;
constexpr double plot_gap = 14.0;
constexpr double name_room = 78.0;  ///< under the plots, for the stages' names
const TextStyle axis_style{.size = 7.0};

/// Steps of the value axis above and below 0: a pier may be held down.
struct ValueScale {
  double step = 1.0;
  int above = 1;
  int below = 0;

  [[nodiscard]] double height(const Rect& box, double value) const {
    return box.bottom - box.height() * (value / step + below) / (above + below);
  }
};

/// How a support's line looks: told from the others by marker and dashes, not by colour alone.
struct Look {
  Pen pen;
  int sides = 4;  ///< of the marker; 0 for a disc
  double turn = 0.0;
  bool hollow = false;
};

Look look_of(solver::SupportKind kind, std::size_t number) {
  static const std::array<std::vector<double>, 4> dashes{
      std::vector<double>{}, {5.0, 2.0}, {2.0, 1.5}, {6.0, 1.5, 1.5, 1.5}};
  Look look;
  look.pen = {.colour = support, .width = 1.1, .dash = dashes[number % dashes.size()]};
  const bool joists = kind == solver::SupportKind::joists;
  const solver::SupportGroup group = solver::group_of(kind);
  if (group == solver::SupportGroup::bases) look.pen.colour = ink;
  if (group == solver::SupportGroup::beam_ends)
    look.pen = {ink, 1.8, dashes[number % dashes.size()]};
  if (joists) look.pen = {tension, 1.4, dashes[2]};
  constexpr std::array sides{0, 4, 3, 4};
  constexpr std::array turns{0.0, 0.25, 0.5, 0.0};
  look.sides = sides[number % sides.size()];
  look.turn = turns[number % turns.size()] * std::numbers::pi;
  look.hollow = (number / sides.size()) % 2 == 1 || joists;
  return look;
}

void draw_marker(Canvas& canvas, PagePoint at, const Look& look) {
  const int corners = look.sides == 0 ? 16 : look.sides;
  const double radius = look.sides == 0 ? 2.1 : 2.7;
  Loop loop;
  for (int i = 0; i < corners; ++i) {
    const double angle = look.turn + 2.0 * std::numbers::pi * i / corners -
                         (look.sides == 3 ? std::numbers::pi : 0.0);
    loop.push_back({at.x + radius * std::cos(angle), at.y + radius * std::sin(angle)});
  }
  canvas.fill(std::array{loop}, look.hollow ? white : look.pen.colour);
  canvas.outline(std::array{loop}, {.colour = look.pen.colour, .width = 0.8});
}

/// A support's line in one plot: its points on the page, those that are not there left out.
struct Line {
  std::string name;
  Look look;
  std::vector<std::optional<PagePoint>> points;
};

/// A plot: one kind of masonry, piers or the other supports.
struct Plot {
  Rect box;
  std::vector<Line> lines;
};

/// Joists are drawn apart from the needles of their group.
std::size_t number_of_look(solver::SupportKind kind) {
  return kind == solver::SupportKind::joists ? 3 : static_cast<std::size_t>(solver::group_of(kind));
}

bool is_base(const SupportSeries& series) {
  return solver::group_of(series.support.kind) == solver::SupportGroup::bases;
}

double stage_at(const Rect& box, std::size_t stage, std::size_t stages) {
  return box.left + box.width() * (static_cast<double>(stage) + 0.5) / static_cast<double>(stages);
}

Plot plot_of(const std::vector<SupportSeries>& series, bool bases, const Rect& box,
             const ValueScale& scale) {
  Plot plot{box, {}};
  std::array<std::size_t, 4> numbers{};
  for (const SupportSeries& support : series) {
    if (is_base(support) != bases) continue;
    const solver::SupportKind kind = support.support.kind;
    const std::size_t number = numbers.at(number_of_look(kind))++;
    Line line{support.name, look_of(kind, number), {}};
    for (std::size_t i = 0; i < support.values.size(); ++i) {
      const double value = support.values[i];
      line.points.emplace_back();
      if (std::isfinite(value))
        line.points.back() =
            PagePoint{stage_at(box, i, support.values.size()), scale.height(box, value)};
    }
    plot.lines.push_back(std::move(line));
  }
  return plot;
}

void draw_axes(Canvas& canvas, const Rect& box, const ValueScale& scale, std::size_t stages,
               bool with_figures) {
  for (int k = -scale.below; k <= scale.above; ++k) {
    const double y = scale.height(box, k * scale.step);
    canvas.line({box.left, y}, {box.right, y},
                {.colour = k == 0 ? ink : coursing, .width = k == 0 ? 0.9 : 0.5});
    if (with_figures)
      canvas.text({box.left - 4.0, y}, short_number(k * scale.step), axis_style, {1.0, 0.5});
  }
  for (std::size_t i = 0; i < stages; ++i) {
    const double x = stage_at(box, i, stages);
    canvas.line({x, box.top}, {x, box.bottom},
                {.colour = coursing, .width = 0.4, .dash = {1.0, 2.0}});
  }
}

/// Boxes along a line and at its markers, to keep labels off it.
std::vector<Rect> boxes_along(const Line& line) {
  std::vector<Rect> boxes;
  for (std::size_t i = 0; i < line.points.size(); ++i) {
    if (!line.points[i]) continue;
    const PagePoint to = *line.points[i];
    boxes.push_back(box_at(to, {6.5, 6.5}, {}));
    if (i == 0 || !line.points[i - 1]) continue;
    const PagePoint from = *line.points[i - 1];
    const int steps = 1 + static_cast<int>(std::hypot(to.x - from.x, to.y - from.y) / 2.5);
    for (int k = 1; k < steps; ++k) {
      const double part = static_cast<double>(k) / steps;
      boxes.push_back(box_at({from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)},
                             {1.4, 1.4}, {}));
    }
  }
  return boxes;
}

void draw_line(Canvas& canvas, const Line& line) {
  std::vector<PagePoint> run;
  for (const auto& point : line.points) {
    if (point) {
      run.push_back(*point);
    } else {
      canvas.path(run, line.look.pen);
      run.clear();
    }
  }
  canvas.path(run, line.look.pen);
  for (const auto& point : line.points)
    if (point) draw_marker(canvas, *point, line.look);
}

TextStyle label_style(const Line& line) {
  return {.size = 7.0,
          .bold = true,
          .colour = line.look.pen.colour,
          .width = 110.0,
          .overflow = Overflow::cut_middle};
}

/// Places for a label round a point, `off` from it.
std::array<Rect, 8> places_round(PagePoint at, Size size, double off) {
  return {box_at({at.x, at.y - off}, size, {0.5, 1.0}),
          box_at({at.x + off, at.y}, size, {0.0, 0.5}),
          box_at({at.x - off, at.y}, size, {1.0, 0.5}),
          box_at({at.x + off, at.y - off}, size, {0.0, 1.0}),
          box_at({at.x - off, at.y - off}, size, {1.0, 1.0}),
          box_at({at.x, at.y + off}, size, {0.5, 0.0}),
          box_at({at.x + off, at.y + off}, size, {0.0, 0.0}),
          box_at({at.x - off, at.y + off}, size, {1.0, 0.0})};
}

/// Writes a line's name beside one of its points, the highest first. So near that no other line is
/// as near, or further off with a thin line to the point; where there is no room for either, the
/// legend alone names it.
void label_line(Canvas& canvas, const Line& line, const std::vector<Rect>& others,
                LabelRoom& room) {
  constexpr double beside = 3.6;
  std::vector<PagePoint> points;
  for (const auto& point : line.points)
    if (point) points.push_back(*point);
  std::stable_sort(points.begin(), points.end(),
                   [](const PagePoint& a, const PagePoint& b) { return a.y < b.y; });
  const TextStyle style = label_style(line);
  const Size size = text_size(line.name, style);
  const auto is_its_own = [&](const Rect& box) {
    const Rect wide{box.left - 4.0, box.top - 4.0, box.right + 4.0, box.bottom + 4.0};
    return std::none_of(others.begin(), others.end(),
                        [&](const Rect& other) { return other.overlaps(wide); });
  };
  for (const double off : {beside, 12.0, 18.0, 26.0, 36.0})
    for (const PagePoint& at : points)
      for (const Rect& place : places_round(at, size, off)) {
        if (!room.is_free(place) || (off == beside && !is_its_own(place))) continue;
        room.take(place);
        const PagePoint near{std::clamp(at.x, place.left, place.right),
                             std::clamp(at.y, place.top, place.bottom)};
        if (off > beside) canvas.line(at, near, {.colour = line.look.pen.colour, .width = 0.4});
        canvas.text({place.left, place.top}, line.name, style, {0.0, 0.0});
        return;
      }
}

/// All lines of a plot, then their names.
void draw_lines(Canvas& canvas, const Plot& plot, LabelRoom& room) {
  std::vector<std::vector<Rect>> boxes;
  for (const Line& line : plot.lines) {
    draw_line(canvas, line);
    boxes.push_back(boxes_along(line));
    for (const Rect& box : boxes.back()) room.take(box);
  }
  for (std::size_t i = 0; i < plot.lines.size(); ++i) {
    std::vector<Rect> others;
    for (std::size_t k = 0; k < boxes.size(); ++k)
      if (k != i) others.insert(others.end(), boxes[k].begin(), boxes[k].end());
    label_line(canvas, plot.lines[i], others, room);
  }
}

LegendEntry entry_of(const Line& line) {
  return {[line](Canvas& canvas, const Rect& box) {
            canvas.line({box.left, box.middle().y}, {box.right, box.middle().y}, line.look.pen);
            draw_marker(canvas, box.middle(), line.look);
          },
          line.name};
}

/// Stages without values: the wall does not stand there.
std::vector<std::size_t> fallen_stages(const JobResult& result, solver::MasonryModel model) {
  std::vector<std::size_t> fallen;
  for (std::size_t i = 0; i < result.stages.size(); ++i)
    for (const solver::PanelResult& panel : result.stages[i].analyses)
      if (panel.model == model && !panel.stands()) fallen.push_back(i);
  return fallen;
}

/// One scale for all models, with room for names over the highest points.
ValueScale scale_of(const std::vector<std::vector<SupportSeries>>& all, bool bases) {
  double largest = 0.0;
  double least = 0.0;
  for (const auto& series : all)
    for (const SupportSeries& support : series)
      if (is_base(support) == bases)
        for (const double value : support.values) {
          largest = std::fmax(largest, value);
          least = std::fmin(least, value);
        }
  const BandScale even = even_scale(1.15 * largest);
  const int below = static_cast<int>(std::ceil(-least / even.step - 0.02));
  return {even.step, even.count, std::clamp(below, 0, 2 * even.count)};
}

/// Everything in one column of the chart: a model's two plots.
struct Column {
  std::string heading;
  std::array<Plot, 2> plots;
  std::vector<std::size_t> fallen;
};

void draw_column(Canvas& canvas, const Column& column, const std::array<ValueScale, 2>& scales,
                 const std::vector<std::string>& stages, bool first) {
  canvas.text({column.plots[0].box.left, column.plots[0].box.top - 6.0}, column.heading,
              {.size = 7.5, .bold = true}, {0.0, 1.0});
  for (std::size_t row = 0; row < 2; ++row) {
    const Plot& plot = column.plots[row];
    draw_axes(canvas, plot.box, scales[row], stages.size(), first);
    LabelRoom room({plot.box.left, plot.box.top - 4.0, plot.box.right + 2.0, plot.box.bottom});
    for (const std::size_t stage : column.fallen)
      room.take(
          canvas.upright_text({stage_at(plot.box, stage, stages.size()), plot.box.bottom - 4.0},
                              "no equilibrium", {.size = 7.0, .colour = quiet_ink}, {0.5, 1.0}));
    draw_lines(canvas, plot, room);
  }
  for (std::size_t i = 0; i < stages.size(); ++i)
    canvas.upright_text(
        {stage_at(column.plots[1].box, i, stages.size()), column.plots[1].box.bottom + 4.0},
        stages[i], {.size = 7.0, .width = name_room - 8.0}, {0.5, 0.0});
}

}  // namespace

Drawing stage_reactions(const JobResult& result) {
  std::vector<std::string> stages;
  for (std::size_t i = 0; i < result.stages.size(); ++i)
    stages.push_back(fmt::format("{}  {}", i + 1, result.stages[i].name));
  const auto& models = result.job.analysis.masonry;
  std::vector<std::vector<SupportSeries>> series;
  series.reserve(models.size());
  for (const solver::MasonryModel model : models) series.push_back(support_series(result, model));
  const std::array scales{scale_of(series, true), scale_of(series, false)};

  const double top = heading_height + 20.0;
  const double width = page_width - axis_room - 8.0;
  const double columns = static_cast<double>(std::max<std::size_t>(1, models.size()));
  const double pitch = (width + plot_gap) / columns;
  std::vector<Column> drawn;
  std::vector<LegendEntry> legend;
  for (std::size_t m = 0; m < models.size(); ++m) {
    const double left = axis_room + pitch * static_cast<double>(m);
    const Rect upper{left, top, left + pitch - plot_gap, top + base_height};
    const Rect lower{left, upper.bottom + plot_gap, upper.right,
                     upper.bottom + plot_gap + other_height};
    drawn.push_back(
        {masonry_words(models[m]),
         {plot_of(series[m], true, upper, scales[0]), plot_of(series[m], false, lower, scales[1])},
         fallen_stages(result, models[m])});
  }
  for (const Column& column : drawn)
    for (const Plot& plot : column.plots)
      for (const Line& line : plot.lines)
        if (std::none_of(legend.begin(), legend.end(),
                         [&](const LegendEntry& entry) { return entry.text == line.name; }))
          legend.push_back(entry_of(line));
  const double legend_top = top + base_height + plot_gap + other_height + name_room;
  const Size size{page_width, legend_top + legend_height(legend, page_width - 8.0) + 4.0};

  return {
      size, [=, title = result.job.title](Canvas& canvas) {
        draw_heading(canvas, "What the supports carry, stage by stage", title);
        canvas.upright_text({8.0, top + 0.5 * base_height}, "piers, kN", {.size = 7.5}, {0.0, 0.5});
        canvas.upright_text({8.0, top + base_height + plot_gap + 0.5 * other_height},
                            "needles, beam, joists, kN", {.size = 7.5}, {0.0, 0.5});
        for (std::size_t m = 0; m < drawn.size(); ++m)
          draw_column(canvas, drawn[m], scales, stages, m == 0);
        draw_legend(canvas, legend, {4.0, legend_top}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
