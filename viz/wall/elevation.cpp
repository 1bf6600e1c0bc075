#include "solver/job/beam_places.h"
#include "solver/job/cut.h"
#include "solver/study/envelope.h"
#include "viz/drawings.h"
#include "viz/page/dimensions.h"
#include "viz/page/legend.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/elevation_parts.h"
#include "viz/wall/load_marks.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/region.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;

const Pen level_pen{.colour = quiet_ink, .width = 0.3, .dash = {1.0, 2.0}};

void name_beam(Canvas& canvas, const WallView& view, const Job& job, LabelRoom& room) {
  if (!job.beam) return;
  const solver::PermanentBeam& beam = *job.beam;
  const std::string text =
      fmt::format("{}: {}{}", beam.name, beam.count > 1 ? fmt::format("{} × ", beam.count) : "",
                  beam.member.section.name);
  const TextStyle style{
      .size = 7.5, .bold = true, .width = 0.8 * view.scale * job.wall.cut.span().length()};
  const mesh::Box place = solver::places_of_beam(job).beam;
  const PagePoint middle = view.at({place.x.middle(), place.y.from});
  draw_plate(canvas, room, text, style,
             boxes_around(plate_box({middle.x, middle.y + 42.0}, text, style), {8.0, 5.0}, 14));
}

void name_openings(Canvas& canvas, const WallView& view, const Job& job, bool staged,
                   LabelRoom& room) {
  for (const mesh::Opening& opening : job.wall.openings) {
    if (staged && solver::takes_out(job.wall.cut, opening)) continue;
    room.take({view.across(opening.left), view.down(opening.crown()), view.across(opening.right()),
               view.down(opening.sill)});
    const double width = view.scale * opening.width - 4.0;
    if (width < 12.0) continue;
    const TextStyle style{
        .size = 7.0, .colour = quiet_ink, .width = width, .overflow = Overflow::wrap};
    const Size size = text_size(opening.name, style);
    if (size.height > view.scale * opening.height - 2.0) continue;
    const PagePoint middle =
        view.at({opening.span().middle(), opening.sill + 0.5 * opening.height});
    canvas.text(middle, opening.name, style, {});
  }
}

/// What the needles are designed for; the hand method alone where the wall does not stand.
struct NeedleLoads {
  std::vector<double> newtons;
  bool by_hand_alone = false;
};

NeedleLoads needle_loads(const JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = solver::envelope_of(result);
  NeedleLoads loads;
  loads.by_hand_alone = result.stages.empty() || envelope.empty();
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const double by_hand =
        i < result.hand.needles.size() ? result.hand.needles[i].total : std::nan("");
    loads.newtons.push_back(i < envelope.size() ? envelope[i].load : by_hand);
  }
  return loads;
}

void draw_needles_with_loads(Canvas& canvas, const WallView& view, const Job& job,
                             const solver::StageState& works, const NeedleLoads& loads,
                             LabelRoom& room) {
  std::vector<NeedleText> texts;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const bool known = std::isfinite(loads.newtons[i]);
    texts.push_back({job.needles[i].name, known ? kilonewtons(loads.newtons[i]) : "",
                     known && loads.newtons[i] > 0.0});
  }
  NeedleSetting setting = setting_of(view, job, works);
  setting.on_plates = true;  // props, and openings that went with the cut, are behind them
  draw_needles(canvas, view, job, texts, room, setting);
}

struct Chain {
  std::string name;
  std::vector<DimensionStop> stops;
};

std::vector<Chain> level_chains(const WallView& view, const Job& job) {
  const auto stop = [&](double x) { return DimensionStop{view.across(x), x}; };
  const mesh::WallShape& wall = job.wall;
  std::vector<DimensionStop> needles{stop(wall.cut.left), stop(wall.cut.right)};
  for (const solver::Needle& needle : job.needles) needles.push_back(stop(needle.x));
  std::vector<DimensionStop> openings{stop(0.0), stop(wall.length)};
  for (const mesh::Opening& opening : wall.openings)
    openings.insert(openings.end(), {stop(opening.left), stop(opening.right())});

  std::vector<Chain> chains;
  if (!job.needles.empty()) chains.push_back({"needles", sorted_stops(needles)});
  chains.push_back({"cut", sorted_stops({stop(0.0), stop(wall.cut.left), stop(wall.cut.right),
                                         stop(wall.length)})});
  if (!wall.openings.empty()) chains.push_back({"openings", sorted_stops(openings)});
  chains.push_back({"wall", {stop(0.0), stop(wall.length)}});
  return chains;
}

constexpr double first_chain = 20.0;  ///< under the lowest foot

void draw_level_chains(Canvas& canvas, const WallView& view, const Job& job) {
  double y = view.down(deepest_foot(job)) + first_chain;
  for (const Chain& chain : level_chains(view, job)) {
    draw_level_dimensions(canvas, chain.stops, y, y - 5.0, tight_rows);
    canvas.text({view.across(0.0) - 12.0, y}, chain.name, {.size = 7.0, .colour = quiet_ink},
                {1.0, 0.6});
    y += level_pitch(chain.stops);
  }
}

/// What feet below the base and the level chains take under the wall.
double room_for_chains(const WallView& view, const Job& job) {
  double room = first_chain - view.scale * deepest_foot(job) - 8.0;
  for (const Chain& chain : level_chains(view, job)) room += level_pitch(chain.stops);
  return room;
}

/// The largest view of the wall with all that stands round it. How many rows the chains need
/// depends on the scale, and the scale on them.
WallPage fit_elevation(const Job& job, Margins margins, double legend) {
  margins.bottom = legend;
  for (int pass = 0; pass < 3; ++pass)
    margins.bottom =
        std::max(margins.bottom, room_for_chains(fit_wall(job.wall, margins).view, job) + legend);
  return fit_wall(job.wall, margins);
}

/// A height that the right-hand chain shows, and from where a thin line leads to it.
struct ShownLevel {
  double level = 0.0;
  double from = 0.0;
};

std::vector<ShownLevel> shown_levels(const Job& job) {
  std::vector<ShownLevel> levels;
  for (const mesh::Opening& opening : job.wall.openings)
    for (const double level : {opening.sill, opening.springing(), opening.crown()})
      levels.push_back({level, opening.right()});
  const double top = job.wall.height();
  for (const solver::LineLoad& load : job.line_loads)
    if (!load.follows_top && load.level < top - 1.0) levels.push_back({load.level, load.x.to});
  for (const solver::PointLoad& load : job.point_loads)
    if (load.level < top - 1.0) levels.push_back({load.level, load.span().to});
  return levels;
}

double held_space(solver::WallEnd end) {
  return end == solver::WallEnd::held ? held_strip : 0.0;
}

void draw_upright_chains(Canvas& canvas, const WallView& view, const Job& job) {
  const auto stop = [&](double y) { return DimensionStop{view.down(y), y}; };
  const double top = job.wall.height();
  const double left = view.across(0.0) - held_space(job.left_end) - 14.0;
  const double foot = deepest_foot(job);
  draw_upright_dimensions(canvas,
                          sorted_stops({stop(foot), stop(0.0), stop(job.wall.cut.soffit),
                                        stop(job.wall.top_at(0.0)), stop(top)}),
                          left);
  draw_upright_dimensions(canvas, std::array{stop(0.0), stop(top)}, left - dimension_pitch);

  const std::vector<ShownLevel> levels = shown_levels(job);
  if (levels.empty()) return;
  const double right = view.across(job.wall.length) + held_space(job.right_end) + 18.0;
  std::vector<DimensionStop> stops{stop(0.0), stop(top)};
  for (const ShownLevel& shown : levels) {
    stops.push_back(stop(shown.level));
    canvas.line({view.across(shown.from), view.down(shown.level)}, {right, view.down(shown.level)},
                level_pen);
  }
  draw_upright_dimensions(canvas, sorted_stops(stops), right);
}

std::vector<LegendEntry> legend_of(const Job& job, const solver::StageState& works, bool staged,
                                   const NeedleLoads& loads) {
  std::vector<LegendEntry> entries;
  if (!job.needles.empty())
    entries.push_back(arrow_entry({.colour = support, .width = 1.1}, true,
                                  loads.by_hand_alone
                                      ? "load on the needle by the hand method alone"
                                      : "load on the needle: largest that any method finds"));
  if (!job.line_loads.empty())
    entries.push_back(arrow_entry(line_load_pen(), false, "line load, dead + imposed"));
  if (!job.point_loads.empty())
    entries.push_back(arrow_entry(point_load_pen(), false, "point load, dead + imposed"));
  entries.push_back(line_entry(cut_pen(), "cut: the masonry inside comes out"));
  const auto& openings = job.wall.openings;
  if (staged && std::any_of(openings.begin(), openings.end(), [&](const mesh::Opening& opening) {
        return solver::takes_out(job.wall.cut, opening);
      }))
    entries.push_back(line_entry(taken_out_pen(), "openings and lintels that go with the cut"));
  for (const auto& more : {prop_legend(job), works_legend(job, works)})
    entries.insert(entries.end(), more.begin(), more.end());
  if (job.left_end == solver::WallEnd::held || job.right_end == solver::WallEnd::held)
    entries.push_back(hatch_entry({.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2},
                                  "end held from moving sideways"));
  entries.push_back({draw_dimension_sign, "dimensions in mm"});
  return entries;
}

}  // namespace

Drawing elevation(const JobResult& result) {
  const Job& job = result.job;
  const NeedleLoads loads = needle_loads(result);
  const bool staged = is_staged(result);
  const solver::StageState works = works_in_the_end(job);
  const std::vector<LegendEntry> legend = legend_of(job, works, staged, loads);
  const double side = 14.0 + dimension_pitch + 12.0;
  const Margins margins{side + held_space(job.left_end),
                        (shown_levels(job).empty() ? 14.0 : 34.0) + held_space(job.right_end),
                        heading_height + room_for_loads(job), 0.0};
  const WallPage page = fit_elevation(job, margins, legend_height(legend, page_width - 8.0) + 8.0);
  const Region region = region_of(result.mesh.quads, quads_as_cut(result));

  return {page.size, [=](Canvas& canvas) {
            const WallView& view = page.view;
            LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
            const std::vector<Loop> outline = view.at(region);
            draw_heading(canvas, "Elevation", job.title);
            canvas.fill(outline, masonry_tint);
            draw_coursing(canvas, view, job.wall, outline);
            draw_lintels_there(canvas, view, job.wall, works, LintelStyle::filled);
            canvas.outline(outline, {.colour = ink, .width = 1.1});
            draw_ground(canvas, view, job.wall);
            draw_held_ends(canvas, view, job);
            draw_permanent_works(canvas, view, job, works);
            if (staged) draw_taken_out(canvas, view, job.wall);
            draw_cut(canvas, view, job);
            draw_needle_props(canvas, view, job);
            draw_upright_chains(canvas, view, job);
            draw_level_chains(canvas, view, job);
            name_openings(canvas, view, job, staged, room);
            draw_needles_with_loads(canvas, view, job, works, loads, room);
            draw_dead_shores(canvas, view, job, works, nullptr, room);
            draw_loads(canvas, view, job, room);
            name_beam(canvas, view, job, room);
            draw_legend(canvas, legend,
                        {4.0, page.size.height - legend_height(legend, page_width - 8.0) - 2.0},
                        page_width - 8.0);
          }};
}

}  // namespace deadshore::viz
