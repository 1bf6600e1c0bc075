#include "viz/drawings.h"
#include "viz/legend.h"
#include "viz/panel_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double bar_room = 58.0;  ///< at the right of the wall for the colour bar

/// Largest principal compression at each node, positive; NaN where the stress is.
std::vector<double> compression_at_nodes(const PanelResult& panel, int node_count) {
  std::vector<double> values(static_cast<std::size_t>(node_count), std::nan(""));
  const auto& stress = panel.fields.node_stress;
  for (std::size_t i = 0; i < std::min(values.size(), stress.size()); ++i)
    values[i] = -solver::principal_of(stress[i]).minor;
  return values;
}

Colour tone_of(int band, const BandScale& scale) {
  return compression_tone(static_cast<double>(band) / scale.count);
}

/// From the whole wall upwards, so that each band drawn over the last leaves no seam.
std::vector<Region> band_regions(const mesh::QuadMesh& mesh, const PanelResult& panel,
                                 const BandScale& scale) {
  std::vector<double> levels;
  for (int k = 1; k <= scale.count; ++k) levels.push_back(k * scale.step);
  return regions_above(mesh, compression_at_nodes(panel, mesh.node_count()), levels);
}

std::string limit_text(double value, double step) {
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 6);
  const bool half = std::abs(step * std::pow(10.0, decimals) -
                             std::round(step * std::pow(10.0, decimals))) > 1e-6;
  return fmt::format("{:.{}f}", value, decimals + (half ? 1 : 0));
}

/// Steps from light at the foot to dark, the top one open.
void draw_colour_bar(Canvas& canvas, const Rect& room, const BandScale& scale,
                     const PanelResult& panel) {
  const TextStyle style{.size = 7.0};
  const double step = std::min(20.0, (room.height() - 60.0) / (scale.count + 1));
  const double foot = room.top + 22.0 + step * (scale.count + 1);
  canvas.text({room.left, room.top}, "compression\nN/mm²", style, {0.0, 0.0});
  for (int band = 0; band <= scale.count; ++band) {
    const Rect box{room.left, foot - (band + 1) * step, room.left + 14.0, foot - band * step};
    canvas.fill(box, tone_of(band, scale));
    canvas.outline(box, {.colour = quiet_ink, .width = 0.4});
    canvas.text({box.right + 4.0, box.bottom}, limit_text(band * scale.step, scale.step), style,
                {0.0, 0.5});
  }
  if (std::isfinite(panel.max_compression))
    canvas.text({room.left, foot + 7.0}, "largest\n" + fmt::format("{:.2f}", panel.max_compression),
                style, {0.0, 0.0});
}

std::vector<LegendEntry> legend_of(const Job& job, const PanelResult& panel) {
  double needles = 0.0;
  for (const solver::NeedleReaction& needle : panel.needles) needles += needle.force;
  std::vector<LegendEntry> entries;
  entries.push_back(
      arrow_entry(reaction_pen(), true,
                  fmt::format("what carries the wall: needles {}, piers {}, load in all {}",
                              kilonewtons(needles), kilonewtons(panel.base_left + panel.base_right),
                              kilonewtons(panel.load_total))));
  if (!panel.loose.empty())
    entries.push_back(
        hatch_entry(loose_hatch(), "loose masonry: nothing holds it, it would fall (weight)"));
  if (job.left_end == solver::WallEnd::held || job.right_end == solver::WallEnd::held)
    entries.push_back(hatch_entry({.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2},
                                  "end held from moving sideways, with its thrust"));
  return entries;
}

}  // namespace

BandScale compression_scale(const JobResult& result) {
  double reach = 0.0;
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& panel : stage.analyses) {
      if (!panel.stands()) continue;
      std::vector<double> values = compression_at_nodes(panel, result.mesh.quads.node_count());
      std::erase_if(values, [](double value) { return !std::isfinite(value); });
      if (values.empty()) continue;
      const auto rank = values.begin() + static_cast<std::ptrdiff_t>(0.99 * (values.size() - 1));
      std::nth_element(values.begin(), rank, values.end());
      reach = std::max(reach, *rank);
    }
  return even_scale(reach);
}

Drawing compression_bands(const JobResult& result, const PanelResult& panel,
                          const BandScale& scale) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<LegendEntry> legend = legend_of(job, panel);
  const double legend_room = legend_height(legend, page_width - 8.0);
  Margins margins = reaction_margins(job);
  margins.right += bar_room;
  margins.bottom += legend_room + 4.0;
  const WallPage page = fit_wall(job.wall, margins);
  const std::vector<Region> bands = band_regions(mesh, panel, scale);

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas, "Principal compression, " + masonry_words(panel.model), job.title);
        for (int k = 0; k <= scale.count; ++k) canvas.fill(view.at(bands[k]), tone_of(k, scale));
        draw_lintels(canvas, view, job.wall, LintelStyle::outline);
        draw_loose(canvas, view, mesh, panel);
        canvas.outline(view.at(region_of(mesh)), {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_reactions(canvas, view, job, panel, room);
        label_loose(canvas, view, panel, room);
        const Rect bar{page_width - bar_room, view.down(job.wall.height()), page_width,
                       view.down(0.0)};
        draw_colour_bar(canvas, bar, scale, panel);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
