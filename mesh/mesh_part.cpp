#include "mesh/mesh_part.h"

#include "mesh/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <limits>
#include <vector>
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

std::vector<std::vector<int>> connected_parts(const QuadMesh& mesh, std::span<const char> marked) {
  std::vector<std::vector<int>> quads_at(mesh.nodes.size());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (marked[static_cast<std::size_t>(quad)] == 0) continue;
    for (const int node : mesh.nodes_of(quad)) {
      quads_at[static_cast<std::size_t>(node)].push_back(quad);
    }
  }
  std::vector<char> seen(marked.size(), 0);
  std::vector<std::vector<int>> parts;
  for (int first = 0; first < mesh.quad_count(); ++first) {
    const std::size_t f = static_cast<std::size_t>(first);
    if (marked[f] == 0 || seen[f] != 0) continue;
    seen[f] = 1;
    std::vector<int> part = {first};
    for (std::size_t next = 0; next < part.size(); ++next) {
      for (const int node : mesh.nodes_of(part[next])) {
        for (const int neighbour : quads_at[static_cast<std::size_t>(node)]) {
          char& known = seen[static_cast<std::size_t>(neighbour)];
          if (known != 0) continue;
          known = 1;
          part.push_back(neighbour);
        }
      }
    }
    parts.push_back(std::move(part));
  }
  return parts;
}

Box box_around(const QuadMesh& mesh, std::span<const int> quads) {
  constexpr double far = std::numeric_limits<double>::max();
  Box box{{far, -far}, {far, -far}};
  for (const int quad : quads) {
    for (const Point& corner : corners_of(mesh, quad)) {
      box.x = {std::min(box.x.from, corner.x), std::max(box.x.to, corner.x)};
      box.y = {std::min(box.y.from, corner.y), std::max(box.y.to, corner.y)};
    }
  }
  return box;
}

namespace {

bool bears(const QuadMesh& mesh, Side side, std::span<const Interval> bearings) {
  const SideNodes along = nodes_along(mesh, side);
  const double a = mesh.nodes[static_cast<std::size_t>(along.nodes[0])].x;
  const double b = mesh.nodes[static_cast<std::size_t>(along.nodes[1])].x;
  return std::ranges::any_of(bearings, [a, b](const Interval& bearing) {
    return std::min(bearing.to, b) - std::max(bearing.from, a) > same_place;
  });
}

/// For each quadrilateral, whether it stands on the base or on a bearing.
std::vector<bool> standing_quads(const QuadMesh& mesh, std::span<const Interval> bearings) {
  std::vector<bool> stands(mesh.region_of_quad.size(), false);
  for (const ChainKind base : {ChainKind::base_left, ChainKind::base_right, ChainKind::base_cut}) {
    for (const Side side : mesh.sides_of(base)) stands[static_cast<std::size_t>(side.quad)] = true;
  }
  for (const Side side : mesh.sides_of(ChainKind::soffit)) {
    if (bears(mesh, side, bearings)) stands[static_cast<std::size_t>(side.quad)] = true;
  }
  return stands;
}

}  // namespace

void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings) {
  const std::vector<bool> stands = standing_quads(mesh, bearings);
  const std::vector<char> all(mesh.region_of_quad.size(), 1);
  for (const std::vector<int>& part : connected_parts(mesh, all)) {
    const auto stands_here = [&stands](int quad) { return stands[static_cast<std::size_t>(quad)]; };
    if (std::ranges::any_of(part, stands_here)) continue;
    const auto [x, y] = box_around(mesh, part);
    throw GeometryError(fmt::format(
        "the wall from x = {:.3f} to {:.3f} m, y = {:.3f} to {:.3f} m hangs on nothing: it touches "
        "neither the base nor a bearing under the soffit",
        x.from / 1000.0, x.to / 1000.0, y.from / 1000.0, y.to / 1000.0));
  }
}

}  // namespace deadshore::mesh
