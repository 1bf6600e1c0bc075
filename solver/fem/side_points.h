#pragma once

#include "mesh/quad_mesh.h"

#include <array>
#include <vector>

namespace deadshore::solver {

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
