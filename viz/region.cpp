#include "viz/region.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace deadshore::viz {
namespace {

/// An edge between points `low < high`, with the ranks of the polygons on either side of it.
struct Edge {
  int low = 0;
  int high = 0;
  int left_rank = -1;   ///< of the polygon that runs low -> high
  int right_rank = -1;  ///< of the polygon that runs high -> low

  [[nodiscard]] std::pair<int, int> ends() const { return {low, high}; }
};

/// Every edge once, in order of its ends.
std::vector<Edge> edges_of(const RankedPolygons& polygons) {
  std::vector<Edge> edges;
  edges.reserve(polygons.corners.size());
  for (std::size_t p = 0; p < polygons.starts.size(); ++p) {
    const int begin = polygons.starts[p];
    const int end = p + 1 < polygons.starts.size() ? polygons.starts[p + 1]
                                                   : static_cast<int>(polygons.corners.size());
    for (int i = begin; i < end; ++i) {
      const int a = polygons.corners[i];
      const int b = polygons.corners[i + 1 < end ? i + 1 : begin];
      if (a < b) edges.push_back({a, b, polygons.ranks[p], -1});
      if (b < a) edges.push_back({b, a, -1, polygons.ranks[p]});
    }
  }
  std::sort(edges.begin(), edges.end(),
            [](const Edge& a, const Edge& b) { return a.ends() < b.ends(); });
  std::size_t kept = 0;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    if (kept > 0 && edges[kept - 1].ends() == edges[i].ends()) {
      edges[kept - 1].left_rank = std::max(edges[kept - 1].left_rank, edges[i].left_rank);
      edges[kept - 1].right_rank = std::max(edges[kept - 1].right_rank, edges[i].right_rank);
    } else {
      edges[kept++] = edges[i];
    }
  }
  edges.resize(kept);
  return edges;
}

/// Joins directed edges into rings; `edges` need not be in order.
std::vector<std::vector<int>> joined(std::vector<std::pair<int, int>> edges) {
  std::sort(edges.begin(), edges.end());
  std::vector<bool> used(edges.size(), false);
  const auto next_from = [&](int start) -> std::optional<std::size_t> {
    auto it = std::lower_bound(edges.begin(), edges.end(), std::pair{start, -1});
    for (; it != edges.end() && it->first == start; ++it) {
      const auto index = static_cast<std::size_t>(it - edges.begin());
      if (!used[index]) return index;
    }
    return std::nullopt;
  };
  std::vector<std::vector<int>> rings;
  for (std::size_t first = 0; first < edges.size(); ++first) {
    if (used[first]) continue;
    std::vector<int> ring;
    std::optional<std::size_t> edge = first;
    while (edge) {
      used[*edge] = true;
      ring.push_back(edges[*edge].first);
      edge = next_from(edges[*edge].second);
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

RankedPolygons quads_as_polygons(const mesh::QuadMesh& mesh, std::span<const char> chosen) {
  RankedPolygons polygons;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (!chosen.empty() && chosen[quad] == 0) continue;
    const auto nodes = mesh.nodes_of(quad);
    if (mesh.order == mesh::QuadOrder::four_node) {
      polygons.add(nodes, 0);
    } else {
      polygons.add(std::array{nodes[0], nodes[4], nodes[1], nodes[5], nodes[2], nodes[6], nodes[3],
                              nodes[7]},
                   0);
    }
  }
  return polygons;
}

}  // namespace

double area_of(const Region& region) {
  double twice = 0.0;
  for (const Ring& ring : region)
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const mesh::Point& a = ring[i];
      const mesh::Point& b = ring[(i + 1) % ring.size()];
      twice += a.x * b.y - b.x * a.y;
    }
  return 0.5 * twice;
}

void RankedPolygons::add(std::span<const int> polygon, int rank) {
  starts.push_back(static_cast<int>(corners.size()));
  corners.insert(corners.end(), polygon.begin(), polygon.end());
  ranks.push_back(rank);
}

std::vector<std::vector<std::vector<int>>> nested_rings(const RankedPolygons& polygons, int count) {
  std::vector<std::vector<std::pair<int, int>>> borders(static_cast<std::size_t>(count));
  for (const Edge& edge : edges_of(polygons)) {
    for (int k = std::max(0, edge.right_rank + 1); k <= std::min(edge.left_rank, count - 1); ++k)
      borders[k].emplace_back(edge.low, edge.high);
    for (int k = std::max(0, edge.left_rank + 1); k <= std::min(edge.right_rank, count - 1); ++k)
      borders[k].emplace_back(edge.high, edge.low);
  }
  std::vector<std::vector<std::vector<int>>> rings;
  rings.reserve(borders.size());
  for (auto& border : borders) rings.push_back(joined(std::move(border)));
  return rings;
}

std::vector<std::vector<int>> boundary_rings(const mesh::QuadMesh& mesh) {
  return nested_rings(quads_as_polygons(mesh, {}), 1).front();
}

Ring ring_through(std::span<const int> numbers, std::span<const mesh::Point> points) {
  Ring ring;
  const std::size_t count = numbers.size();
  for (std::size_t i = 0; i < count; ++i) {
    const mesh::Point& before = ring.empty() ? points[numbers[count - 1]] : ring.back();
    const mesh::Point& here = points[numbers[i]];
    const mesh::Point& after = points[numbers[(i + 1) % count]];
    const double cross =
        (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x);
    const double reach = std::hypot(after.x - before.x, after.y - before.y);
    constexpr double straight = 1e-3;  // mm off the line
    if (std::abs(cross) > straight * reach) ring.push_back(here);
  }
  return ring;
}

Region region_of(const mesh::QuadMesh& mesh) {
  return region_of(mesh, {});
}

Region region_of(const mesh::QuadMesh& mesh, std::span<const char> chosen) {
  Region region;
  const auto nested = nested_rings(quads_as_polygons(mesh, chosen), 1);
  for (const auto& numbers : nested.front()) region.push_back(ring_through(numbers, mesh.nodes));
  return region;
}

}  // namespace deadshore::viz
