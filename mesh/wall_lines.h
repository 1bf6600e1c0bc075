#pragma once

#include "mesh/feature_lines.h"
#include "mesh/wall_mesher.h"
#include "mesh/wall_parts.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// The lines of both axes: all of them as given, or those the grid keeps.
struct WallLines {
  std::vector<FeatureLine> uprights;
  std::vector<FeatureLine> levels;
};

/// Every line that a mesh of the wall should follow, in order of precedence: what stays before what
/// comes out with the cut.
[[nodiscard]] WallLines gather_lines(const WallParts& parts, std::span<const LevelLine> levels,
                                     std::span<const Interval> bearings);

}  // namespace deadshore::mesh
