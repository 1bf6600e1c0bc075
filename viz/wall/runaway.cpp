#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/wall/moved_wall.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

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

}  // namespace

Drawing runaway(const JobResult& result, const PanelResult& panel, const ShownStage& stage) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> there = quads_there(mesh, panel.fields);
  const std::vector<double>& displacement = panel.fields.displacement;
  const double largest = largest_movement(mesh, there, displacement);
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
        canvas.outline(view.at(region_of(mesh, there)), still_pen);
        canvas.outline(moved, moved_pen);
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, nullptr, room);
        draw_named_needles(canvas, view, job, stage.works, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
