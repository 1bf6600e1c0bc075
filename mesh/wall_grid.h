#pragma once

#include "mesh/placed_wall.h"

#include <cstddef>
#include <vector>

namespace deadshore::mesh {

/// A rectangle of grid cells, half open: columns `left` to `right - 1` and rows `bottom` to
/// `top - 1`. The same numbers are those of the uprights `left` to `right` and of the level lines
/// `bottom` to `top` around it.
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
  std::vector<int> region;          ///< of each cell, by `cell`: number as by `material_at`
  std::vector<int> rows_below_top;  ///< of each column: rows inside the outline
  std::vector<Block> openings;      ///< in the order of PlacedWall::openings
  std::vector<Block> blocks;        ///< in the order of PlacedWall::blocks
  Block cut;                        ///< what comes out

  [[nodiscard]] int columns() const { return static_cast<int>(x.size()) - 1; }
  [[nodiscard]] int rows() const { return static_cast<int>(level.size()) - 1; }
  [[nodiscard]] int node_count() const { return static_cast<int>(x.size() * level.size()); }

  /// Number of the node where an upright and a level line cross: upright after upright.
  [[nodiscard]] int node(int upright, int row) const {
    return upright * static_cast<int>(level.size()) + row;
  }
  /// Place of a cell in lists of cells: column after column.
  /// \pre inside the grid
  [[nodiscard]] std::size_t cell(int column, int row) const {
    return static_cast<std::size_t>(column) * static_cast<std::size_t>(rows()) +
           static_cast<std::size_t>(row);
  }
  /// Region of a cell; `nothing` outside the grid.
  [[nodiscard]] int region_at(int column, int row) const;
  /// Whether a cell becomes a quadrilateral.
  [[nodiscard]] bool solid(int column, int row) const { return region_at(column, row) != nothing; }
};

/// Lays the grid over the wall and marks what each cell is made of.
/// \param size target element size, mm
/// \throws GeometryError if it would have more than a few million cells.
[[nodiscard]] WallGrid lay_grid(const PlacedWall& wall, double size);

}  // namespace deadshore::mesh
