#pragma once

#include "mesh/quad_mesh.h"
#include "solver/conic/second_order_cone.h"
#include "solver/fem/equation_map.h"
#include "solver/fem/quad_shape.h"
#include "solver/fem/stiffness_pattern.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace deadshore::solver {

/// The equations of equilibrium of a mesh of 8-node elements between the stresses at its Gauss
/// points (4 per quadrilateral, one after the other) and the forces on its free displacements.
/// Stresses are `Mohr`, and the strains that work on them are given times the volume of their
/// Gauss point.
class Equilibrium {
 public:
  /// \param thickness of each quadrilateral, in any unit: forces come in stress times mm times that
  /// \throws SolveError if the elements have 4 nodes: they are too stiff in bending
  Equilibrium(const mesh::QuadMesh& mesh, std::span<const Support> supports,
              std::span<const double> thickness);

  [[nodiscard]] const EquationMap& equations() const { return equations_; }
  [[nodiscard]] const StiffnessPattern& pattern() const { return pattern_; }
  [[nodiscard]] int point_count() const { return quad_points * quad_count_; }

  /// Adds the forces that stresses exert to a free vector.
  void add_forces(std::span<const Mohr> stress, Eigen::VectorXd& force) const;

  /// Volume strain at each Gauss point under the free displacements `u`.
  void strains(const Eigen::VectorXd& u, std::span<Mohr> strain) const;

  /// Adds B^T D B, where D = root^T root maps volume strain to stress at each Gauss point.
  void add_stiffness(std::span<const Eigen::Matrix3d> root, SparseStiffness& stiffness) const;

 private:
  static constexpr int nodes = 8;
  using StrainMatrix = Eigen::Matrix<double, 3, 2 * nodes>;

  [[nodiscard]] StrainMatrix strain_matrix(int quad, int point) const;
  [[nodiscard]] std::span<const int> numbers(int quad) const;

  std::vector<double> thickness_;  ///< of each quadrilateral
  EquationMap equations_;
  StiffnessPattern pattern_;
  QuadGeometry geometry_;
  int quad_count_ = 0;
  std::vector<int> numbers_;  ///< equation of each displacement of each quadrilateral
};

}  // namespace deadshore::solver
