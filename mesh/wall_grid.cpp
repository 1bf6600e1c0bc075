#include "mesh/wall_grid.h"

#include "mesh/error.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::mesh {
namespace {

constexpr double most_cells = 4e6;  // a finer grid is refused

Block block_of(const WallGrid& grid, Interval x, Interval y) {
  return {nearest_index(grid.x, x.from), nearest_index(grid.x, x.to),
          nearest_index(grid.level, y.from), nearest_index(grid.level, y.to)};
}

void paint(WallGrid& grid, const Block& block, int region) {
  for (int column = block.left; column < block.right; ++column) {
    const int top = std::min(block.top, grid.rows_below_top[static_cast<std::size_t>(column)]);
    for (int row = block.bottom; row < top; ++row) grid.region[grid.cell(column, row)] = region;
  }
}

/// Paints the cut where there is neither a hole nor a lintel that lies whole in it.
void fill_cut(WallGrid& grid, const PlacedWall& wall) {
  const auto stays_itself = [&wall](int region) {
    return region == nothing ||
           (region != masonry && wall.lintels[static_cast<std::size_t>(region - 1)].comes_out);
  };
  for (int column = grid.cut.left; column < grid.cut.right; ++column) {
    for (int row = grid.cut.bottom; row < grid.cut.top; ++row) {
      int& region = grid.region[grid.cell(column, row)];
      if (!stays_itself(region)) region = wall.cut_region;
    }
  }
}

}  // namespace

int WallGrid::region_at(int column, int row) const {
  if (column < 0 || column >= columns() || row < 0 || row >= rows()) return nothing;
  return region[cell(column, row)];
}

WallGrid lay_grid(const PlacedWall& wall, double size) {
  if (step_count(wall.uprights, size) * step_count(wall.levels, size) > most_cells) {
    throw GeometryError(fmt::format(
        "elements of {:g} mm would be more than {:g} million for this wall; take larger ones", size,
        most_cells / 1e6));
  }
  WallGrid grid;
  grid.x = subdivide(wall.uprights, size);
  grid.level = subdivide(wall.levels, size);
  grid.region.assign(grid.cell(grid.columns(), 0), nothing);
  grid.rows_below_top.assign(static_cast<std::size_t>(grid.columns()), 0);

  for (const TopStretch& stretch : wall.top) {
    const Block block = block_of(grid, stretch.x(), {0.0, stretch.level()});
    for (int column = block.left; column < block.right; ++column) {
      grid.rows_below_top[static_cast<std::size_t>(column)] = block.top;
    }
    paint(grid, block, masonry);
  }
  for (std::size_t k = 0; k < wall.lintels.size(); ++k) {
    const LintelExtent& lintel = wall.lintels[k].extent;
    paint(grid, block_of(grid, lintel.x, lintel.y), static_cast<int>(k) + 1);
  }
  for (const PlacedOpening& opening : wall.openings) {
    const Opening& shape = opening.shape;
    Block block = block_of(grid, shape.span(), {shape.sill, shape.crown()});
    if (opening.reaches_top) block.top = grid.rows();
    paint(grid, block, nothing);
    grid.openings.push_back(block);
  }
  grid.cut = block_of(grid, wall.cut.span(), {0.0, wall.cut.soffit});
  fill_cut(grid, wall);
  for (const PlacedBlock& block : wall.blocks) {
    grid.blocks.push_back(block_of(grid, block.shape.x, block.shape.y));
    paint(grid, grid.blocks.back(), block.region);
  }
  return grid;
}

}  // namespace deadshore::mesh
