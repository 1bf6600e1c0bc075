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
  Eigen::Matrix<double, Nodes, 1> value;       ///< of each node's function
  Eigen::Matrix<double, 2, Nodes> derivative;  ///< rows d/dxi, d/deta

  /// Evaluates the shape functions at a reference point.
  [[nodiscard]] static QuadShape at(double xi, double eta);
};

template <>
QuadShape<4> QuadShape<4>::at(double xi, double eta);
template <>
QuadShape<8> QuadShape<8>::at(double xi, double eta);

/// Number of Gauss points of a quadrilateral.
inline constexpr int quad_points = 4;

/// The 2 x 2 Gauss points of a quadrilateral in the reference square, all of weight 1, in the order
/// of the corners. Full integration for the 4-node element; reduced for the 8-node one, which then
/// neither locks nor has a zero-energy mode that two elements can share.
[[nodiscard]] std::array<mesh::Point, quad_points> gauss_points();

/// Extrapolates from Gauss points: the values at the four corners of the bilinear field through
/// four values at the Gauss points are this matrix times those values.
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

  /// Area of a quadrilateral, mm2.
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

/// A Gauss point on a side of an element.
struct SidePoint {
  mesh::SideNodes nodes;          ///< of the side
  std::array<double, 3> shape{};  ///< their shape functions at the point, in the same order
  mesh::Point position;           ///< mm
  double length = 0.0;            ///< of the side that the point stands for, mm: its weight
};

/// Gauss points of a whole side; their lengths add up to the side's.
[[nodiscard]] std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side);

/// Gauss points of the part of a side whose x lies in `x`; lengths are measured along the x axis.
/// Empty where the side is upright or outside. Exact for loads that are polynomials of degree 3 in
/// x.
[[nodiscard]] std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side,
                                                    mesh::Interval x);

}  // namespace deadshore::solver
