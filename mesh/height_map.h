#pragma once

#include "mesh/placed_wall.h"
#include "mesh/wall_grid.h"

#include <string>
#include <vector>
namespace deadshore::mesh {

/// A node of an upright that is held at a height.
struct Pin {
  int row = 0;     ///< of the grid's levels
  double y = 0.0;  ///< height at which it is held, mm
  int owner = 0;   ///< what holds it there: index into `HeightPins::owners`
};

/// The nodes whose heights the wall's shape prescribes; both height and row rise along an upright.
struct HeightPins {
  std::vector<std::vector<Pin>> upright;  ///< for each upright, rows ascending
  std::vector<std::string> owners;        ///< for messages: `the head of opening "A"`
};

/// Pins the base, the outline's top, sills, heads, lintels, blocks and the soffit over the
/// cut.
/// \throws GeometryError where the heights on an upright contradict each other.
[[nodiscard]] HeightPins pin_shape(const PlacedWall& wall, const WallGrid& grid);

/// Adds pins for the soffit's level beyond the cut and for the level lines, wherever those of the
/// shape leave room between them.
/// \param remarks gets a sentence for each level line that is not followed
[[nodiscard]] HeightPins pin_level_lines(HeightPins pins, const PlacedWall& wall,
                                         const WallGrid& grid, std::vector<std::string>& remarks);

/// Offsets of a grid's nodes from their nominal heights, mm, indexed by `WallGrid::node`: pinned
/// ones as pinned, the others between them so that heights rise along every upright of a solid
/// cell and no element folds.
///
/// They minimise a convex energy: the slope of the levels squared, and for each cell's upright
/// sides with ratio r of height to nominal height (r - 1)^2 / 2 + 1/r + r - 2, a barrier that keeps
/// r above 0. Where all pins are at their nominal heights every offset is exactly 0.
[[nodiscard]] std::vector<double> relax_offsets(const WallGrid& grid, const HeightPins& pins);

/// Heights of the nodes of a fine grid from the offsets found on a coarser one over the same wall,
/// which saves solving for them on the fine grid: offsets are interpolated, and between two pins of
/// an upright the nodes are then moved evenly so that the pins are met exactly.
/// \param coarse has every feature line of `grid`
/// \param offsets of the nodes of `coarse`, mm, by `WallGrid::node`
/// \returns heights of the nodes of `grid`, mm, by `WallGrid::node`
[[nodiscard]] std::vector<double> heights_from(const WallGrid& coarse,
                                               const std::vector<double>& offsets,
                                               const WallGrid& grid, const HeightPins& pins);

}  // namespace deadshore::mesh
