#pragma once

#include "solver/model/job.h"
#include "solver/model/results.h"
#include "solver/stages/stage_state.h"

namespace deadshore::solver {

/// Limit analysis of the wall at one stage of the work, on a mesh of its own.
/// \throws SolveError where neither bound is found; mesh::GeometryError where it cannot be meshed
[[nodiscard]] StageSafety stage_safety(const Job& job, const StageState& state,
                                       const mesh::WallMesh& drawn_on);

}  // namespace deadshore::solver
