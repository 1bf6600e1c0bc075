#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"

#include <Eigen/Core>
#include <Eigen/SparseCore>

#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::solver {

/// Lower triangle of a symmetric stiffness matrix, one column after the other.
using SparseStiffness = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;

/// Where the entries of every element's stiffness go in the matrix: found once for a mesh, so that
/// assembly is a plain addition.
///
/// Elements are also coloured: no two of a colour share a node, so that several threads can
/// assemble the elements of a colour with the same result bit for bit.
class StiffnessPattern {
 public:
  /// \param couplings groups of nodes that act on each other beside those of each element
  StiffnessPattern(const mesh::QuadMesh& mesh, const EquationMap& equations,
                   std::span<const std::vector<int>> couplings = {});

  /// A matrix with the pattern and all values zero.
  [[nodiscard]] const SparseStiffness& empty() const { return empty_; }

  /// For each pair (i, j <= i) of an element's 2 n displacements, row by row, the place in the
  /// matrix's values, or -1 where a support gives one of the two.
  [[nodiscard]] std::span<const int> places(int quad) const {
    const std::size_t count = static_cast<std::size_t>(places_per_quad_);
    return std::span<const int>(places_).subspan(static_cast<std::size_t>(quad) * count, count);
  }

  /// Place of entry (row, column) in the matrix's values; -1 if either is negative.
  [[nodiscard]] int place(int row, int column) const;

  /// The elements of each colour; together all elements, each once.
  [[nodiscard]] std::span<const std::vector<int>> colours() const { return colours_; }

 private:
  SparseStiffness empty_;
  int places_per_quad_ = 0;
  std::vector<int> places_;
  std::vector<std::vector<int>> colours_;
};

/// Stiffness of an element of `Nodes` nodes: a block for each pair of
/// directions, whose rows and columns are the element's nodes.
template <int Nodes>
struct StiffnessBlocks {
  using Block = Eigen::Matrix<double, Nodes, Nodes>;
  Block xx = Block::Zero();
  Block xy = Block::Zero();  ///< forces along x by displacements along y; its transpose is yx
  Block yy = Block::Zero();

  /// Adds B^T tangent B, with B the strains by displacements. Blocks let the compiler vectorise
  /// over nodes.
  /// \param gradient d N / d x and d N / d y (rows) of the nodes (columns), 1/mm
  /// \param tangent d stress / d strain in Voigt form, times what the point stands for
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
