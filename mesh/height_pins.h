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

}  // namespace deadshore::mesh
