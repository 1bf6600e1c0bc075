#pragma once

#include "viz/page/figure_list.h"
#include "viz/wall/bands.h"

#include <cstddef>
#include <optional>
#include <vector>

/// Which of the many pictures of a staged job are worth drawing.
namespace deadshore::viz {

/// Stages whose stresses are drawn, in order: the one at which the needles together carry the most,
/// the last, and every one at which an analysis finds no equilibrium.
[[nodiscard]] std::vector<std::size_t> stages_to_draw(const solver::JobResult& result);

/// The stage with the smallest safety factor among those with a mechanism.
[[nodiscard]] std::optional<std::size_t> weakest_stage(const solver::JobResult& result);

/// One analysis of one stage.
struct PanelPlace {
  std::size_t stage = 0;
  std::size_t analysis = 0;
};

/// For each model with cracks, the analysis with its widest.
[[nodiscard]] std::vector<PanelPlace> widest_cracks(const solver::JobResult& result);

/// The analysis with the largest moment in the permanent beam.
[[nodiscard]] std::optional<PanelPlace> largest_beam_moment(const solver::JobResult& result);

/// "stages", as soon as there is more than one.
void add_strip(FigureList& figures, const solver::JobResult& result, const BandScale& scale);

/// "reactions-by-stage", "cracks-STAGE", "mechanism", "beam", as far as there is something to show.
void add_staged_figures(FigureList& figures, const solver::JobResult& result);

}  // namespace deadshore::viz
