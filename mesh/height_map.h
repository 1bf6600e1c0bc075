#pragma once

#include "mesh/placed_wall.h"
#include "mesh/wall_grid.h"

#include <string>
#include <vector>
namespace deadshore::mesh {

/// A node of an upright held at height `y`, mm. `owner` indexes `HeightPins::owners`.
struct Pin {
  int row = 0;
  double y = 0.0;
  int owner = 0;
};

/// The nodes whose heights the wall's shape prescribes; both height and row rise along an upright.
struct HeightPins {
  std::vector<std::vector<Pin>> upright;  ///< for each upright, rows ascending
  std::vector<std::string> owners;        ///< "the head of opening "A"" and so on
};

/// Pins the base, the outline's top, sills, heads, lintels, blocks and the soffit over the
/// cut.
/// \throws GeometryError where the heights on an upright contradict each other.
[[nodiscard]] HeightPins pin_shape(const PlacedWall& wall, const WallGrid& grid);

/// Adds the soffit's level beyond the cut and the level lines wherever they leave the grid room.
/// Says in `remarks` where a level line is not followed.
[[nodiscard]] HeightPins pin_level_lines(HeightPins pins, const PlacedWall& wall,
                                         const WallGrid& grid, std::vector<std::string>& remarks);

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
