#include "viz/wall/crack_map.h"

#include "viz/drawings.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {

namespace {

using solver::Crack;
using solver::JobResult;
using solver::PanelResult;

constexpr std::size_t most_labels = 6;
const TextStyle width_style{.size = 7.5, .bold = true};

/// Keeps labels off a crack.
void take_crack(LabelRoom& room, PagePoint from, PagePoint to) {
  const int steps = 1 + static_cast<int>(std::hypot(to.x - from.x, to.y - from.y) / 4.0);
  for (int i = 0; i <= steps; ++i) {
    const double part = static_cast<double>(i) / steps;
    room.take(
        box_at({from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)}, {3.0, 3.0}, {}));
  }
}

bool is_finite(const Crack& crack) {
  return std::isfinite(crack.width + crack.from.x + crack.from.y + crack.to.x + crack.to.y +
                       crack.widest.x + crack.widest.y);
}

/// The widths of the widest few, each beside its widest place with a ring there and a thin line to
/// it.
void label_cracks(Canvas& canvas, const WallView& view, const std::vector<Crack>& cracks,
                  LabelRoom& room) {
  for (const Crack& crack : cracks)
    if (is_finite(crack)) take_crack(room, view.at(crack.from), view.at(crack.to));
  std::size_t labels = 0;
  for (const Crack& crack : cracks) {
    if (!is_finite(crack)) continue;
    if (++labels > most_labels) return;
    const std::string text = crack_width(crack.width);
    const PagePoint at = view.at(crack.widest);
    const Rect start = plate_box({at.x, at.y - 10.0}, text, width_style);
    const auto place = room.place(boxes_around(start, {5.0, 4.0}, 12));
    if (!place) continue;
    const PagePoint near{std::clamp(at.x, place->left, place->right),
                         std::clamp(at.y, place->top, place->bottom)};
    canvas.line(at, near, {.colour = ink, .width = 0.5});
    canvas.fill(box_at(at, {4.0, 4.0}, {}), white);
    canvas.outline(box_at(at, {4.0, 4.0}, {}), {.colour = ink, .width = 0.8});
    canvas.fill(*place, white, 0.9);
    canvas.text(place->middle(), text, width_style, {});
  }
}

void stroke_crack(Canvas& canvas, PagePoint from, PagePoint to, double width) {
  canvas.line(from, to, {.colour = white, .width = crack_stroke(width) + 1.4});
  canvas.line(from, to, {.colour = ink, .width = crack_stroke(width)});
}

}  // namespace

Drawing crack_map(const JobResult& result, const PanelResult& panel, const ShownStage& stage) {
  const solver::Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  std::vector<LegendEntry> legend = crack_legend();
  legend.push_back({[](Canvas& canvas, const Rect& box) {
                      const Rect mark = box_at(box.middle(), {4.0, 4.0}, {});
                      canvas.outline(mark, {.colour = ink, .width = 0.8});
                    },
                    "where it is widest"});
  if (!panel.loose.empty()) legend.push_back(hatch_entry(loose_hatch(), "loose masonry"));
  const auto works_entries = works_legend(job, stage.works);
  legend.insert(legend.end(), works_entries.begin(), works_entries.end());
  const double legend_room = legend_height(legend, page_width - 8.0);
  const WallPage page = fit_wall(job.wall, {20.0, 20.0, heading_height + 6.0, 12.0 + legend_room});
  const Region outline = region_of(mesh, quads_there(mesh, panel.fields));

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, heading_height, page.size.width, page.size.height - legend_room});
        draw_heading(canvas, heading_with("Cracks, " + masonry_words(panel.model), stage),
                     job.title);
        canvas.fill(view.at(outline), masonry_tint);
        draw_lintels_there(canvas, view, job.wall, stage.works, LintelStyle::filled);
        draw_loose(canvas, view, mesh, panel);
        canvas.outline(view.at(outline), {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, nullptr, room);
        draw_named_needles(canvas, view, job, stage.works, room);
        draw_cracks(canvas, view, panel.cracks);
        label_cracks(canvas, view, panel.cracks, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

double crack_stroke(double width) {
  return std::clamp(0.7 + 0.5 * width, 0.7, 4.5);
}

std::string crack_width(double width) {
  return fmt::format("{:.{}f} mm", width, width < 0.995 ? 2 : 1);
}

void draw_cracks(Canvas& canvas, const WallView& view, const std::vector<solver::Crack>& cracks) {
  for (const solver::Crack& crack : cracks) {
    const double sum = crack.width + crack.from.x + crack.from.y + crack.to.x + crack.to.y;
    if (std::isfinite(sum))
      stroke_crack(canvas, view.at(crack.from), view.at(crack.to), crack.width);
  }
}

std::vector<LegendEntry> crack_legend() {
  std::vector<LegendEntry> entries;
  for (const double width : {0.2, 1.0, 5.0})
    entries.push_back(
        {[width](Canvas& canvas, const Rect& box) {
           stroke_crack(canvas, {box.left, box.middle().y}, {box.right, box.middle().y}, width);
         },
         width < 0.5 ? "crack 0.2 mm wide" : fmt::format("{:.0f} mm", width)});
  return entries;
}

}  // namespace deadshore::viz
