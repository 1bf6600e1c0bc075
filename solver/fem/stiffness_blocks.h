#pragma once

#include <Eigen/Core>

#include <cstddef>
#include <span>

namespace deadshore::solver {

/// Stiffness of an element, a block for each pair of directions: rows and columns are its nodes.
template <int Nodes>
struct StiffnessBlocks {
  using Block = Eigen::Matrix<double, Nodes, Nodes>;
  Block xx = Block::Zero();
  Block xy = Block::Zero();  ///< forces along x by displacements along y
  Block yy = Block::Zero();

  /// Adds B^T tangent B. Blocks let the compiler do several nodes at once.
  template <class GradientMatrix>
  void add(const GradientMatrix& gradient, const Eigen::Matrix3d& tangent) {
    const Eigen::Matrix<double, Nodes, 1> x = gradient.row(0).transpose();
    const Eigen::Matrix<double, Nodes, 1> y = gradient.row(1).transpose();
    const Eigen::Matrix3d& D = tangent;
    for (int j = 0; j < Nodes; ++j) {  // stresses by the displacements of node j
      const double shear_by_x = D(2, 0) * x(j) + D(2, 2) * y(j);
      const double shear_by_y = D(2, 1) * y(j) + D(2, 2) * x(j);
      xx.col(j) += x * (D(0, 0) * x(j) + D(0, 2) * y(j)) + y * shear_by_x;
      xy.col(j) += x * (D(0, 1) * y(j) + D(0, 2) * x(j)) + y * shear_by_y;
      yy.col(j) += y * (D(1, 1) * y(j) + D(1, 2) * x(j)) + x * shear_by_y;
    }
  }

  /// Adds each entry of the lower half to its place among `values`, row by row: see
  /// StiffnessPattern::places.
  void scatter(std::span<const int> places, double* values) const {
    std::size_t k = 0;
    const auto add_next = [&](double value) {
      if (const int place = places[k++]; place >= 0) values[place] += value;
    };
    for (int i = 0; i < Nodes; ++i) {
      for (int j = 0; j < i; ++j) {
        add_next(xx(i, j));
        add_next(xy(i, j));
      }
      add_next(xx(i, i));
      for (int j = 0; j <= i; ++j) {
        add_next(xy(j, i));
        add_next(yy(i, j));
      }
    }
  }
};

}  // namespace deadshore::solver
