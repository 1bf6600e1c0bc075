#include "viz/wall/moved_wall.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::viz {

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
