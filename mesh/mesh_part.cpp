#include "mesh/mesh_part.h"

#include "mesh/error.h"

#include <algorithm>
#include <iterator>

namespace deadshore::mesh {

MeshPart part_of(const QuadMesh& whole, std::span<const char> keep_region) {
  if (keep_region.size() != whole.regions.size()) {
    throw GeometryError("a part of a mesh needs a choice for each region");
  }
  MeshPart part;
  part.quads.order = whole.order;
  part.quads.regions = whole.regions;
  std::vector<int> new_quad(whole.region_of_quad.size(), -1);
  std::vector<int> new_node(whole.nodes.size(), -1);
  for (int quad = 0; quad < whole.quad_count(); ++quad) {
    const int region = whole.region_of_quad[static_cast<std::size_t>(quad)];
    if (keep_region[static_cast<std::size_t>(region)] == 0) continue;
    new_quad[static_cast<std::size_t>(quad)] = part.quads.quad_count();
    part.quad_of.push_back(quad);
    part.quads.region_of_quad.push_back(region);
    for (const int node : whole.nodes_of(quad)) new_node[static_cast<std::size_t>(node)] = 0;
  }
  for (std::size_t node = 0; node < new_node.size(); ++node) {
    if (new_node[node] < 0) continue;
    new_node[node] = part.quads.node_count();
    part.node_of.push_back(static_cast<int>(node));
    part.quads.nodes.push_back(whole.nodes[node]);
  }
  for (const int quad : part.quad_of) {
    std::ranges::transform(whole.nodes_of(quad), std::back_inserter(part.quads.connectivity),
                           [&](int node) { return new_node[static_cast<std::size_t>(node)]; });
  }
  for (const ChainSides& chain : whole.chains) {
    ChainSides& left = part.quads.chains.emplace_back(ChainSides{chain.chain, {}});
    for (const Side side : chain.sides) {
      const int quad = new_quad[static_cast<std::size_t>(side.quad)];
      if (quad >= 0) left.sides.push_back({quad, side.side});
    }
  }
  return part;
}

}  // namespace deadshore::mesh
