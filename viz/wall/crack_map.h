#pragma once

#include "solver/result/results.h"
#include "viz/page/legend.h"
#include "viz/wall/wall_view.h"

#include <string>
#include <vector>

/// Cracks as lines whose thickness grows with their width.
namespace deadshore::viz {

/// Points for a crack of this width in mm.
[[nodiscard]] double crack_stroke(double width);

/// "0.08 mm", "1.4 mm"
[[nodiscard]] std::string crack_width(double width);

/// Each from end to end; finite ones alone.
void draw_cracks(Canvas& canvas, const WallView& view, const std::vector<solver::Crack>& cracks);

/// Three widths, each with its line.
[[nodiscard]] std::vector<LegendEntry> crack_legend();

}  // namespace deadshore::viz
