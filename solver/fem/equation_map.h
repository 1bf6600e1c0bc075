#pragma once

#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace deadshore::solver {

/// A displacement of a node that is given.
struct Support {
  int node = 0;        ///< number of the node
  int component = 0;   ///< 0 along x, 1 along y
  double value = 0.0;  ///< mm
};

/// Nodes of the mesh in nested-dissection order, found from the coordinates alone: the quads are
/// cut in two again and again, and the nodes that two parts share (the separator) come after both.
/// George, SIAM J. Numer. Anal. 10 (1973) 345-363.
///
/// Each cut is the cheapest of all that run level or upright and leave neither part too small, so
/// that it goes through the openings of a wall where it can. On a wall with windows that halves the
/// work of the factor against cuts in the middle, and beats general graph partitioning.
/// \returns node numbers, first to be eliminated first
[[nodiscard]] std::vector<int> nested_dissection(const mesh::QuadMesh& mesh);

/// Numbers of the equations, one for each free displacement, in an order that keeps the Cholesky
/// factor sparse: nested dissection of the mesh, then its further nodes.
///
/// A *nodal* vector has 2 entries per node (x, then y), a *free* vector one per equation.
class EquationMap {
 public:
  /// \param further_nodes nodes behind the mesh's, such as those of a beam; they come last
  EquationMap(const mesh::QuadMesh& mesh, std::span<const Support> supports, int further_nodes = 0);

  /// Equation of a node's displacement, or -1 where a support gives it.
  [[nodiscard]] int equation(int node, int component) const {
    return equation_[place_of(node, component)];
  }

  /// Number of equations.
  [[nodiscard]] int count() const { return count_; }

  /// The nodal vector of a free one: zero where supports give a displacement.
  [[nodiscard]] Eigen::VectorXd spread_out(const Eigen::VectorXd& free) const;

  /// The free vector of a nodal one: entries that supports give are left out.
  [[nodiscard]] Eigen::VectorXd gather_free(const Eigen::VectorXd& nodal) const;

 private:
  [[nodiscard]] static std::size_t place_of(int node, int component) {
    return 2 * static_cast<std::size_t>(node) + static_cast<std::size_t>(component);
  }

  std::vector<int> equation_;
  int count_ = 0;
};

}  // namespace deadshore::solver
