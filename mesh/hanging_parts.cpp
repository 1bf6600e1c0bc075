#include "mesh/hanging_parts.h"

#include "mesh/error.h"
#include "mesh/feature_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <vector>

namespace deadshore::mesh {
namespace {

/// Disjoint sets of nodes.
class NodeSets {
 public:
  explicit NodeSets(int count) : parent_(static_cast<std::size_t>(count)) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }

  int find(int node) {
    while (parent(node) != node) {
      parent(node) = parent(parent(node));
      node = parent(node);
    }
    return node;
  }

  void join(int a, int b) { parent(find(a)) = find(b); }

 private:
  int& parent(int node) { return parent_[static_cast<std::size_t>(node)]; }

  std::vector<int> parent_;
};

bool bears(const QuadMesh& mesh, const SideNodes& side, std::span<const Interval> bearings) {
  const double a = mesh.nodes[static_cast<std::size_t>(side.nodes[0])].x;
  const double b = mesh.nodes[static_cast<std::size_t>(side.nodes[1])].x;
  return std::ranges::any_of(bearings, [a, b](const Interval& bearing) {
    return std::min(bearing.to, b) - std::max(bearing.from, a) > same_place;
  });
}

}  // namespace

void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings) {
  NodeSets parts(mesh.node_count());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto nodes = mesh.nodes_of(quad);
    for (const int node : nodes) parts.join(nodes[0], node);
  }
  std::vector<bool> stands(mesh.nodes.size(), false);
  const auto stand = [&](const SideNodes& side) {
    stands[static_cast<std::size_t>(parts.find(side.nodes[0]))] = true;
  };
  for (const char* base : {"base left", "base right"}) {
    for (const Side side : mesh.sides_of(base)) stand(nodes_along(mesh, side));
  }
  for (const Side side : mesh.sides_of("soffit")) {
    const SideNodes along = nodes_along(mesh, side);
    if (bears(mesh, along, bearings)) stand(along);
  }

  const auto hanging = [&](int node) {
    return !stands[static_cast<std::size_t>(parts.find(node))];
  };
  int first = 0;
  while (first < mesh.node_count() && !hanging(first)) ++first;
  if (first == mesh.node_count()) return;
  const Point start = mesh.nodes[static_cast<std::size_t>(first)];
  Interval x{start.x, start.x};
  Interval y{start.y, start.y};
  for (int node = first; node < mesh.node_count(); ++node) {
    if (parts.find(node) != parts.find(first)) continue;
    const Point p = mesh.nodes[static_cast<std::size_t>(node)];
    x = {std::min(x.from, p.x), std::max(x.to, p.x)};
    y = {std::min(y.from, p.y), std::max(y.to, p.y)};
  }
  throw GeometryError(fmt::format(
      "the wall from x = {:.3f} to {:.3f} m, y = {:.3f} to {:.3f} m hangs on nothing: it touches "
      "neither the base nor a bearing under the soffit",
      x.from / 1000.0, x.to / 1000.0, y.from / 1000.0, y.to / 1000.0));
}

}  // namespace deadshore::mesh
