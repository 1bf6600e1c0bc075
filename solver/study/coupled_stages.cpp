#include "solver/study/coupled_stages.h"

#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/job/error.h"
#include "solver/study/needle_coupling.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double coupling_tolerance = 1e-4;         // change of a needle's stiffness
constexpr double staged_coupling_tolerance = 5e-3;  // the same where each pass takes all stages
constexpr int most_coupling_passes = 20;

/// The largest load of any stage and analysis on each needle, N.
std::vector<double> largest_loads(const Job& job, const std::vector<StageResult>& stages) {
  std::vector<double> loads(job.needles.size(), 0.0);
  for (const StageResult& stage : stages) {
    for (const PanelResult& analysis : stage.analyses) {
      for (std::size_t i = 0; i < loads.size(); ++i) {
        loads[i] = std::max(loads[i], analysis.needles[i].force);
      }
    }
  }
  return loads;
}

/// Models whose needles have one stiffness between them.
std::vector<std::vector<MasonryModel>> coupled_together(const Job& job,
                                                        const std::vector<Stage>& stages) {
  if (stages.size() > 1) return {job.analysis.masonry};
  std::vector<std::vector<MasonryModel>> each;
  for (const MasonryModel model : job.analysis.masonry) each.push_back({model});
  return each;
}

/// Adds the analyses of the same stages under other models.
void add_analyses(std::vector<StageResult> found, std::vector<StageResult>& stages) {
  if (stages.empty()) {
    stages = std::move(found);
    return;
  }
  for (std::size_t k = 0; k < std::min(found.size(), stages.size()); ++k) {
    std::ranges::move(found[k].analyses, std::back_inserter(stages[k].analyses));
  }
}

}  // namespace

mesh::WallMesh mesh_of_run(const Job& job, double size) {
  return job.analysis.sequence == Sequence::at_once ? mesh_of(job, size) : whole_mesh_of(job, size);
}

std::vector<StageResult> run_coupled(Job& job, const std::vector<Stage>& stages,
                                     const mesh::WallMesh& mesh, const StageRun* like,
                                     const StageReport& report) {
  const double tolerance = stages.size() > 1 ? staged_coupling_tolerance : coupling_tolerance;
  const std::vector<MasonryModel> asked = job.analysis.masonry;
  std::vector<StageResult> results;
  for (const std::vector<MasonryModel>& models : coupled_together(job, stages)) {
    job.analysis.masonry = models;
    std::vector<StageResult> found;
    for (int pass = 1;; ++pass) {
      if (pass > most_coupling_passes) {
        throw SolveError(fmt::format("wall and needle frames do not agree after {} passes",
                                     most_coupling_passes));
      }
      found = run_stages(job, stages, mesh, like, report);
      for (StageResult& stage : found) {
        for (PanelResult& analysis : stage.analyses) analysis.coupling_passes = pass;
      }
      if (!std::ranges::all_of(found, &StageResult::stands)) break;
      if (update_stiffness(job, largest_loads(job, found)) <= tolerance) break;
    }
    add_analyses(std::move(found), results);
  }
  job.analysis.masonry = asked;
  return results;
}

StageRun run_coarse(Job& job, const std::vector<Stage>& stages) {
  try {
    StageRun run;
    run.mesh = mesh_of_run(job, 2.0 * job.analysis.mesh_size);
    run.stages = run_coupled(job, stages, run.mesh);
    return run;
  } catch (const mesh::GeometryError&) {
  } catch (const SolveError&) {
  }
  return {};
}

}  // namespace deadshore::solver
