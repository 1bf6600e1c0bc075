#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/limit/limit_program.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace deadshore::solver {

/// A wall at one stage as limit analysis sees it: rigid and perfectly plastic, needles and packing
/// unyielding and as strong as need be, whatever their stiffness, slack and preload.
///
/// Lintels bear `lintel_strength` times the masonry's strength both ways, so that they never
/// govern; a padstone in place has its own strength. The permanent beam counts as unyielding where
/// it is packed: it has checks of its own.
struct LimitProblem {
  mesh::QuadMesh quads;  ///< what is there at the stage
  std::vector<Support> supports;
  std::vector<double> thickness;    ///< of each quadrilateral, mm
  std::vector<double> compression;  ///< strength of each quadrilateral, N/mm2
  std::vector<double> tension;      ///< same; 0 for masonry
  std::vector<char> is_masonry;     ///< of each quadrilateral
  Eigen::VectorXd masonry_weight;   ///< of each node, N
  Eigen::VectorXd other_load;       ///< of each node downwards, N: applied, and other weight
  std::vector<LinearForm> pushing;  ///< nodal: where something can push the wall up
  double masonry_strength = 0.0;    ///< compressive, N/mm2
};

inline constexpr double lintel_strength = 10.0;

/// What a region is made of. Its tension is that of a material that is not masonry.
struct RegionMaterial {
  double thickness = 0.0;    ///< mm
  double unit_weight = 0.0;  ///< N/mm3
  double compression = 0.0;  ///< N/mm2
  double tension = 0.0;      ///< N/mm2
  bool is_masonry = true;
};
[[nodiscard]] RegionMaterial material_of(const Job& job, const StageState& state,
                                         mesh::Region region);

/// \param quads the quadrilaterals that are there at the stage, with the chains of the whole mesh
/// \throws SolveError if part of a load has no masonry to stand on
[[nodiscard]] LimitProblem limit_problem(const Job& job, const StageState& state,
                                         mesh::QuadMesh quads);

/// Lets something push up along a chain of sides within `x`.
void add_pushing(LimitProblem& problem, mesh::Chain chain, mesh::Interval x);

}  // namespace deadshore::solver
