#pragma once

#include "mesh/placed_wall.h"

#include <cstddef>
#include <vector>

namespace deadshore::mesh {

/// Columns `left` to `right - 1` and rows `bottom` to `top - 1` of a grid; also the uprights `left`
/// to `right` and level lines `bottom` to `top` around them.
struct Block {
  int left = 0;
  int right = 0;
  int bottom = 0;
  int top = 0;
};

/// A logical grid of uprights and levels over a wall. A level's height is nominal: under sloping
/// tops and arches its nodes slide along the uprights (see height_map.h).
struct WallGrid {
  std::vector<double> x;            ///< uprights, mm, ascending
  std::vector<double> level;        ///< nominal heights, mm, ascending
  std::vector<int> region;          ///< by `cell`: as `material_at` has it
  std::vector<int> rows_below_top;  ///< of each column: rows inside the outline
  std::vector<Block> openings;      ///< in the order of PlacedWall::openings
  std::vector<Block> blocks;        ///< in the order of PlacedWall::blocks
  Block cut;                        ///< what comes out

  [[nodiscard]] int columns() const { return static_cast<int>(x.size()) - 1; }
  [[nodiscard]] int rows() const { return static_cast<int>(level.size()) - 1; }
  [[nodiscard]] int node_count() const { return static_cast<int>(x.size() * level.size()); }

  [[nodiscard]] int node(int upright, int row) const {
    return upright * static_cast<int>(level.size()) + row;
  }
  [[nodiscard]] std::size_t cell(int column, int row) const {
    return static_cast<std::size_t>(column) * static_cast<std::size_t>(rows()) +
           static_cast<std::size_t>(row);
  }
  /// Region of a cell; `nothing` outside the grid.
  [[nodiscard]] int region_at(int column, int row) const;
  [[nodiscard]] bool solid(int column, int row) const { return region_at(column, row) != nothing; }
};

/// Lays the grid over the wall and marks what each cell is made of.
/// \throws GeometryError if it would have more than a few million cells.
[[nodiscard]] WallGrid lay_grid(const PlacedWall& wall, double size);

}  // namespace deadshore::mesh
