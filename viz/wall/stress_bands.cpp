#include "viz/wall/stress_bands.h"

#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

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

/// Largest principal compression at each node, positive; NaN where the stress is, and where there
/// is no masonry.
std::vector<double> compression_at_nodes(const mesh::QuadMesh& mesh, const PanelResult& panel) {
  const std::vector<char> there = nodes_there(mesh, quads_there(mesh, panel.fields));
  std::vector<double> values(mesh.nodes.size(), std::nan(""));
  const auto& stress = panel.fields.node_stress;
  for (std::size_t i = 0; i < std::min(values.size(), stress.size()); ++i)
    if (there[i] != 0) values[i] = -solver::principal_of(stress[i]).minor;
  return values;
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
    canvas.fill(box, band_tone(band, scale));
    canvas.outline(box, {.colour = quiet_ink, .width = 0.4});
    canvas.text({box.right + 4.0, box.bottom}, band_limit(band * scale.step, scale.step), style,
                {0.0, 0.5});
  }
  if (std::isfinite(panel.max_compression))
    canvas.text({room.left, foot + 7.0}, "largest\n" + fmt::format("{:.2f}", panel.max_compression),
                style, {0.0, 0.0});
}

/// "needles 60.0 kN, piers 140.9 kN": what carries the wall, as far as it does.
std::string carried_by(const PanelResult& panel, const solver::StageState& works) {
  double needles = 0.0;
  for (const solver::NeedleReaction& needle : panel.needles) needles += needle.force;
  std::string text = "piers " + kilonewtons(panel.base_left + panel.base_right);
  if (std::any_of(works.needles.begin(), works.needles.end(), solver::is_in))
    text = "needles " + kilonewtons(needles) + ", " + text;
  if (panel.base_cut != 0.0) text += ", masonry in the cut " + kilonewtons(panel.base_cut);
  double joists = 0.0;
  for (const solver::JoistReaction& reaction : panel.joists) joists += reaction.force;
  if (joists > 0.0) text += ", joists " + kilonewtons(joists);
  return text;
}

std::vector<LegendEntry> legend_of(const Job& job, const PanelResult& panel,
                                   const ShownStage& stage) {
  std::vector<LegendEntry> entries = {
      arrow_entry(reaction_pen(), true,
                  fmt::format("what carries the wall: {}, load in all {}",
                              carried_by(panel, stage.works), kilonewtons(panel.load_total)))};
  if (panel.beam && panel.beam->from_wall > 0.0)
    entries.push_back(arrow_entry(reaction_pen(), true,
                                  fmt::format("under the beam's ends, and on into the piers: "
                                              "{} of it from the wall",
                                              kilonewtons(panel.beam->from_wall))));
  if (!panel.loose.empty())
    entries.push_back(
        hatch_entry(loose_hatch(), "loose masonry: nothing holds it, it would fall (weight)"));
  if (job.left_end == solver::WallEnd::held || job.right_end == solver::WallEnd::held)
    entries.push_back(hatch_entry({.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2},
                                  "end held from moving sideways, with its thrust"));
  const auto works_entries = works_legend(job, stage.works);
  entries.insert(entries.end(), works_entries.begin(), works_entries.end());
  return entries;
}

}  // namespace

BandScale compression_scale(const JobResult& result) {
  double reach = 0.0;
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& panel : stage.analyses) {
      if (!panel.stands()) continue;
      std::vector<double> values = compression_at_nodes(result.mesh.quads, panel);
      std::erase_if(values, [](double value) { return !std::isfinite(value); });
      if (values.empty()) continue;
      const auto rank = values.begin() + static_cast<std::ptrdiff_t>(0.99 * (values.size() - 1));
      std::nth_element(values.begin(), rank, values.end());
      reach = std::max(reach, *rank);
    }
  return even_scale(reach);
}

std::string band_limit(double value, double step) {
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 6);
  const bool half = std::abs(step * std::pow(10.0, decimals) -
                             std::round(step * std::pow(10.0, decimals))) > 1e-6;
  return fmt::format("{:.{}f}", value, decimals + (half ? 1 : 0));
}

Colour band_tone(int band, const BandScale& scale) {
  return compression_tone(static_cast<double>(band) / scale.count);
}

std::vector<Region> band_regions(const mesh::QuadMesh& mesh, const PanelResult& panel,
                                 const BandScale& scale) {
  std::vector<double> levels;
  for (int k = 1; k <= scale.count; ++k) levels.push_back(k * scale.step);
  return regions_above(mesh, compression_at_nodes(mesh, panel), levels,
                       quads_there(mesh, panel.fields));
}

Drawing compression_bands(const JobResult& result, const PanelResult& panel,
                          const ShownStage& stage, const BandScale& scale) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<LegendEntry> legend = legend_of(job, panel, stage);
  const double legend_room = legend_height(legend, page_width - 8.0);
  Margins margins = reaction_margins(job);
  margins.right += bar_room;
  margins.bottom += legend_room + 4.0;
  const WallPage page = fit_wall(job.wall, margins);
  const std::vector<Region> bands = band_regions(mesh, panel, scale);
  const Region outline = region_of(mesh, quads_there(mesh, panel.fields));

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas,
                     heading_with("Principal compression, " + masonry_words(panel.model), stage),
                     job.title);
        for (int k = 0; k <= scale.count; ++k) canvas.fill(view.at(bands[k]), band_tone(k, scale));
        draw_lintels_there(canvas, view, job.wall, stage.works, LintelStyle::outline);
        draw_loose(canvas, view, mesh, panel);
        canvas.outline(view.at(outline), {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, &panel, room);
        draw_reactions(canvas, view, job, panel, stage.works, room);
        label_loose(canvas, view, panel, room);
        const Rect bar{page_width - bar_room, view.down(job.wall.height()), page_width,
                       view.down(0.0)};
        draw_colour_bar(canvas, bar, scale, panel);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
