#pragma once

#include "mesh/plane.h"
#include "solver/limit/limit_problem.h"
#include "solver/limit/stage_safety.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// What the analyses of a stage found beside its numbers.
struct LimitFindings {
  bool has_equilibrium = true;     ///< without tension, but for loose masonry
  std::vector<double> letting_go;  ///< how it lets go at factor 1; empty where all of it stands
  mesh::Point crushes;             ///< where it crushes at the factor
};

/// Plain sentences on a stage: whether the wall stands without tension in its mortar, up to which
/// factor, what would fall, and what would hold it. Each remedy named has been tried: with it, all
/// of the wall stands. Where the rest stands and less than 0.5 kN and 1% of the masonry above the
/// soffit is loose, that it stands comes first and no remedy is tried. Adds the factorisations of
/// the trials to `safety.iterations`.
[[nodiscard]] std::string verdict_of(const Job& job, const StageState& state,
                                     const LimitProblem& problem, const LimitFindings& findings,
                                     StageSafety& safety);

}  // namespace deadshore::solver
