#pragma once

#include "mesh/quad_mesh.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// The marked quadrilaterals in groups that hang together by shared nodes, in the order of their
/// first members.
/// \param marked one per quadrilateral, not 0 where it takes part
[[nodiscard]] std::vector<std::vector<int>> connected_parts(const QuadMesh& mesh,
                                                            std::span<const char> marked);

/// Smallest upright box around quadrilaterals, mm.
[[nodiscard]] Box box_around(const QuadMesh& mesh, std::span<const int> quads);

}  // namespace deadshore::mesh
