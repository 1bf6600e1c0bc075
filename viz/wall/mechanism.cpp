#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/region.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace deadshore::viz {

namespace {

using solver::JobResult;
using solver::PanelResult;

constexpr double arrow_pitch = 26.0;  ///< about, on the page, points
constexpr double least_arrow = 3.0;   ///< shorter ones are left out, points
const Pen falling_pen{.colour = tension, .width = 1.6};
const Pen velocity_pen{.colour = ink, .width = 0.6};

/// The analysis whose masonry may be loose at this stage; else any; null where there is none.
const PanelResult* loosest(const solver::StageResult& stage) {
  const PanelResult* found = nullptr;
  for (const PanelResult& panel : stage.analyses)
    if (found == nullptr || panel.model == solver::MasonryModel::cracked) found = &panel;
  return found;
}

/// One node for each square of a grid, the first of the mesh there.
std::vector<int> spread_nodes(const mesh::QuadMesh& mesh, const std::vector<char>& there,
                              double pitch) {
  std::map<std::pair<int, int>, std::pair<double, int>> nearest;
  for (int node = 0; node < mesh.node_count(); ++node) {
    if (there[node] == 0) continue;
    const double column = mesh.nodes[node].x / pitch;
    const double row = mesh.nodes[node].y / pitch;
    const std::pair square{static_cast<int>(std::floor(column)), static_cast<int>(std::floor(row))};
    const double off = std::hypot(column - square.first - 0.5, row - square.second - 0.5);
    const auto [entry, fresh] = nearest.emplace(square, std::pair{off, node});
    if (!fresh && off < entry->second.first) entry->second = {off, node};
  }
  std::vector<int> nodes;
  nodes.reserve(nearest.size());
  for (const auto& [square, entry] : nearest) nodes.push_back(entry.second);
  return nodes;
}

/// Of the nodes there, those that move by `least` or more.
std::vector<char> nodes_that_move(std::vector<char> there, const std::vector<double>& movement,
                                  double least) {
  for (std::size_t node = 0; node < there.size(); ++node) {
    const bool known = 2 * node + 1 < movement.size();
    const double size = known ? std::hypot(movement[2 * node], movement[2 * node + 1]) : 0.0;
    if (!(size >= least && std::isfinite(size))) there[node] = 0;
  }
  return there;
}

/// The masonry that the mechanism moves: what is there and not loose.
std::vector<char> sound_quads(const mesh::QuadMesh& mesh, const PanelResult* panel) {
  std::vector<char> sound(static_cast<std::size_t>(mesh.quad_count()), 1);
  if (panel == nullptr) return sound;
  const solver::PanelFields& fields = panel->fields;
  for (std::size_t quad = 0; quad < sound.size(); ++quad)
    if ((quad < fields.quad_out.size() && fields.quad_out[quad] != 0) ||
        (quad < fields.quad_loose.size() && fields.quad_loose[quad] != 0 && !panel->loose.empty()))
      sound[quad] = 0;
  return sound;
}

void draw_velocities(Canvas& canvas, const WallView& view, const mesh::QuadMesh& mesh,
                     const std::vector<int>& nodes, const std::vector<double>& movement,
                     double factor) {
  for (const int node : nodes) {
    const mesh::Point& from = mesh.nodes[node];
    canvas.arrow(
        view.at(from),
        view.at({from.x + factor * movement[2 * node], from.y + factor * movement[2 * node + 1]}),
        velocity_pen);
  }
}

using solver::Job;

constexpr double swing = 30.0;  ///< largest movement on the page, points

}  // namespace

double mechanism_reach(const solver::Job& job) {
  const double size = std::max(job.wall.length, job.wall.height());
  return std::max(50.0, 50.0 * std::round(0.06 * size / 50.0));
}

Drawing mechanism(const JobResult& result, const solver::StageResult& stage,
                  const ShownStage& shown) {
  const solver::Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const PanelResult* panel = loosest(stage);
  const std::vector<char> sound = sound_quads(mesh, panel);
  const std::vector<double>& movement = stage.safety->mechanism;
  const double largest = largest_movement(mesh, sound, movement);
  const double reach = mechanism_reach(job);
  const double factor = largest > 0.0 ? reach / largest : 0.0;
  const Region still = region_of(mesh, sound);
  const Region moved = moved_outline(mesh, sound, movement, factor);
  PanelResult loose;
  if (panel != nullptr) {
    loose.loose = panel->loose;
    loose.fields.quad_loose = panel->fields.quad_loose;
  }

  std::vector<LegendEntry> legend{
      line_entry(before_pen, "the wall before"),
      line_entry(falling_pen,
                 fmt::format("the shape in which it would go: its largest movement is drawn as "
                             "{:.0f} mm of wall",
                             reach)),
      {[](Canvas& canvas, const Rect& box) {
         canvas.arrow({box.left, box.middle().y}, {box.right, box.middle().y}, velocity_pen);
       },
       "which way it moves"}};
  if (!loose.loose.empty())
    legend.push_back(hatch_entry(loose_hatch(), "loose masonry: left out, it falls by itself"));
  const auto works_entries = works_legend(job, shown.works);
  legend.insert(legend.end(), works_entries.begin(), works_entries.end());
  const double legend_room = legend_height(legend, page_width - 8.0);
  Margins margins{14.0, 14.0, heading_height + 6.0, 12.0 + legend_room};
  add_room_for(moved, job.wall, fit_wall(job.wall, margins).view.scale, margins);
  const WallPage page = fit_wall(job.wall, margins);
  const std::vector<char> moving =
      nodes_that_move(nodes_there(mesh, sound), movement, least_arrow / (page.view.scale * factor));
  const std::vector<int> nodes = spread_nodes(mesh, moving, arrow_pitch / page.view.scale);

  return {
      page.size, [=, movement = movement,
                  heading = fmt::format("How it would give way, at {:.1f} times its loads",
                                        stage.safety->factor)](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas, heading_with(heading, shown), job.title);
        canvas.fill(view.at(moved), masonry_tint);
        canvas.outline(view.at(still), before_pen);
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, shown.works);
        draw_dead_shores(canvas, view, job, shown.works, nullptr, room);
        draw_loose(canvas, view, mesh, loose);
        canvas.outline(view.at(moved), falling_pen);
        draw_velocities(canvas, view, mesh, nodes, movement, factor);
        draw_named_needles(canvas, view, job, shown.works, room);
        label_loose(canvas, view, loose, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

Drawing runaway(const JobResult& result, const PanelResult& panel, const ShownStage& stage) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> there = quads_there(mesh, panel.fields);
  const std::vector<double>& displacement = panel.fields.displacement;
  const double largest = largest_movement(mesh, there, displacement);
  const std::vector<LegendEntry> legend{line_entry(before_pen, "the wall before"),
                                        line_entry(falling_pen, "how it would go (not to scale)")};
  const TextStyle reason_style{
      .size = 8.5, .bold = true, .width = page_width - 24.0, .overflow = Overflow::wrap};
  const std::string reason = "No equilibrium: " + panel.no_equilibrium.value_or("");
  const double reason_room = text_size(reason, reason_style).height + 12.0;
  const double legend_room = legend_height(legend, page_width - 8.0);
  const WallPage page = fit_wall(
      job.wall,
      {swing + 8.0, swing + 8.0, heading_height + reason_room + swing, 12.0 + legend_room});

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas, heading_with("No equilibrium, " + masonry_words(panel.model), stage),
                     job.title);
        const Rect plate{4.0, heading_height, page_width - 4.0, heading_height + reason_room - 4.0};
        canvas.outline(plate, {.colour = ink, .width = 0.9});
        canvas.text({12.0, plate.middle().y}, reason, reason_style, {0.0, 0.5});
        const auto moved =
            largest > 0.0
                ? view.at(moved_outline(mesh, there, displacement, swing / view.scale / largest))
                : std::vector<Loop>{};
        canvas.fill(moved, masonry_tint);
        canvas.outline(view.at(region_of(mesh, there)), before_pen);
        canvas.outline(moved, falling_pen);
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, nullptr, room);
        draw_named_needles(canvas, view, job, stage.works, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
