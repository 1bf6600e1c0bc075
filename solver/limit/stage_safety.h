#pragma once

#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// How safe the wall is at one stage if masonry bears no tension, by limit analysis: strength
/// alone, whatever the stiffness.
struct StageSafety {
  /// Strict lower bound on the factor on all loads, from stresses in equilibrium that masonry bears:
  /// what every check goes by. Infinite values are given as `most_factor`.
  double factor = 0.0;
  double upper_factor = 0.0;  ///< strict upper bound, from a mechanism
  double let_go = 0.0;        ///< N, weight of masonry that is in neither bound: it has no way to a
                              ///< support without tension, or is the layer under a flat soffit
  double equilibrium_error = 0.0;  ///< of the stresses behind `factor`, over the largest load
  double tension_left = 0.0;       ///< largest tension in them, N/mm2
  double factor_with_tension = 0.0;  ///< with the tensile strength of the job; no bound
  double loose_weight = 0.0;      ///< N, least weight that has no way to a support without tension
  double tension_needed = 0.0;    ///< least tensile strength with which all of it stands, N/mm2
  int triangles = 0;              ///< that the bounds were found on
  int iterations = 0;             ///< factorisations, all its problems together
  std::string verdict;            ///< plain sentences: stands or not, and what would end it or help
  std::vector<double> mechanism;  ///< velocity of each node of the job's mesh (2 per node), largest
                                  ///< 1; empty where there is no mechanism
};

/// Limit analysis of the wall at one stage of the work, on meshes of its own.
///
/// By the theorems of limit analysis (Heyman, The Stone Skeleton (1995), for masonry): stresses in
/// equilibrium that masonry bears show that a load is safe, a mechanism that the load drives shows
/// that it is not. Masonry bears `compressive_strength` in compression and no tension; lintels bear
/// far more than ever governs, and needles, packing and supported joist ends push without yielding,
/// since they have checks of their own. Loads are characteristic.
///
/// `factor` and `upper_factor` are strict for the wall as a continuum (`stage_bounds`), once the
/// masonry of `let_go` is gone: the true factor lies between them. They are as far apart as their
/// triangles make them; `is_wide` says where that is too far to help. What is loose, the tension
/// needed and the factor with tension are estimates on elements of 8 nodes about 200 mm large that
/// know strength at their Gauss points only.
///
/// Where loads other than masonry cannot be borne, there is no equilibrium and the factor is below
/// 1. `tension_needed` is `most_factor` where no tensile strength would do.
///
/// \param drawn_on the mesh whose nodes the mechanism is given on
/// \throws SolveError where neither bound is found; mesh::GeometryError where it cannot be meshed
[[nodiscard]] StageSafety stage_safety(const Job& job, const StageState& state,
                                       const mesh::WallMesh& drawn_on);

/// Whether the bounds are too far apart to say more than that the factor is no less than the lower.
[[nodiscard]] bool is_wide(const StageSafety& safety);

/// Factors are not looked for beyond this.
inline constexpr double most_factor = 1000.0;

}  // namespace deadshore::solver
