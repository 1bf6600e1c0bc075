#pragma once

#include "viz/wall/region.h"

#include <span>
#include <vector>

namespace deadshore::viz {

/// Largest movement of the nodes round the quadrilaterals marked in `chosen` (empty: all of them);
/// 0 where they do not move or a movement is not finite. `movement`: 2 per node.
[[nodiscard]] double largest_movement(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                                      std::span<const double> movement);

/// The outline of those quadrilaterals with each node moved by `factor` times its movement.
[[nodiscard]] Region moved_outline(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                                   std::span<const double> movement, double factor);

}  // namespace deadshore::viz
