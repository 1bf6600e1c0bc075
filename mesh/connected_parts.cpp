#include "mesh/connected_parts.h"

#include <algorithm>
#include <limits>

namespace deadshore::mesh {

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

}  // namespace deadshore::mesh
