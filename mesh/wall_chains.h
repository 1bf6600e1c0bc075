#pragma once

#include "mesh/placed_wall.h"
#include "mesh/quad_mesh.h"
#include "mesh/wall_grid.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// Number, as `Side::side`, of each side of a grid cell's quadrilateral, whose corners start at the
/// lower left.
enum GridSide : int { below = 0, right = 1, above = 2, left = 3 };

/// A grid whose nodes have their real heights and whose solid cells have become quadrilaterals.
struct MappedGrid {
  const WallGrid& grid;           ///< must outlive this
  std::vector<double> y;          ///< height of each node, mm, by `WallGrid::node`
  std::vector<int> quad_of_cell;  ///< number of the quadrilateral, -1 for none; by `WallGrid::cell`

  /// Number of the quadrilateral of a cell of the grid; -1 where there is none.
  [[nodiscard]] int quad_at(int column, int row) const {
    return quad_of_cell[grid.cell(column, row)];
  }
  /// Height of level line `row` in the middle of a column, mm.
  [[nodiscard]] double height_at(int column, int row) const {
    return 0.5 * (y[static_cast<std::size_t>(grid.node(column, row))] +
                  y[static_cast<std::size_t>(grid.node(column + 1, row))]);
  }
};

/// Collects the chains that `mesh_wall` and `mesh_whole_wall` promise, each ordered from left to
/// right or from the bottom up.
/// \param levels as asked for: one `level_line` each, also where the grid does not follow it
[[nodiscard]] std::vector<ChainSides> chains_of(const MappedGrid& mapped, const PlacedWall& wall,
                                                std::span<const LevelLine> levels);

}  // namespace deadshore::mesh
