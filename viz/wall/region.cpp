#include "viz/wall/region.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace deadshore::viz {

namespace {

/// A polygon's edge between points `low < high`.
struct Edge {
  int low = 0;
  int high = 0;
  int sense = 1;  ///< 1 where the polygon runs low -> high, else -1
  int rank = 0;   ///< of the polygon

  [[nodiscard]] std::pair<int, int> ends() const { return {low, high}; }
};

/// The edges of all polygons, in order of their ends.
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
      if (a < b) edges.push_back({a, b, 1, polygons.ranks[p]});
      if (b < a) edges.push_back({b, a, -1, polygons.ranks[p]});
    }
  }
  std::sort(edges.begin(), edges.end(),
            [](const Edge& a, const Edge& b) { return a.ends() < b.ends(); });
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
  const std::vector<Edge> edges = edges_of(polygons);
  for (std::size_t first = 0, last = 0; first < edges.size(); first = last) {
    int top = -1;
    for (; last < edges.size() && edges[last].ends() == edges[first].ends(); ++last)
      top = std::max(top, edges[last].rank);
    const auto [low, high] = edges[first].ends();
    for (int k = 0; k <= std::min(top, count - 1); ++k) {
      // Count rather than pair: clipping leaves slivers whose sides run to and fro.
      int net = 0;
      for (std::size_t i = first; i < last; ++i) net += edges[i].rank >= k ? edges[i].sense : 0;
      for (; net > 0; --net) borders[k].emplace_back(low, high);
      for (; net < 0; ++net) borders[k].emplace_back(high, low);
    }
  }
  std::vector<std::vector<std::vector<int>>> rings;
  rings.reserve(borders.size());
  for (auto& border : borders) rings.push_back(joined(std::move(border)));
  return rings;
}

std::vector<std::vector<int>> boundary_rings(const mesh::QuadMesh& mesh,
                                             std::span<const char> chosen) {
  return nested_rings(quads_as_polygons(mesh, chosen), 1).front();
}

Ring ring_through(std::span<const int> numbers, std::span<const mesh::Point> points) {
  constexpr double near = 1e-3;  // mm
  // Points that coincide go first: between two of them every direction looks straight.
  Ring apart;
  for (const int number : numbers) {
    const mesh::Point& here = points[number];
    if (apart.empty() || std::hypot(here.x - apart.back().x, here.y - apart.back().y) > near)
      apart.push_back(here);
  }
  while (apart.size() > 1 &&
         std::hypot(apart.front().x - apart.back().x, apart.front().y - apart.back().y) <= near)
    apart.pop_back();

  Ring ring;
  for (std::size_t i = 0; i < apart.size(); ++i) {
    const mesh::Point& before = ring.empty() ? apart.back() : ring.back();
    const mesh::Point& here = apart[i];
    const mesh::Point& after = apart[(i + 1) % apart.size()];
    const double cross =
        (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x);
    if (std::abs(cross) > near * std::hypot(after.x - before.x, after.y - before.y))
      ring.push_back(here);
  }
  return ring;
}

Region region_of(const mesh::QuadMesh& mesh) {
  return region_of(mesh, {});
}

Region region_of(const mesh::QuadMesh& mesh, std::span<const char> chosen) {
  Region region;
  for (const auto& numbers : boundary_rings(mesh, chosen))
    region.push_back(ring_through(numbers, mesh.nodes));
  return region;
}

double largest_movement(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                        std::span<const double> movement) {
  if (movement.size() != 2 * mesh.nodes.size()) return 0.0;
  double largest = 0.0;
  for (const auto& ring : boundary_rings(mesh, chosen))
    for (const int node : ring) {
      const double size = std::hypot(movement[2 * node], movement[2 * node + 1]);
      if (std::isinf(size)) return 0.0;
      largest = std::fmax(largest, size);
    }
  return largest;
}

Region moved_outline(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                     std::span<const double> movement, double factor) {
  if (movement.size() != 2 * mesh.nodes.size()) return {};
  Region region;
  for (const auto& ring : boundary_rings(mesh, chosen)) {
    Ring moved;
    for (const int node : ring) {
      const double ux = movement[2 * node];
      const double uy = movement[2 * node + 1];
      if (!std::isfinite(ux) || !std::isfinite(uy)) continue;
      moved.push_back({mesh.nodes[node].x + factor * ux, mesh.nodes[node].y + factor * uy});
    }
    if (moved.size() >= 3) region.push_back(std::move(moved));
  }
  return region;
}

}  // namespace deadshore::viz
