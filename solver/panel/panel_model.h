#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"
#include "solver/fem/plane_tensor.h"
#include "solver/fem/quad_shape.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/fem/stiffness_pattern.h"
#include "solver/panel/beam_line.h"
#include "solver/panel/contact_bed.h"
#include "solver/panel/panel_law.h"
#include "solver/panel/rigid_motion.h"

#include <Eigen/Core>

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace deadshore::solver {

/// What is done to a panel: materials, contacts and loads, over supports that do not change.
struct PanelLoading {
  std::vector<PanelMaterial> materials;  ///< one for each region of the mesh
  std::vector<ContactBed> beds;          ///< of needles, joist ends, packing and bearings
  Eigen::VectorXd load;                  ///< nodal forces, 2 per node, N

  /// For each region, the displacements (2 per node, mm) at which it is free of stress, where those
  /// are not zero: a padstone built into a wall that has moved. Empty: all are free of stress at
  /// displacement zero.
  std::vector<Eigen::VectorXd> datum = {};

  /// The datum of a region by its number; null where it is displacement zero.
  [[nodiscard]] const Eigen::VectorXd* datum_of(int region) const {
    const std::size_t r = static_cast<std::size_t>(region);
    return r < datum.size() && datum[r].size() > 0 ? &datum[r] : nullptr;
  }
};

/// Stress of masonry at a Gauss point.
struct PointStress {
  Voigt stress = Voigt::Zero();                       ///< N/mm2
  Eigen::Matrix3d tangent = Eigen::Matrix3d::Zero();  ///< d stress / d strain, N/mm2
};

/// Push of a bed at a point of contact, per mm of its length.
struct PointPush {
  double push = 0.0;       ///< N/mm
  double stiffness = 0.0;  ///< d push / d closure, N/mm2
};

/// A law for masonry, point by point; `strain` is measured from the region's datum. It is called
/// from several threads, for each point by one.
using MasonryLaw = std::function<PointStress(int quad, int point, const Voigt& strain)>;
/// A law for contact, point by point; `closure` in mm. Called from several threads likewise.
using ContactLaw = std::function<PointPush(std::size_t bed, std::size_t point, double closure)>;

/// A panel on its mesh and supports, with everything that is worked out once: equation numbers,
/// shape gradients, the pattern of the stiffness and its symbolic factor. A wall on two needles as
/// cut, in masonry that cracks:
/// \code
/// Job job;
/// job.wall.length = 4000.0;
/// job.wall.top = {{0.0, 3300.0}, {4000.0, 3300.0}};
/// job.wall.cut = {800.0, 3200.0, 2100.0};
/// job.thickness = 215.0;
/// job.masonry = {"brick", 19e-6, 3000.0, 0.2, 5.0, 0.1};
/// job.needles = {{"N1", 1600.0, 152.0, 50e3}, {"N2", 2400.0, 152.0, 50e3}};
/// const mesh::WallMesh wall = mesh_of(job);
/// PanelModel model(wall.quads, supports_of(job, wall.quads));
/// const PanelLoading loading = loading_of(job, model, MasonryModel::cracked);
/// Eigen::VectorXd u = model.start();
/// if (!minimise(model, loading, u).converged) throw SolveError("no convergence");
/// for (const ContactBed& needle : loading.beds) {
///   fmt::print("{:.1f} kN\n", state_of(needle, u).force / 1e3);
/// }
/// \endcode
///
/// The total energy of a loading is the sum of the wall's, the beam's, the beds' and the loads'.
/// Vectors are nodal (2 entries per node: those of the mesh, then those of the beam) or free, see
/// EquationMap. The mesh must outlive the model.
class PanelModel {
 public:
  /// Numbers the equations and analyses the stiffness symbolically.
  PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports);

  /// The same with a beam. `beam_beds` are all the beds between it and the wall that loadings may
  /// have.
  PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports,
             std::optional<BeamLine> beam, std::span<const ContactBed> beam_beds);

  [[nodiscard]] const mesh::QuadMesh& mesh() const { return mesh_; }
  [[nodiscard]] const QuadGeometry& geometry() const { return geometry_; }
  [[nodiscard]] const EquationMap& equations() const { return equations_; }
  [[nodiscard]] const std::optional<BeamLine>& beam() const { return beam_; }

  /// Nodes of the mesh and of the beam.
  [[nodiscard]] int node_count() const {
    return mesh_.node_count() + (beam_ ? beam_->node_count() : 0);
  }

  /// Displacements to start from: zero but for those that supports give; nodal, mm.
  [[nodiscard]] Eigen::VectorXd start() const;

  /// Nodal forces of the regions' own weight and the beam's, N.
  [[nodiscard]] Eigen::VectorXd weight(std::span<const PanelMaterial> materials) const;

  /// Total potential energy at `u`, N mm.
  [[nodiscard]] double energy(const PanelLoading& loading, const Eigen::VectorXd& u) const;

  /// Internal forces at `u`, of wall, beam and beds: the gradient of the energy without the loads,
  /// nodal, N. Where `stiffness` is given it becomes their tangent over the free equations.
  [[nodiscard]] Eigen::VectorXd resistance(const PanelLoading& loading, const Eigen::VectorXd& u,
                                           SparseStiffness* stiffness = nullptr) const;

  /// The same with any laws for masonry and contact in place of the loading's own.
  [[nodiscard]] Eigen::VectorXd assemble(const PanelLoading& loading, const Eigen::VectorXd& u,
                                         const MasonryLaw& masonry, const ContactLaw& contact,
                                         SparseStiffness* stiffness = nullptr) const;

  /// Between nodal and free vectors: see EquationMap.
  [[nodiscard]] Eigen::VectorXd spread_out(const Eigen::VectorXd& free) const {
    return equations_.spread_out(free);
  }
  [[nodiscard]] Eigen::VectorXd gather_free(const Eigen::VectorXd& nodal) const {
    return equations_.gather_free(nodal);
  }

  /// A stiffness matrix over the free equations with all values zero.
  [[nodiscard]] SparseStiffness empty_stiffness() const { return pattern_.empty(); }
  /// The factor for matrices of that pattern, analysed already.
  [[nodiscard]] SparseCholesky& factor() { return factor_; }
  [[nodiscard]] const RigidMotions& rigid_motions() const { return rigid_motions_; }

  /// Strain at a Gauss point, Voigt (xx, yy, gamma_xy).
  [[nodiscard]] Voigt strain(int quad, int point, const Eigen::VectorXd& u) const;

  /// The same since the region's datum: what its material answers to.
  [[nodiscard]] Voigt strain(const PanelLoading& loading, int quad, int point,
                             const Eigen::VectorXd& u) const;

 private:
  template <class Masonry, class Contact>
  Eigen::VectorXd assemble_by(const PanelLoading& loading, const Eigen::VectorXd& u,
                              const Masonry& masonry, const Contact& contact,
                              SparseStiffness* stiffness) const;
  template <int Nodes, class Masonry>
  void add_wall(const PanelLoading& loading, const Eigen::VectorXd& u, const Masonry& masonry,
                Eigen::VectorXd& force, SparseStiffness* stiffness) const;
  void add_beam(const Eigen::VectorXd& u, Eigen::VectorXd& force, SparseStiffness* stiffness) const;

  const mesh::QuadMesh& mesh_;
  std::vector<Support> supports_;
  std::optional<BeamLine> beam_;
  RigidMotions rigid_motions_;
  EquationMap equations_;
  QuadGeometry geometry_;
  StiffnessPattern pattern_;
  SparseCholesky factor_;
};

/// Nodal forces that are equivalent to stresses at the Gauss points, N.
/// \param stress 4 per quadrilateral, in its order of Gauss points, N/mm2
[[nodiscard]] Eigen::VectorXd forces_of_stress(const PanelModel& model,
                                               std::span<const PanelMaterial> materials,
                                               std::span<const Voigt> stress);

}  // namespace deadshore::solver
