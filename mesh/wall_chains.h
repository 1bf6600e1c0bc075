#pragma once

#include "mesh/placed_wall.h"
#include "mesh/quad_mesh.h"
#include "mesh/wall_grid.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// Sides of a grid cell's quadrilateral, whose corners start at the lower left.
enum GridSide : int { below = 0, right = 1, above = 2, left = 3 };

/// A grid with the heights of its nodes and the quadrilateral of each cell (-1 for none).
struct MappedGrid {
  const WallGrid& grid;
  std::vector<double> y;          ///< by `WallGrid::node`
  std::vector<int> quad_of_cell;  ///< by `WallGrid::cell`

  [[nodiscard]] int quad_at(int column, int row) const {
    return quad_of_cell[grid.cell(column, row)];
  }
  /// Height of level line `row` in the middle of a column, mm.
  [[nodiscard]] double height_at(int column, int row) const {
    return 0.5 * (y[static_cast<std::size_t>(grid.node(column, row))] +
                  y[static_cast<std::size_t>(grid.node(column + 1, row))]);
  }
};

/// The chains promised by `mesh_wall` and `mesh_whole_wall`, each ordered from left to right or
/// from the bottom up.
[[nodiscard]] std::vector<ChainSides> chains_of(const MappedGrid& mapped, const PlacedWall& wall,
                                                std::span<const LevelLine> levels);

}  // namespace deadshore::mesh
