#pragma once

#include "mesh/height_pins.h"
#include "mesh/wall_grid.h"

#include <vector>

namespace deadshore::mesh {

/// Offsets of a grid's nodes from their nominal heights, mm, indexed by `WallGrid::node`: pinned
/// ones as pinned, the others between them so that heights rise along every upright of a solid
/// cell.
///
/// They minimise a convex energy: the slope of the levels squared, and for each cell's upright
/// sides with ratio r of height to nominal height (r - 1)^2 / 2 + 1/r + r - 2, which keeps r above
/// 0. All pins at their nominal heights: every offset is exactly 0.
[[nodiscard]] std::vector<double> relax_offsets(const WallGrid& grid, const HeightPins& pins);

/// Heights of the nodes of `grid`, mm: the offsets of a coarser grid over the same wall (every
/// feature line is in both), and on every upright moved evenly to meet `pins` exactly.
[[nodiscard]] std::vector<double> heights_from(const WallGrid& coarse,
                                               const std::vector<double>& offsets,
                                               const WallGrid& grid, const HeightPins& pins);

}  // namespace deadshore::mesh
