#include "mesh/quad_mesh.h"

#include "mesh/error.h"

#include <algorithm>
#include <cstdint>

namespace deadshore::mesh {

std::span<const int> QuadMesh::nodes_of(int quad) const {
  const auto count = static_cast<std::size_t>(nodes_per_quad());
  return std::span(connectivity).subspan(static_cast<std::size_t>(quad) * count, count);
}

std::span<const Side> QuadMesh::sides_of(Chain chain) const {
  const auto found = std::ranges::find(chains, chain, &ChainSides::chain);
  if (found == chains.end()) return {};
  return found->sides;
}

SideNodes nodes_along(const QuadMesh& mesh, Side side) {
  const auto nodes = mesh.nodes_of(side.quad);
  const auto s = static_cast<std::size_t>(side.side);
  SideNodes along{{nodes[s], nodes[(s + 1) % 4], 0}, 2};
  if (mesh.order == QuadOrder::eight_node) {
    along.nodes[2] = nodes[4 + s];
    along.count = 3;
  }
  return along;
}

std::array<Point, 4> corners_of(const QuadMesh& mesh, int quad) {
  const auto nodes = mesh.nodes_of(quad);
  std::array<Point, 4> corners;
  for (std::size_t c = 0; c < 4; ++c) corners[c] = mesh.nodes[static_cast<std::size_t>(nodes[c])];
  return corners;
}

double area_of(const QuadMesh& mesh, int quad) {
  const auto [a, b, c, d] = corners_of(mesh, quad);
  return 0.5 * ((c.x - a.x) * (d.y - b.y) - (c.y - a.y) * (d.x - b.x));
}

QuadMesh with_midside_nodes(const QuadMesh& mesh) {
  if (mesh.order != QuadOrder::four_node) {
    throw GeometryError("midside nodes can only be added to a mesh of 4-node elements");
  }
  // Sorting the sides by their ends brings the two that neighbours share together.
  struct KeyedSide {
    std::uint64_t ends;
    Side side;
  };
  std::vector<KeyedSide> sides;
  sides.reserve(4 * static_cast<std::size_t>(mesh.quad_count()));
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int s = 0; s < 4; ++s) {
      const SideNodes along = nodes_along(mesh, {quad, s});
      const auto [low, high] = std::minmax({along.nodes[0], along.nodes[1]});
      sides.push_back(
          {static_cast<std::uint64_t>(low) << 32U | static_cast<std::uint64_t>(high), {quad, s}});
    }
  }
  std::ranges::stable_sort(sides, {}, &KeyedSide::ends);

  QuadMesh finer = mesh;
  finer.order = QuadOrder::eight_node;
  finer.connectivity.assign(8 * static_cast<std::size_t>(mesh.quad_count()), 0);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    std::ranges::copy(mesh.nodes_of(quad), finer.connectivity.begin() + 8 * quad);
  }
  for (std::size_t k = 0; k < sides.size(); ++k) {
    const auto [quad, s] = sides[k].side;
    if (k == 0 || sides[k].ends != sides[k - 1].ends) {
      const auto corners = corners_of(mesh, quad);
      const Point a = corners[static_cast<std::size_t>(s)];
      const Point b = corners[static_cast<std::size_t>((s + 1) % 4)];
      finer.nodes.push_back({0.5 * (a.x + b.x), 0.5 * (a.y + b.y)});
    }
    finer.connectivity[8 * static_cast<std::size_t>(quad) + 4 + static_cast<std::size_t>(s)] =
        finer.node_count() - 1;
  }
  return finer;
}

}  // namespace deadshore::mesh
