#include "viz/figures.h"

#include "solver/study/envelope.h"
#include "viz/drawings.h"
#include "viz/page/figure_list.h"
#include "viz/stages/staged_figures.h"
#include "viz/wall/crack_map.h"
#include "viz/wall/panel_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace deadshore::viz {
namespace {

/// " (stage 4: cut)"; nothing without an order of work.
std::string at_stage(const ShownStage& stage) {
  return stage.words.empty() ? "" : " (" + stage.words + ")";
}

std::string compression_caption(const solver::PanelResult& panel, const ShownStage& stage) {
  std::string caption =
      fmt::format("Principal compression with {}{}, and what needles and piers carry.",
                  masonry_words(panel.model), at_stage(stage));
  if (!panel.loose.empty()) {
    caption += fmt::format(" Hatched masonry, {} in all, hangs on nothing and would fall.",
                           kilonewtons(panel.loose_weight()));
  }
  return caption;
}

/// Scales that all figures of a job share, so that they can be set beside each other.
struct PanelScales {
  BandScale compression;
  FlowScale flow;
  double movement = 1.0;
};

std::string deformed_caption(const solver::JobResult& result, const solver::PanelResult& panel,
                             const ShownStage& stage, double factor) {
  const double settlement = largest_settlement(result, panel);
  return fmt::format(
      "How the wall with {}{} has moved{}, drawn {:.0f} times as large{}.",
      masonry_words(panel.model), at_stage(stage),
      is_staged(result) ? " since the work began" : " under its loads", factor,
      settlement > 0.0 ? ": it settles by " + crack_width(settlement) + " at the most" : "");
}

void add_panel_figures(FigureList& figures, const solver::JobResult& result,
                       const solver::PanelResult& panel, const ShownStage& stage,
                       const PanelScales& scales, const std::string& ending) {
  const std::string end = std::string(solver::to_string(panel.model)) + ending;
  if (!panel.stands()) {
    figures.add(
        runaway(result, panel, stage), "compression-" + end,
        fmt::format(
            "With {} the wall has no equilibrium{}: the shape in which it would go. There are "
            "no stresses and no reactions to show.",
            masonry_words(panel.model), at_stage(stage)));
    return;
  }
  figures.add(compression_bands(result, panel, stage, scales.compression), "compression-" + end,
              compression_caption(panel, stage));
  const auto& needles = stage.works.needles;
  const bool any_in = std::any_of(needles.begin(), needles.end(), solver::is_in);
  figures.add(
      load_flow(result, panel, stage, scales.flow), "load-flow-" + end,
      fmt::format(
          "Where the load flows with {}{}: lines along the principal stresses, thicker where the "
          "compression is larger{}.",
          masonry_words(panel.model), at_stage(stage),
          any_in ? ", and over them the 45-degree spreads of the hand method" : ""));
  figures.add(deformed_wall(result, panel, stage, scales.movement), "deformed-" + end,
              deformed_caption(result, panel, stage, scales.movement));
}

/// The most loaded of the needles that stand on this frame; null where there is none.
const solver::NeedleDesign* worst_design(const solver::JobResult& result, std::size_t frame) {
  const solver::NeedleDesign* worst = nullptr;
  for (const solver::NeedleDesign& design : result.needle_designs)
    if (result.job.needles.at(index_of(design.needle)).frame == frame &&
        (worst == nullptr || design.answer.wall_load > worst->answer.wall_load))
      worst = &design;
  return worst;
}

std::string needle_loads_caption(const solver::JobResult& result) {
  const solver::StageResult* compared = solver::compared_stage(result);
  if (!is_staged(result) || compared == nullptr)
    return "Load on each needle: by hand and by analysis.";
  return fmt::format(
      "Load on each needle by hand and by analysis, both in stage \"{}\". Other stages may bring "
      "more.",
      compared->name);
}

std::string needle_caption(const solver::NeedleDesign& design) {
  return fmt::format(
      "The cross-section at {} with {} from the wall, unfactored: needle, props and ground to "
      "scale, and the needle's bending moment, shear force and deflection.",
      design.demand.needle, kilonewtons(design.answer.wall_load));
}

void add_spreads(FigureList& figures, const solver::JobResult& result) {
  const auto& needles = result.job.needles;
  for (std::size_t i = 0; i < needles.size() && i < result.hand.needles.size(); ++i)
    figures.add(needle_spread(result, i), "spread-" + file_word(needles[i].name),
                fmt::format("What {} carries by the 45-degree rule, {} in all: each number is a "
                            "line of the hand sum.",
                            needles[i].name, kilonewtons(result.hand.needles[i].total)));
}

std::vector<std::size_t> all_stages(const solver::JobResult& result) {
  std::vector<std::size_t> all(result.stages.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

}  // namespace

std::vector<Figure> draw_figures(const solver::JobResult& result) {
  FigureList figures;
  const bool staged = is_staged(result);
  const BandScale scale = compression_scale(result);
  const std::vector<ShownStage> shown = shown_stages(result);
  figures.add(elevation(result), "elevation",
              result.job.beam
                  ? "The wall as cut, with its needles, permanent beam, loads and dimensions."
                  : "The wall as cut, with its needles, loads and dimensions.");
  if (!result.job.needles.empty() || !result.job.dead_shores.empty())
    figures.add(plan(result), "plan",
                "Needles, props and soles from above, with the dimensions that set them out" +
                    std::string(result.job.lifting ? ", and the way of the beam." : "."));
  if (staged) add_strip(figures, result, scale);
  const std::vector<std::size_t> drawn = staged ? stages_to_draw(result) : all_stages(result);
  const PanelScales scales{scale, flow_scale(result), movement_factor(result, drawn)};
  for (const std::size_t i : drawn)
    for (const solver::PanelResult& panel : result.stages[i].analyses)
      add_panel_figures(figures, result, panel, shown[i], scales,
                        result.stages.size() > 1 ? "-" + file_word(result.stages[i].name) : "");
  if (staged) add_staged_figures(figures, result);
  add_spreads(figures, result);
  if (!result.comparison.empty())
    figures.add(needle_bars(result), "needle-loads", needle_loads_caption(result));
  for (std::size_t i = 0; i < result.job.needle_frames.size(); ++i)
    if (const solver::NeedleDesign* design = worst_design(result, i))
      figures.add(needle_frame(result, *design),
                  "needle-" + file_word(result.job.needle_frames[i].name), needle_caption(*design));
  return figures.draw();
}

}  // namespace deadshore::viz
