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

/// Stages on one mesh.
struct StageRun {
  mesh::WallMesh mesh;
  std::vector<StageResult> stages;
};

/// Takes the wall through `stages` under the masonry models that the job asks for. Ends after the
/// first stage in which an analysis does not stand. With more stages than one, cracks and damage
/// are told, since they are of what moved after the first.
///
///     const std::vector<Stage> stages = analysed_stages(job);
///     const mesh::WallMesh whole = whole_mesh_of(job, job.analysis.mesh_size);
///     const auto results = run_stages(job, stages, whole);
///
/// \param mesh of the whole wall, or of so much of it as is there in all stages
/// \param like the same stages on other elements, to start each from; null: none
/// \throws SolveError as StagedWall
[[nodiscard]] std::vector<StageResult> run_stages(const Job& job, const std::vector<Stage>& stages,
                                                  const mesh::WallMesh& mesh,
                                                  const StageRun* like = nullptr,
                                                  const StageReport& report = {});

}  // namespace deadshore::solver
