#include "mesh/wall_mesher.h"

#include "mesh/error.h"
#include "mesh/height_map.h"
#include "mesh/mesh_part.h"
#include "mesh/placed_wall.h"
#include "mesh/wall_chains.h"
#include "mesh/wall_grid.h"
#include "mesh/wall_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

// From a wall to its mesh: place_wall moves close lines onto one another, lay_grid crosses uprights
// and levels and marks what each cell is made of, relax_offsets slides nodes along the uprights to
// meet slopes and arches, and solid cells become quadrilaterals with chains of sides.

namespace deadshore::mesh {
namespace {

bool folds(const WallGrid& grid, const std::vector<double>& heights) {
  for (int column = 0; column < grid.columns(); ++column) {
    for (int row = 0; row < grid.rows(); ++row) {
      if (!grid.solid(column, row)) continue;
      for (const int upright : {column, column + 1}) {
        const auto low = static_cast<std::size_t>(grid.node(upright, row));
        if (!(heights[low + 1] > heights[low])) return true;
      }
    }
  }
  return false;
}

/// Heights of the grid's nodes, mm. They are found on a grid of about `control_cells` cells and
/// carried over: fast, and all meshes of a wall then have the same lines.
std::vector<double> node_heights(PlacedWall& wall, const WallGrid& grid) {
  constexpr double control_cells = 6000.0;
  const double area = grid.x.back() * grid.level.back();
  const WallGrid control = lay_grid(wall, std::sqrt(area / control_cells));
  const HeightPins control_pins =
      pin_level_lines(pin_shape(wall, control), wall, control, wall.remarks);
  std::vector<double> offsets = relax_offsets(control, control_pins);
  const HeightPins pins = pin_shape(wall, grid);
  std::vector<double> heights = heights_from(control, offsets, grid, pins);
  if (folds(grid, heights)) {
    // Plain interpolation between pins, which rise along every upright, cannot fold.
    std::ranges::fill(offsets, 0.0);
    heights = heights_from(control, offsets, grid, pins);
  }
  return heights;
}

/// Numbers quadrilaterals and nodes column by column from the bottom up.
QuadMesh make_quads(MappedGrid& mapped) {
  const WallGrid& grid = mapped.grid;
  QuadMesh mesh;
  std::vector<int> node_number(static_cast<std::size_t>(grid.node_count()), -1);
  const auto add_corner = [&](int upright, int row) {
    const auto node = static_cast<std::size_t>(grid.node(upright, row));
    if (node_number[node] < 0) {
      node_number[node] = mesh.node_count();
      mesh.nodes.push_back({grid.x[static_cast<std::size_t>(upright)], mapped.y[node]});
    }
    mesh.connectivity.push_back(node_number[node]);
  };
  mapped.quad_of_cell.assign(grid.region.size(), -1);
  for (int column = 0; column < grid.columns(); ++column) {
    for (int row = 0; row < grid.rows(); ++row) {
      if (!grid.solid(column, row)) continue;
      mapped.quad_of_cell[grid.cell(column, row)] = mesh.quad_count();
      add_corner(column, row);
      add_corner(column + 1, row);
      add_corner(column + 1, row + 1);
      add_corner(column, row + 1);
      mesh.region_of_quad.push_back(grid.region_at(column, row));
    }
  }
  return mesh;
}

double worst_aspect_of(const QuadMesh& mesh) {
  double worst = 1.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto corners = corners_of(mesh, quad);
    const auto side = [&corners](std::size_t s) {
      const Point a = corners[s];
      const Point b = corners[(s + 1) % 4];
      return std::hypot(b.x - a.x, b.y - a.y);
    };
    const auto [shorter, longer] = std::minmax({side(0) + side(2), side(1) + side(3)});
    worst = std::max(worst, longer / shorter);
  }
  return worst;
}

WallMesh mesh_parts(const WallParts& parts, std::span<const LevelLine> levels,
                    std::span<const Interval> bearings, double size) {
  if (!(size > 0.0)) {
    throw GeometryError(fmt::format("the element size must be more than 0 mm, not {:g} mm", size));
  }
  PlacedWall wall = place_wall(parts, levels, bearings, size);
  const WallGrid grid = lay_grid(wall, size);
  MappedGrid mapped{grid, node_heights(wall, grid), {}};

  WallMesh made;
  made.size = size;
  made.quads = make_quads(mapped);
  made.quads.regions = regions_of(parts);
  made.quads.chains = chains_of(mapped, wall, levels);
  for (std::size_t k = 0; k < levels.size(); ++k) {
    if (made.quads.sides_of({ChainKind::level_line, k}).empty()) {
      wall.remarks.push_back(
          fmt::format("There is no wall where \"{}\" should act.", levels[k].name));
    }
  }
  made.worst_aspect = worst_aspect_of(made.quads);
  made.remarks = std::move(wall.remarks);
  return made;
}

}  // namespace

WallMesh mesh_wall(const WallShape& shape, std::span<const LevelLine> levels,
                   std::span<const Interval> bearings, const MeshOptions& options) {
  WallMesh made = mesh_parts({shape, {}, false}, levels, bearings, options.size);
  refuse_hanging_parts(made.quads, bearings);
  if (options.order == QuadOrder::eight_node) made.quads = with_midside_nodes(made.quads);
  return made;
}

WallMesh mesh_whole_wall(const WallShape& shape, std::span<const WallBlock> blocks,
                         std::span<const LevelLine> levels, std::span<const Interval> bearings,
                         const MeshOptions& options) {
  WallMesh made = mesh_parts({shape, blocks, true}, levels, bearings, options.size);
  refuse_hanging_parts(made.quads, {});
  refuse_hanging_parts(part_of(made.quads, regions_left_by_cut(shape, made.quads)).quads, bearings);
  if (options.order == QuadOrder::eight_node) made.quads = with_midside_nodes(made.quads);
  return made;
}

std::vector<char> regions_left_by_cut(const WallShape& shape, const QuadMesh& whole) {
  std::vector<char> left(whole.regions.size(), 1);
  left[static_cast<std::size_t>(cut_region(shape))] = 0;
  for (std::size_t k = 0; k < shape.lintels.size(); ++k) {
    if (comes_out_whole(shape, shape.lintels[k])) left[k + 1] = 0;
  }
  return left;
}

}  // namespace deadshore::mesh
