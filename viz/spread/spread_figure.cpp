#include "viz/drawings.h"
#include "viz/page/labels.h"
#include "viz/page/legend.h"
#include "viz/spread/spread_picture.h"
#include "viz/wall/elevation_parts.h"
#include "viz/wall/load_marks.h"
#include "viz/wall/region.h"
#include "viz/wall/wall_view.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {

namespace {

using mesh::Interval;
using solver::Job;
using solver::SpreadSum;

constexpr double figure_width = 86.0 / 25.4 * 72.0;  // two stand side by side
constexpr double side = 8.0;
constexpr double most_height = 230.0;  ///< of the wall shown, points
const Pen break_pen{.colour = quiet_ink, .width = 0.5, .dash = {6.0, 2.0, 1.5, 2.0}};
const Pen wall_pen{.colour = ink, .width = 0.8};
const Pen neighbour_pen{.colour = support, .width = 0.7, .dash = {3.0, 2.0}};
const Pen own_pen{.colour = support, .width = 1.1};

/// The stretch of wall that all these figures of a job show: the cut, and what stands over openings
/// whose jambs bring something to a needle.
mesh::Box window_of(const Job& job) {
  const mesh::WallShape& wall = job.wall;
  Interval x = wall.cut.span();
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const SpreadParts parts = spread_parts(job, static_cast<int>(i));
    for (const SpreadPatch& patch : parts.patches)
      for (const mesh::Point& point : patch.outline)
        x = {std::min(x.from, point.x), std::max(x.to, point.x)};
  }
  const double beside = 0.1 * x.length();
  return {{std::max(0.0, x.from - beside), std::min(wall.length, x.to + beside)},
          {std::max(0.0, wall.cut.soffit - 0.16 * wall.cut.span().length()), wall.height()}};
}

/// What the loads at the wall's top need over it, with their numbers.
double room_over_wall(const Job& job) {
  const double top = job.wall.height() - 1.0;
  const std::vector<double> lifts = row_lifts(job, spread_row_pitch);
  double room = 4.0;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i)
    if (job.line_loads[i].follows_top || job.line_loads[i].level >= top)
      room = std::max(room, lifts[i] + spread_row_pitch + 2.0);
  for (const solver::PointLoad& load : job.point_loads)
    if (load.level >= top) room = std::max(room, 2.0 * spread_row_pitch);
  return room;
}

std::vector<LegendEntry> legend_of(const Job& job, const SpreadParts& parts) {
  std::vector<LegendEntry> entries{{[](Canvas& canvas, const Rect& box) {
                                      canvas.fill(box, support, spread_shade);
                                      canvas.outline(box, own_pen);
                                    },
                                    "comes straight down"}};
  const auto is_over = [](const auto& part) { return part.over >= 0; };
  if (std::any_of(parts.patches.begin(), parts.patches.end(), is_over) ||
      std::any_of(parts.line_loads.begin(), parts.line_loads.end(), is_over) ||
      std::any_of(parts.point_loads.begin(), parts.point_loads.end(), is_over))
    entries.push_back(hatch_entry(over_opening_hatch(),
                                  "over an opening: to its jambs by the lever, a part comes here"));
  const auto is_wedge = [](const auto& part) { return part.wedge; };
  if (std::any_of(parts.patches.begin(), parts.patches.end(), is_wedge) ||
      std::any_of(parts.line_loads.begin(), parts.line_loads.end(), is_wedge) ||
      std::any_of(parts.point_loads.begin(), parts.point_loads.end(), is_wedge))
    entries.push_back(
        hatch_entry(wedge_hatch(), "under the lines: by the lever a part comes here"));
  if (job.needles.size() > 1)
    entries.push_back(line_entry(neighbour_pen, "other spreads, halved where they meet"));
  return entries;
}

/// The wall within the window: its face, its openings and lintels, broken lines where it goes on.
void draw_wall(Canvas& canvas, const WallView& view, const solver::JobResult& result,
               const mesh::Box& window, const SpreadParts& parts) {
  const Job& job = result.job;
  const Rect frame{view.across(window.x.from), view.down(window.y.to), view.across(window.x.to),
                   view.down(window.y.from)};
  const std::vector<Loop> outline = view.at(region_of(result.mesh.quads, quads_as_cut(result)));
  canvas.clipped(std::array{loop_of(frame)}, [&] {
    canvas.fill(outline, masonry_tint);
    draw_lintels_there(canvas, view, job.wall, works_in_the_end(job), LintelStyle::outline);
    fill_patches(canvas, view, parts);
    for (const SpreadSum& other : result.hand.needles)
      if (other.outline.size() >= 3)
        canvas.clipped(outline,
                       [&] { canvas.outline(std::array{view.at(other.outline)}, neighbour_pen); });
  });
  const Rect roomy{frame.left, frame.top - 1.0, frame.right, frame.bottom};
  canvas.clipped(std::array{loop_of(roomy)}, [&] { canvas.outline(outline, wall_pen); });
  const mesh::Cut& cut = job.wall.cut;
  if (window.y.from > 0.0) {
    canvas.line({frame.left, frame.bottom}, {view.across(cut.left), frame.bottom}, break_pen);
    canvas.line({view.across(cut.right), frame.bottom}, {frame.right, frame.bottom}, break_pen);
  }
  if (window.x.from > 0.0)
    canvas.line({frame.left, view.down(job.wall.top_at(window.x.from))}, {frame.left, frame.bottom},
                break_pen);
  if (window.x.to < job.wall.length)
    canvas.line({frame.right, view.down(job.wall.top_at(window.x.to))}, {frame.right, frame.bottom},
                break_pen);
}

/// Openings interrupt it.
void draw_own_outline(Canvas& canvas, const WallView& view, const solver::JobResult& result,
                      const SpreadSum& sum) {
  if (sum.outline.size() < 3) return;
  canvas.clipped(view.at(region_of(result.mesh.quads, quads_as_cut(result))),
                 [&] { canvas.outline(std::array{view.at(sum.outline)}, own_pen); });
}

using solver::SpreadItem;

constexpr double text_indent = 2.0 * disc_radius + 4.0;
const TextStyle small{.size = 7.0};
const TextStyle strong{.size = 7.0, .bold = true};

/// What a line of the sum says, without its load.
std::string words_of(const SpreadItem& item, const Job& job) {
  const std::string round = item.wedge          ? " under the lines, by the lever"
                            : item.over_opening ? " round openings"
                                                : "";
  if (item.area > 0.0)
    return fmt::format("{}{}, {:.3f} m² × {:.2f} kN/m²", item.name, round, item.area / 1e6,
                       item.load / item.area * 1e3);
  if (const auto* line = std::get_if<solver::LineLoadId>(&item.thing)) {
    const solver::LineLoad& load = job.line_loads.at(index_of(*line));
    if (load.characteristic() > 0.0)
      return fmt::format("{}{}, {:.3f} m × {:.2f} kN/m", item.name, round,
                         item.load / load.characteristic() / 1e3, load.characteristic());
  }
  if (const auto* point = std::get_if<solver::PointLoadId>(&item.thing)) {
    const solver::PointLoad& load = job.point_loads.at(index_of(*point));
    const std::string part =
        item.share > 0.9995 ? "all" : fmt::format("{:.1f}%", 100.0 * item.share);
    return fmt::format("{}{}, {} of {}", item.name, round, part,
                       kilonewtons(load.characteristic()));
  }
  return item.name + round;
}

TextStyle words_style(double width) {
  return {.size = 7.0, .width = width - text_indent - 40.0, .overflow = Overflow::wrap};
}

double row_height(const std::string& words, double width) {
  return std::max(2.0 * disc_radius + 1.0, text_size(words, words_style(width)).height + 1.5);
}

}  // namespace

Drawing needle_spread(const solver::JobResult& result, std::size_t needle) {
  const Job& job = result.job;
  const SpreadSum& sum = result.hand.needles.at(needle);
  const SpreadParts parts = spread_parts(job, static_cast<int>(needle));
  const mesh::Box window = window_of(job);
  const std::vector<LegendEntry> legend = legend_of(job, parts);
  const double over = heading_height + room_over_wall(job);
  WallView view;
  view.scale =
      std::min((figure_width - 2.0 * side) / window.x.length(), most_height / window.y.length());
  view.origin = {0.5 * (figure_width - view.scale * window.x.length()) - view.scale * window.x.from,
                 over + view.scale * window.y.to};
  const double table = view.down(window.y.from) + 24.0;
  const double legend_top = table + spread_table_height(sum, job, figure_width - 2.0 * side) + 6.0;
  const Size size{figure_width,
                  legend_top + legend_height(legend, figure_width - 2.0 * side) + 2.0};

  return {size, [=, &result](Canvas& canvas) {
            const Job& drawn = result.job;
            LabelRoom room({2.0, heading_height, figure_width - 2.0, table - 2.0});
            draw_heading(canvas, "By hand: what " + label_of(drawn, sum.support) + " carries", "",
                         figure_width);
            draw_wall(canvas, view, result, window, parts);
            draw_own_outline(canvas, view, result, sum);
            for (std::size_t i = 0; i < drawn.needles.size(); ++i)
              if (i != needle)
                canvas.outline(needle_box(view, drawn, drawn.needles[i]),
                               {.colour = support, .width = 0.5});
            const Rect own = needle_box(view, drawn, drawn.needles[needle]);
            draw_needle_section(canvas, own);
            canvas.arrow({own.middle().x, own.bottom + 14.0}, {own.middle().x, own.bottom + 1.0},
                         {.colour = support, .width = 1.1});
            if (std::isfinite(sum.total))
              canvas.text(
                  {std::clamp(own.middle().x, 60.0, figure_width - 60.0), own.bottom + 14.5},
                  label_of(drawn, sum.support) + " " + exact_kilonewtons(sum.total),
                  {.size = 7.5,
                   .bold = true,
                   .colour = support,
                   .width = 110.0,
                   .overflow = Overflow::cut_middle},
                  {0.5, 0.0});
            draw_spread_loads(canvas, view, drawn, parts, room);
            number_spread(canvas, view, drawn, parts, sum, room);
            draw_spread_table(canvas, sum, drawn, {side, table}, figure_width - 2.0 * side);
            draw_legend(canvas, legend, {side, legend_top}, figure_width - 2.0 * side);
          }};
}

std::string exact_kilonewtons(double newtons) {
  return fmt::format("{:.2f} kN", newtons / 1000.0);
}

double spread_table_height(const SpreadSum& sum, const Job& job, double width) {
  double height = 14.0;
  for (const SpreadItem& item : sum.items) height += row_height(words_of(item, job), width);
  return height;
}

void draw_spread_table(Canvas& canvas, const SpreadSum& sum, const Job& job, PagePoint corner,
                       double width) {
  const double left = corner.x + text_indent;
  const double right = corner.x + width;
  double y = corner.y;
  int number = 0;
  for (const SpreadItem& item : sum.items) {
    const std::string words = words_of(item, job);
    const double height = row_height(words, width);
    const double middle = y + 0.5 * height;
    draw_disc(canvas, {corner.x + disc_radius, middle}, ++number);
    canvas.text({left, middle}, words, words_style(width), {0.0, 0.5});
    canvas.text({right, middle}, exact_kilonewtons(item.load), small, {1.0, 0.5});
    y += height;
  }
  canvas.line({corner.x, y + 1.0}, {right, y + 1.0}, {.colour = ink, .width = 0.7});
  canvas.text({left, y + 3.0}, label_of(job, sum.support) + " by hand",
              {.size = 7.0, .bold = true, .width = words_style(width).width}, {0.0, 0.0});
  if (std::isfinite(sum.total))
    canvas.text({right, y + 3.0}, exact_kilonewtons(sum.total), strong, {1.0, 0.0});
}

}  // namespace deadshore::viz
