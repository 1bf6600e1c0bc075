#pragma once

#include "mesh/quad_mesh.h"
#include "solver/model/job.h"
#include "solver/panel/side_points.h"
#include "solver/panel/stiffness_pattern.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace deadshore::solver {

/// A needle's contact with the soffit: a bed of springs that can only push up.
///
/// Force per mm of bearing at a point that moves by u_y: (K / b) * max(0, -u_y - slack + preload /
/// K), the gradient of a convex energy. Where the bearing covers part of an element it is
/// integrated over that part.
class NeedleBearing {
 public:
  /// \throws SolveError if the soffit's sides do not cover the whole bearing.
  NeedleBearing(const mesh::QuadMesh& mesh, std::span<const mesh::Side> soffit,
                const Needle& needle);

  /// Spring energy at displacement `u` (2 per node), N mm.
  [[nodiscard]] double energy(const Eigen::VectorXd& u) const;

  /// Adds the forces by which the springs resist `u` to `force` (2 per node), N.
  void add_force(const Eigen::VectorXd& u, Eigen::VectorXd& force) const;

  /// Adds the stiffness of the points in contact.
  void add_tangent(const Eigen::VectorXd& u, const EquationMap& equations,
                   const StiffnessPattern& pattern, SparseStiffness& stiffness) const;

  /// Total push, mean settlement and share of the bearing in contact.
  struct State {
    double force = 0.0;       ///< N
    double settlement = 0.0;  ///< mm, downwards
    double contact = 0.0;     ///< 0 to 1
  };
  [[nodiscard]] State state(const Eigen::VectorXd& u) const;

 private:
  /// Closure of the spring at a point, mm; it pushes where positive.
  [[nodiscard]] double closure(const SidePoint& point, const Eigen::VectorXd& u) const;

  std::vector<SidePoint> points_;
  double width_ = 0.0;
  double bed_stiffness_ = 0.0;  ///< N/mm per mm of bearing
  double rest_ = 0.0;           ///< settlement at which it starts to push, mm (< 0: preloaded)
};

}  // namespace deadshore::solver
