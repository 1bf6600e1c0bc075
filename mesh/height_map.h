#pragma once

#include "mesh/height_pins.h"
#include "mesh/wall_grid.h"

#include <vector>

namespace deadshore::mesh {

/// Heights of all nodes of the grid, mm, indexed by `WallGrid::node`: pinned ones as pinned, the
/// others between them so that heights rise along every upright of a solid cell.
///
/// The offset from the nominal level is harmonic between the pins, ever stiffer along the uprights
/// until no cell is flattened below a quarter of what plain interpolation along its upright gives;
/// where that fails it is the plain interpolation. All offsets zero: levels stay exactly level.
[[nodiscard]] std::vector<double> map_heights(const WallGrid& grid, const HeightPins& pins);

}  // namespace deadshore::mesh
