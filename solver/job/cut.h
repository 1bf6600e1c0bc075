#pragma once

#include "mesh/wall_shape.h"

namespace deadshore::solver {

/// Whether the cut takes the opening out whole, so that it is no longer there.
[[nodiscard]] bool takes_out(const mesh::Cut& cut, const mesh::Opening& opening);

/// Whether the lintel lies wholly in the cut, so that it comes out with it.
[[nodiscard]] bool takes_out(const mesh::WallShape& wall, const mesh::LintelShape& lintel);

}  // namespace deadshore::solver
