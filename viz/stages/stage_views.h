#pragma once

#include "solver/result/results.h"
#include "viz/page/page.h"

#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::viz {

/// One analysis of one stage, as a picture without words.
struct StageView {
  std::size_t stage = 0;
  solver::MasonryModel model = solver::MasonryModel::uncracked;
  std::string svg;  ///< a self-contained document
};

/// Where a needle or a pier is on every picture: parts of its width and height, from the top left.
struct SupportSpot {
  std::string name;  ///< as `support_series` has it
  bool is_needle = false;
  double across = 0.0;
  double down = 0.0;
};

/// A step of the colours: compression from `from` N/mm2 up.
struct ColourStep {
  std::string colour;  ///< "#rrggbb"
  std::string from;
};

/// Pictures of all stages to be looked at one over another: all of one size, with the wall at one
/// place, their colours on one scale.
struct StageViews {
  Size size;  ///< points
  std::vector<StageView> views;
  std::vector<SupportSpot> spots;
  std::vector<ColourStep> scale;
};

/// None where the work is not followed stage by stage.
[[nodiscard]] StageViews draw_stage_views(const solver::JobResult& result);

}  // namespace deadshore::viz
