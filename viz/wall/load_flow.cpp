#include "solver/spread/spread.h"
#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/page/round_number.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/stress_lines.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <numbers>
#include <set>
#include <utility>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double line_spacing = 8.5;   ///< between lines on the page, points
constexpr double trace_step = 0.9;     ///< along a line on the page, points
constexpr std::size_t least_run = 10;  ///< points of a line that make a thickness of their own
constexpr std::array<double, 3> widths{0.45, 1.0, 1.8};  ///< of compression by its size, points
const Pen tension_pen{.colour = tension, .width = 0.9, .dash = {2.6, 1.3}};
const Pen spread_pen{.colour = support, .width = 1.1, .dash = {5.0, 3.0}};

Pen compression_pen(int weight) {
  return {.colour = ink, .width = widths.at(static_cast<std::size_t>(weight))};
}

int weight_of(double size, const FlowScale& scale) {
  return size >= scale.heavy ? 2 : size >= scale.medium ? 1 : 0;
}

/// The weight of a line at each of its points; stretches that are too short to be told take that
/// before them.
std::vector<int> weights_along(const StressLine& line, const FlowScale& scale) {
  std::vector<int> weights;
  for (const StressPoint& point : line) weights.push_back(weight_of(point.size, scale));
  for (std::size_t first = 0, last = 0; first < weights.size(); first = last) {
    while (last < weights.size() && weights[last] == weights[first]) ++last;
    if (first > 0 && last - first < least_run)
      std::fill(weights.begin() + static_cast<std::ptrdiff_t>(first),
                weights.begin() + static_cast<std::ptrdiff_t>(last), weights[first - 1]);
  }
  return weights;
}

/// A path without points between which it hardly turns: a twentieth of a point off at
/// the most, and a third of the file.
std::vector<PagePoint> thinned(const std::vector<PagePoint>& path) {
  constexpr double most_turn = 0.035;  // radians
  constexpr double longest = 12.0;     // points
  std::vector<PagePoint> kept;
  double heading = 0.0;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const PagePoint& here = path[i];
    if (i == 0 || i + 1 == path.size()) {
      kept.push_back(here);
      if (path.size() > 1) heading = std::atan2(path[1].y - here.y, path[1].x - here.x);
      continue;
    }
    const double onwards = std::atan2(path[i + 1].y - here.y, path[i + 1].x - here.x);
    const bool turns =
        std::abs(std::remainder(onwards - heading, 2.0 * std::numbers::pi)) > most_turn;
    if (!turns && std::hypot(here.x - kept.back().x, here.y - kept.back().y) < longest) continue;
    kept.push_back(here);
    heading = onwards;
  }
  return kept;
}

void draw_compression(Canvas& canvas, const WallView& view, const std::vector<StressLine>& lines,
                      const FlowScale& scale) {
  for (const StressLine& line : lines) {
    const std::vector<int> weights = weights_along(line, scale);
    for (std::size_t first = 0, last = 0; first < line.size(); first = last) {
      std::vector<PagePoint> path;
      while (last < line.size() && weights[last] == weights[first])
        path.push_back(view.at(line[last++].at));
      // On to where the next stretch begins, so that there is no gap.
      if (last < line.size()) path.push_back(view.at(line[last].at));
      canvas.path(thinned(path), compression_pen(weights[first]));
    }
  }
}

void draw_tension(Canvas& canvas, const WallView& view, const std::vector<StressLine>& lines) {
  for (const StressLine& line : lines) {
    std::vector<PagePoint> path;
    for (const StressPoint& point : line) path.push_back(view.at(point.at));
    canvas.path(thinned(path), tension_pen);
  }
}

/// First over the needles that are in, where the load comes together, then everywhere.
std::vector<mesh::Point> seeds_for(const Job& job, const solver::StageState& works, double pitch) {
  std::vector<mesh::Point> seeds;
  for (std::size_t i = 0; i < job.needles.size() && i < works.needles.size(); ++i)
    if (solver::is_in(works.needles[i]))
      seeds.push_back({job.needles[i].x, job.wall.cut.soffit + 0.3 * pitch});
  const auto grid = seed_grid({{0.0, job.wall.length}, {0.0, job.wall.height()}}, pitch);
  seeds.insert(seeds.end(), grid.begin(), grid.end());
  return seeds;
}

struct FlowLines {
  std::vector<StressLine> pressed;
  std::vector<StressLine> pulled;
};

FlowLines flow_lines(const JobResult& result, const PanelResult& panel,
                     const solver::StageState& works, const FlowScale& scale, double view_scale) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const StressField field(mesh, panel.fields.node_stress, sound_masonry(mesh, panel.fields));
  const StressAt stress = [&](mesh::Point p) { return field.at(p); };
  const double pitch = line_spacing / view_scale;
  const mesh::WallShape& wall = result.job.wall;
  TraceOptions options{.family = StressFamily::pressed,
                       .step = trace_step / view_scale,
                       .least = scale.least,
                       .longest = 2.0 * (wall.length + wall.height())};
  const std::vector<mesh::Point> seeds = seeds_for(result.job, works, pitch);
  FlowLines lines;
  lines.pressed = evenly_spaced_lines(stress, seeds, options, pitch);
  options.family = StressFamily::pulled;
  options.least = scale.tension;
  lines.pulled = evenly_spaced_lines(stress, seeds, options, pitch);
  return lines;
}

void fill_spreads(Canvas& canvas, const WallView& view, const solver::SpreadResult& hand,
                  std::span<const Loop> wall) {
  for (const solver::SpreadSum& sum : hand.needles) {
    if (sum.outline.size() < 3) continue;
    const std::array loops{view.at(sum.outline)};
    canvas.clipped(wall, [&] { canvas.fill(loops, support, 0.08); });
  }
}

void outline_spreads(Canvas& canvas, const WallView& view, const solver::SpreadResult& hand) {
  using Whole = std::pair<double, double>;
  const auto rounded = [](mesh::Point p) { return Whole{std::round(p.x), std::round(p.y)}; };
  std::set<std::pair<Whole, Whole>> sides;
  for (const solver::SpreadSum& sum : hand.needles)
    for (std::size_t i = 0; sum.outline.size() >= 3 && i < sum.outline.size(); ++i) {
      // Neighbours share an upright; twice dashed it would look full.
      const Whole from = rounded(sum.outline[i]);
      const Whole to = rounded(sum.outline[(i + 1) % sum.outline.size()]);
      sides.emplace(std::min(from, to), std::max(from, to));
    }
  for (const auto& [a, b] : sides) {
    const PagePoint from = view.at({a.first, a.second});
    const PagePoint to = view.at({b.first, b.second});
    canvas.line(from, to, {.colour = white, .width = 2.2});
    canvas.line(from, to, spread_pen);
  }
}

/// The spreads of the needles that are in.
solver::SpreadResult spreads_in(solver::SpreadResult hand, const solver::StageState& works) {
  std::vector<solver::SpreadSum> in;
  for (std::size_t i = 0; i < hand.needles.size() && i < works.needles.size(); ++i)
    if (solver::is_in(works.needles[i])) in.push_back(std::move(hand.needles[i]));
  hand.needles = std::move(in);
  return hand;
}

std::vector<LegendEntry> legend_of(const PanelResult& panel, const FlowScale& scale, bool spreads) {
  const std::string heavy = short_number(scale.heavy);
  const std::string medium = short_number(scale.medium);
  std::vector<LegendEntry> entries{
      line_entry(compression_pen(2), fmt::format("compression of {} N/mm² and more", heavy)),
      line_entry(compression_pen(1), fmt::format("{} to {} N/mm²", medium, heavy)),
      line_entry(compression_pen(0), fmt::format("less than {} N/mm²", medium)),
      line_entry(tension_pen,
                 fmt::format("tension of {} N/mm² and more", short_number(scale.tension)))};
  if (spreads) entries.push_back(line_entry(spread_pen, "45-degree spread of the hand method"));
  if (!panel.loose.empty()) entries.push_back(hatch_entry(loose_hatch(), "loose masonry"));
  return entries;
}

}  // namespace

FlowScale flow_scale(const JobResult& result) {
  std::vector<double> values;
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& panel : stage.analyses) {
      if (!panel.stands()) continue;
      const std::vector<char> there = quads_there(result.mesh.quads, panel.fields);
      for (std::size_t i = 0; i < panel.fields.quad_stress.size(); ++i) {
        if (!there.empty() && there.at(i) == 0) continue;
        const double value = -solver::principal_of(panel.fields.quad_stress[i]).minor;
        if (std::isfinite(value)) values.push_back(value);
      }
    }
  double heavy = 1.0;
  if (!values.empty()) {
    const auto rank = values.begin() + static_cast<std::ptrdiff_t>(0.85 * (values.size() - 1));
    std::nth_element(values.begin(), rank, values.end());
    heavy = largest_round(*rank);
  }
  return {heavy, next_round_below(heavy), 0.02 * heavy, 0.1 * heavy};
}

Drawing load_flow(const JobResult& result, const PanelResult& panel, const ShownStage& stage,
                  const FlowScale& scale) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> there = quads_there(mesh, panel.fields);
  const solver::SpreadResult hand = spreads_in(result.hand, stage.works);
  std::vector<LegendEntry> legend = legend_of(panel, scale, !hand.needles.empty());
  const auto works_entries = works_legend(job, stage.works);
  legend.insert(legend.end(), works_entries.begin(), works_entries.end());
  const double legend_room = legend_height(legend, page_width - 8.0);
  const WallPage page = fit_wall(job.wall, {20.0, 20.0, heading_height + 4.0, 12.0 + legend_room});
  const FlowLines lines = flow_lines(result, panel, stage.works, scale, page.view.scale);

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas,
                     heading_with("Where the load flows, " + masonry_words(panel.model), stage),
                     job.title);
        draw_lintels_there(canvas, view, job.wall, stage.works, LintelStyle::filled);
        draw_loose(canvas, view, mesh, panel);
        const std::vector<Loop> outline = view.at(region_of(mesh, there));
        fill_spreads(canvas, view, hand, outline);
        canvas.clipped(outline, [&] {
          draw_tension(canvas, view, lines.pulled);
          draw_compression(canvas, view, lines.pressed, scale);
        });
        canvas.clipped(outline, [&] { outline_spreads(canvas, view, hand); });
        canvas.outline(outline, {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, nullptr, room);
        draw_named_needles(canvas, view, job, stage.works, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
