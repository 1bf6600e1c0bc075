#pragma once

#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/stages/stage_result.h"

#include <functional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// Called before each stage's analyses with the stage's name and its place among all, and after
/// every step of Newton's method.
using StageReport = std::function<void(const std::string& stage, double fraction)>;

/// Takes the wall through `stages` under the masonry models that the job asks for, cracks and
/// damage included. Ends after the first stage in which an analysis does not stand. `whole` is the
/// mesh of the whole wall. \throws SolveError as StagedWall
[[nodiscard]] std::vector<StageResult> run_stages(const Job& job, const std::vector<Stage>& stages,
                                                  const mesh::WallMesh& whole,
                                                  const StageReport& report = {});

}  // namespace deadshore::solver
