#pragma once

#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/result/results.h"

namespace deadshore::solver {

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
