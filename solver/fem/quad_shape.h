#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <vector>

/// Shape functions of quadrilaterals, and where they are integrated: in an element, over a mesh,
/// along a side.
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

/// Gradients of the shape functions and areas at the Gauss points of every quadrilateral, worked
/// out once for a mesh.
class QuadGeometry {
 public:
  /// \throws SolveError if an element is folded (its mapping turns over at a Gauss point).
  explicit QuadGeometry(const mesh::QuadMesh& mesh);

  /// d N / d x and d N / d y (rows) of the `Nodes` nodes (columns) at a Gauss point, 1/mm.
  template <int Nodes>
  [[nodiscard]] Eigen::Map<const Eigen::Matrix<double, 2, Nodes>> gradient(int quad,
                                                                           int point) const {
    return Eigen::Map<const Eigen::Matrix<double, 2, Nodes>>(
        gradients_.data() + static_cast<std::ptrdiff_t>(quad * 4 + point) * 2 * Nodes);
  }

  /// Area that a Gauss point stands for, mm2.
  [[nodiscard]] double area(int quad, int point) const {
    return areas_[4 * static_cast<std::size_t>(quad) + static_cast<std::size_t>(point)];
  }

  [[nodiscard]] double area(int quad) const {
    return area(quad, 0) + area(quad, 1) + area(quad, 2) + area(quad, 3);
  }

  /// Parts of the element's area that go to its nodes, in their order: the integrals of the shape
  /// functions, mm2. Of 8 nodes those at corners may be negative.
  [[nodiscard]] Eigen::VectorXd node_areas(int quad) const;

 private:
  template <int Nodes>
  void fill(const mesh::QuadMesh& mesh);

  Eigen::MatrixXd shape_;          ///< of the nodes (rows) at the Gauss points
  std::vector<double> gradients_;  ///< element by element, point by point
  std::vector<double> areas_;
};

/// A Gauss point on a side of an element: the side's nodes, their shape functions there, and the
/// length the point stands for.
struct SidePoint {
  mesh::SideNodes nodes;
  std::array<double, 3> shape{};
  mesh::Point position;  ///< mm
  double length = 0.0;   ///< mm
};

/// Gauss points of a whole side; their lengths add up to the side's.
[[nodiscard]] std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side);

/// Gauss points of the part of a side whose x lies in `x`; lengths are measured along the x axis.
/// Empty where the side is upright or outside. Exact for loads that are polynomials of degree 3 in
/// x.
[[nodiscard]] std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side,
                                                    mesh::Interval x);

}  // namespace deadshore::solver
