#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <array>

namespace deadshore::solver {

/// Shape functions of a quadrilateral with `Nodes` nodes (4: bilinear, 8: serendipity) at the
/// reference point (xi, eta) in [-1, 1]^2; corners anticlockwise from (-1, -1), then mid-sides.
template <int Nodes>
struct QuadShape {
  Eigen::Matrix<double, Nodes, 1> value;
  Eigen::Matrix<double, 2, Nodes> derivative;  ///< rows d/dxi, d/deta

  [[nodiscard]] static QuadShape at(double xi, double eta);
};

template <>
QuadShape<4> QuadShape<4>::at(double xi, double eta);
template <>
QuadShape<8> QuadShape<8>::at(double xi, double eta);

/// The 2 x 2 Gauss points of a quadrilateral, all of weight 1, in the order of the corners. Full
/// for the 4-node element; reduced for the 8-node one, which then neither locks nor has a mechanism
/// that two elements can share.
inline constexpr int quad_points = 4;
[[nodiscard]] std::array<mesh::Point, quad_points> gauss_points();

/// Values at the four corners of a field that is bilinear through its four Gauss-point values:
/// corner values = matrix * point values.
[[nodiscard]] Eigen::Matrix4d corners_from_gauss_points();

}  // namespace deadshore::solver
