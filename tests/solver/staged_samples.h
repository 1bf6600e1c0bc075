#pragma once

#include "solver/job/job.h"
#include "solver/job/usual_stages.h"
#include "solver/result/results.h"

#include <string>
#include <vector>

namespace deadshore::solver::testing {

/// The invented wall with piers wide enough for a beam, a beam over its cut and a dead shore under
/// its floor; uncracked alone, staged.
[[nodiscard]] Job staged_wall_job();

/// The stages of a job run on its own mesh.
[[nodiscard]] std::vector<StageResult> run(const Job& job, const std::vector<Stage>& stages);
[[nodiscard]] std::vector<StageResult> run(const Job& job);

/// Everything at once on a mesh of the wall as cut, under one model.
[[nodiscard]] PanelResult at_once(Job job, const mesh::WallMesh& mesh, MasonryModel model);

/// The stage with this name; throws std::out_of_range where there is none.
[[nodiscard]] const StageResult& stage_named(const std::vector<StageResult>& stages,
                                             const std::string& name);

/// Its first analysis.
[[nodiscard]] const PanelResult& first_analysis(const std::vector<StageResult>& stages,
                                                const std::string& name);

}  // namespace deadshore::solver::testing
