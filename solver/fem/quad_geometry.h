#pragma once

#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace deadshore::solver {

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

 private:
  template <int Nodes>
  void fill(const mesh::QuadMesh& mesh);

  std::vector<double> gradients_;
  std::vector<double> areas_;
};

}  // namespace deadshore::solver
