#pragma once

#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <span>

namespace deadshore::solver {

/// Displacements (2 per node) carried from one mesh of a wall to another of the same wall, by the
/// shape functions of the element that each new node lies in. A node that lies in none, because a
/// mesh line moved, takes the nearest element's. Meant as a start for Newton, not as a result.
[[nodiscard]] Eigen::VectorXd carry_over(const mesh::QuadMesh& from,
                                         std::span<const double> displacement,
                                         const mesh::QuadMesh& to);

}  // namespace deadshore::solver
