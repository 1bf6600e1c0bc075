#pragma once

#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/result/results.h"
#include "solver/stages/stage_sequence.h"

#include <vector>

/// The stages of a job on one mesh, wall and needle frames solved in turn until they agree.
namespace deadshore::solver {

/// The wall at once is meshed as cut; stage by stage it is meshed whole, with a region for
/// everything that will come out. \throws mesh::GeometryError
[[nodiscard]] mesh::WallMesh mesh_of_run(const Job& job, double size);

/// Runs the stages until needle frames and wall agree; leaves the frames' stiffnesses in `job`.
///
/// Through stages a needle keeps one stiffness, that under its largest load of any stage and
/// analysis. In a single stage each masonry model has its own, that under the load which the model
/// gives it. Ends at once where an analysis does not stand.
/// \param like the same on larger elements, to start from; null or without stages: none
/// \throws SolveError if they do not agree after 20 passes, or as StagedWall
[[nodiscard]] std::vector<StageResult> run_coupled(Job& job, const std::vector<Stage>& stages,
                                                   const mesh::WallMesh& mesh,
                                                   const StageRun* like = nullptr,
                                                   const StageReport& report = {});

/// The same on elements twice as large: for the mesh effect, and as a start for the finer mesh. No
/// stages where those are too coarse for the wall.
[[nodiscard]] StageRun run_coarse(Job& job, const std::vector<Stage>& stages);

}  // namespace deadshore::solver
