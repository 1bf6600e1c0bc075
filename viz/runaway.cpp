#include "viz/drawings.h"
#include "viz/legend.h"
#include "viz/panel_marks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double swing = 30.0;  ///< largest movement on the page, points
const Pen moved_pen{.colour = tension, .width = 1.6};
const Pen still_pen{.colour = quiet_ink, .width = 0.6, .dash = {3.0, 2.0}};

/// The mesh's outline moved so that the largest movement is `reach` mm; empty without finite
/// displacements.
Region moved_outline(const mesh::QuadMesh& mesh, const PanelResult& panel, double reach) {
  const std::vector<double>& u = panel.fields.displacement;
  const auto rings = boundary_rings(mesh);
  if (u.size() != 2 * mesh.nodes.size()) return {};
  double largest = 0.0;
  for (const auto& ring : rings)
    for (const int node : ring)
      largest = std::max(largest, std::hypot(u[2 * node], u[2 * node + 1]));
  if (!(largest > 0.0) || !std::isfinite(largest)) return {};
  Region region;
  for (const auto& ring : rings) {
    Ring moved;
    for (const int node : ring) {
      const double ux = u[2 * node];
      const double uy = u[2 * node + 1];
      if (!std::isfinite(ux) || !std::isfinite(uy)) continue;
      moved.push_back(
          {mesh.nodes[node].x + reach / largest * ux, mesh.nodes[node].y + reach / largest * uy});
    }
    if (moved.size() >= 3) region.push_back(std::move(moved));
  }
  return region;
}

}  // namespace

Drawing runaway(const JobResult& result, const PanelResult& panel) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<LegendEntry> legend{line_entry(still_pen, "the wall before"),
                                        line_entry(moved_pen, "how it would go (not to scale)")};
  const TextStyle reason_style{
      .size = 8.5, .bold = true, .width = page_width - 24.0, .overflow = Overflow::wrap};
  const std::string reason = "No equilibrium: " + panel.no_equilibrium;
  const double reason_room = text_size(reason, reason_style).height + 12.0;
  const double legend_room = legend_height(legend, page_width - 8.0);
  const WallPage page = fit_wall(
      job.wall,
      {swing + 8.0, swing + 8.0, heading_height + reason_room + swing, 12.0 + legend_room});

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas, "No equilibrium, " + masonry_words(panel.model), job.title);
        const Rect plate{4.0, heading_height, page_width - 4.0, heading_height + reason_room - 4.0};
        canvas.outline(plate, {.colour = ink, .width = 0.9});
        canvas.text({12.0, plate.middle().y}, reason, reason_style, {0.0, 0.5});
        const auto moved = view.at(moved_outline(mesh, panel, swing / view.scale));
        canvas.fill(moved, masonry_tint);
        canvas.outline(view.at(region_of(mesh)), still_pen);
        canvas.outline(moved, moved_pen);
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_named_needles(canvas, view, job, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
