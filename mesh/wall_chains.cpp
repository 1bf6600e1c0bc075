#include "mesh/wall_chains.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace deadshore::mesh {
namespace {

/// Sides `side` of the solid cells of `row` in columns `from` to `to - 1`.
std::vector<Side> sides_in_row(const MappedGrid& mapped, int from, int to, int row, GridSide side) {
  std::vector<Side> sides;
  for (int column = from; column < to; ++column) {
    if (mapped.grid.solid(column, row)) sides.push_back({mapped.quad_at(column, row), side});
  }
  return sides;
}

enum class Whose { own, neighbours };

/// Sides along the upper or lower edges of a region, as sides of its own or of what lies there.
std::vector<Side> edge_sides(const MappedGrid& mapped, int region, GridSide edge, Whose whose) {
  const WallGrid& grid = mapped.grid;
  std::vector<Side> sides;
  for (int column = 0; column < grid.columns(); ++column) {
    for (int row = 0; row < grid.rows(); ++row) {
      const int beyond = edge == above ? row + 1 : row - 1;
      if (grid.region_at(column, row) != region || grid.region_at(column, beyond) == region) {
        continue;
      }
      if (whose == Whose::own) {
        sides.push_back({mapped.quad_at(column, row), edge});
      } else if (grid.solid(column, beyond)) {
        sides.push_back({mapped.quad_at(column, beyond), edge == above ? below : above});
      }
    }
  }
  return sides;
}

/// Sides of an end column above `level`.
std::vector<Side> end_sides(const MappedGrid& mapped, int column, GridSide side, double level) {
  const WallGrid& grid = mapped.grid;
  const int upright = side == left ? column : column + 1;
  std::vector<Side> sides;
  for (int row = 0; row < grid.rows(); ++row) {
    const double middle = 0.5 * (mapped.y[static_cast<std::size_t>(grid.node(upright, row))] +
                                 mapped.y[static_cast<std::size_t>(grid.node(upright, row + 1))]);
    if (grid.solid(column, row) && middle > level) {
      sides.push_back({mapped.quad_at(column, row), side});
    }
  }
  return sides;
}

/// The side on the outline's top in a column; none where a slot opens the top.
std::optional<Side> top_side(const MappedGrid& mapped, int column) {
  const int row = mapped.grid.rows_below_top[static_cast<std::size_t>(column)] - 1;
  if (!mapped.grid.solid(column, row)) return {};
  return Side{mapped.quad_at(column, row), above};
}

/// The side at height `y` in a column: the one just above it, else the one just below; where the
/// grid does not follow `y`, the nearest side of the cell that holds it; none in the open.
std::optional<Side> side_at(const MappedGrid& mapped, int column, double y) {
  const WallGrid& grid = mapped.grid;
  for (int row = grid.rows() - 1; row >= 0; --row) {
    if (!grid.solid(column, row)) continue;
    const double low = mapped.height_at(column, row);
    const double high = mapped.height_at(column, row + 1);
    if (y < low - same_place || y > high + same_place) continue;
    if (y - low <= high - y) return Side{mapped.quad_at(column, row), below};
    if (grid.solid(column, row + 1)) return Side{mapped.quad_at(column, row + 1), below};
    return Side{mapped.quad_at(column, row), above};
  }
  return {};
}

/// The sides under a line in every column that it covers; `level` is where the line was put.
std::vector<Side> level_sides(const MappedGrid& mapped, const LevelLine& line, double level) {
  const WallGrid& grid = mapped.grid;
  const bool off_the_wall = line.level < -same_place || line.level > grid.level.back() + same_place;
  if (off_the_wall && !line.follows_top) return {};
  std::vector<Side> sides;
  for (int column = 0; column < grid.columns(); ++column) {
    const auto k = static_cast<std::size_t>(column);
    const double covered = std::min(line.x.to, grid.x[k + 1]) - std::max(line.x.from, grid.x[k]);
    if (covered <= same_place) continue;
    const auto side = line.follows_top ? top_side(mapped, column) : side_at(mapped, column, level);
    if (side) sides.push_back(*side);
  }
  return sides;
}

}  // namespace

std::vector<ChainSides> chains_of(const MappedGrid& mapped, const PlacedWall& wall,
                                  std::span<const LevelLine> levels) {
  const WallGrid& grid = mapped.grid;
  const int columns = grid.columns();
  Block cut = grid.cut;
  if (cut.top == 0) cut.right = cut.left;
  std::vector<ChainSides> chains;
  chains.push_back({{ChainKind::base_left}, sides_in_row(mapped, 0, cut.left, 0, below)});
  chains.push_back({{ChainKind::base_right}, sides_in_row(mapped, cut.right, columns, 0, below)});
  if (wall.cut_region != nothing) {
    chains.push_back({{ChainKind::base_cut}, sides_in_row(mapped, cut.left, cut.right, 0, below)});
  }
  chains.push_back(
      {{ChainKind::soffit}, sides_in_row(mapped, cut.left, cut.right, cut.top, below)});
  chains.push_back({{ChainKind::top}, {}});
  for (int column = 0; column < columns; ++column) {
    if (const auto side = top_side(mapped, column)) chains.back().sides.push_back(*side);
  }
  chains.push_back({{ChainKind::left_end}, end_sides(mapped, 0, left, wall.cut.soffit)});
  chains.push_back(
      {{ChainKind::right_end}, end_sides(mapped, columns - 1, right, wall.cut.soffit)});
  for (std::size_t k = 0; k < wall.openings.size(); ++k) {
    const std::size_t number = wall.openings[k].number;
    const Block& block = grid.openings[k];
    chains.push_back({{ChainKind::opening_head, number},
                      sides_in_row(mapped, block.left, block.right, block.top, below)});
    chains.push_back({{ChainKind::opening_sill, number},
                      sides_in_row(mapped, block.left, block.right, block.bottom - 1, above)});
  }
  int last_region = wall.cut_region;
  for (const PlacedBlock& block : wall.blocks) {
    if (block.region <= last_region) continue;  // numbered as they first appear
    last_region = block.region;
    const std::size_t group = block.shape.group;
    chains.push_back({{ChainKind::block_top, group},
                      edge_sides(mapped, block.region, above, Whose::neighbours)});
    chains.push_back(
        {{ChainKind::block_upper, group}, edge_sides(mapped, block.region, above, Whose::own)});
    chains.push_back({{ChainKind::block_bed, group},
                      edge_sides(mapped, block.region, below, Whose::neighbours)});
  }
  for (std::size_t k = 0; k < levels.size(); ++k) {
    chains.push_back(
        {{ChainKind::level_line, k}, level_sides(mapped, levels[k], wall.lines[k].level)});
  }
  return chains;
}

}  // namespace deadshore::mesh
