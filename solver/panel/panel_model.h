#pragma once

#include "mesh/quad_mesh.h"
#include "solver/model/plane_tensor.h"
#include "solver/panel/equation_map.h"
#include "solver/panel/needle_bearing.h"
#include "solver/panel/panel_law.h"
#include "solver/panel/quad_geometry.h"
#include "solver/panel/sparse_cholesky.h"
#include "solver/panel/stiffness_pattern.h"

#include <Eigen/Core>

#include <memory>
#include <span>
#include <vector>

namespace deadshore::solver {

/// What is done to a panel: materials, needles and loads, over supports that do not change.
struct PanelLoading {
  std::vector<PanelMaterial> materials;  ///< one for each region of the mesh
  std::vector<NeedleBearing> bearings;
  Eigen::VectorXd load;  ///< nodal forces, 2 per node, N
};

/// A panel on its mesh and supports, with everything that is worked out once: equation numbers,
/// shape gradients, the pattern of the stiffness and its symbolic factor.
///
/// The total energy of a loading is the sum of the wall's, the bearings' and the loads'. All
/// vectors have 2 entries per node. The mesh must outlive the model.
class PanelModel {
 public:
  PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports);

  [[nodiscard]] const mesh::QuadMesh& mesh() const { return mesh_; }
  [[nodiscard]] const QuadGeometry& geometry() const { return geometry_; }
  [[nodiscard]] const EquationMap& equations() const { return equations_; }

  /// Zero but for the displacements that supports give.
  [[nodiscard]] Eigen::VectorXd start() const;

  /// Nodal forces of the regions' own weight, N.
  [[nodiscard]] Eigen::VectorXd weight(std::span<const PanelMaterial> materials) const;

  /// Total energy, N mm.
  [[nodiscard]] double energy(const PanelLoading& loading, const Eigen::VectorXd& u) const;

  /// Forces by which wall and bearings resist `u`; where `stiffness` is given it becomes their
  /// tangent over the free equations.
  [[nodiscard]] Eigen::VectorXd resistance(const PanelLoading& loading, const Eigen::VectorXd& u,
                                           SparseStiffness* stiffness = nullptr) const;

  /// Displacements of all nodes from a change of the free ones: zero where supported.
  [[nodiscard]] Eigen::VectorXd spread_out(const Eigen::VectorXd& free) const;
  [[nodiscard]] Eigen::VectorXd gather_free(const Eigen::VectorXd& nodal) const;

  [[nodiscard]] SparseStiffness empty_stiffness() const { return pattern_.empty(); }
  [[nodiscard]] SparseCholesky& factor() { return factor_; }

  /// Strain at a Gauss point, Voigt (xx, yy, gamma_xy).
  [[nodiscard]] Voigt strain(int quad, int point, const Eigen::VectorXd& u) const;

 private:
  template <int Nodes>
  void add_wall(const PanelLoading& loading, const Eigen::VectorXd& u, Eigen::VectorXd& force,
                SparseStiffness* stiffness) const;

  const mesh::QuadMesh& mesh_;
  std::vector<Support> supports_;
  EquationMap equations_;
  QuadGeometry geometry_;
  StiffnessPattern pattern_;
  SparseCholesky factor_;
};

/// Nodal forces of stresses given at the Gauss points (4 per quadrilateral, Voigt), N.
[[nodiscard]] Eigen::VectorXd forces_of_stress(const PanelModel& model,
                                               std::span<const PanelMaterial> materials,
                                               std::span<const Voigt> stress);

}  // namespace deadshore::solver
