#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"

#include <Eigen/SparseCore>

#include <span>
#include <vector>

namespace deadshore::solver {

/// Lower triangle of a symmetric stiffness matrix, one column after the other.
using SparseStiffness = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;

/// Where the entries of every element's stiffness go in the matrix: found once for a mesh, so that
/// assembly is a plain addition. Also the colours of one stretch of elements after the other: no
/// two elements of a colour share a node, so that a colour can be assembled by several threads with
/// the same result bit for bit.
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

  [[nodiscard]] std::span<const std::vector<int>> colours() const { return colours_; }

 private:
  SparseStiffness empty_;
  int places_per_quad_ = 0;
  std::vector<int> places_;
  std::vector<std::vector<int>> colours_;
};

}  // namespace deadshore::solver
