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
  /// Factor on all loads at which the wall crushes or has no equilibrium; the loose masonry is left
  /// out. Infinite values are given as `most_factor`.
  double factor = 0.0;
  double static_factor = 0.0;        ///< from stresses in equilibrium that the masonry bears
  double kinematic_factor = 0.0;     ///< from the mechanism; no less than the static one
  double factor_with_tension = 0.0;  ///< the same with the tensile strength of the job
  double loose_weight = 0.0;      ///< N, least weight that has no way to a support without tension
  double tension_needed = 0.0;    ///< least tensile strength with which all of it stands, N/mm2
  double mesh_size = 0.0;         ///< of the elements it was found on, mm
  int iterations = 0;             ///< factorisations, all its problems together
  double gap = 0.0;               ///< relative, between the static and the kinematic factor
  std::string verdict;            ///< plain sentences: stands or not, and what would end it or help
  std::vector<double> mechanism;  ///< velocity of each node of the job's mesh (2 per node), largest
                                  ///< 1; empty where there is no mechanism
};

/// Limit analysis of the wall at one stage of the work, on a mesh of its own.
///
/// By the theorems of limit analysis (Heyman, The Stone Skeleton (1995), for masonry): stresses in
/// equilibrium that masonry bears show that a load is safe, a mechanism that the load drives shows
/// that it is not. Both come from one convex problem. Masonry bears `compressive_strength` in
/// compression and no tension; lintels bear far more than ever governs, and needles, packing and
/// supported joist ends push without yielding, since they have checks of their own. Loads are
/// characteristic. Elements have 8 nodes and are about 200 mm large: stresses obey strength at
/// their Gauss points only, so that the two factors bound that of the wall as meshed, not of a
/// continuum; halving the elements lowers the factor by some 6% where masonry crushes over a
/// needle.
///
/// Where masonry is loose, the factor is the largest at which no more hangs, for each unit of the
/// factor, than at factor 1 and half a percent of all masonry besides: without that allowance an
/// arch as flat as crushing lets it be would always give 1. Where loads other than masonry cannot
/// be borne, there is no equilibrium and the factor is below 1. `tension_needed` is `most_factor`
/// where no tensile strength would do; `gap` is relative to the factor or to 1, the larger, and
/// less than 1e-3 but where round-off stops the search. `factor_with_tension` is that without
/// tension where the mechanism shows that the strength adds less than 2.5%.
///
/// \param drawn_on the mesh whose nodes the mechanism is given on
/// \throws SolveError where neither bound is found; mesh::GeometryError where it cannot be meshed
[[nodiscard]] StageSafety stage_safety(const Job& job, const StageState& state,
                                       const mesh::WallMesh& drawn_on);

/// Factors are not looked for beyond this.
inline constexpr double most_factor = 1000.0;

}  // namespace deadshore::solver
