#include "solver/study/analyse.h"

#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/point_location.h"
#include "solver/job/error.h"
#include "solver/job/stage_state.h"
#include "solver/loads/house_loads.h"
#include "solver/study/analyse_staged.h"
#include "solver/study/comparison.h"
#include "solver/study/mesh_error.h"
#include "solver/study/needle_coupling.h"
#include "solver/study/panel_study.h"
#include "solver/study/sensitivity_study.h"
#include "solver/study/study_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double coupling_tolerance = 1e-4;  // change of a needle's stiffness
constexpr int most_coupling_passes = 20;

/// The job on elements twice as large: for the mesh effect, and as a start for the finer mesh.
struct CoarseStudy {
  mesh::WallMesh mesh;
  std::vector<PanelResult> analyses;  ///< fewer than asked for where the mesh is too coarse
};

/// Wall and needle frames in turn until they agree, for one masonry model. The frames' stiffnesses
/// are left in `job`.
PanelResult analyse_coupled(Job& job, PanelStudy& study, MasonryModel masonry,
                            Eigen::VectorXd start, const PanelStudy::Report& report,
                            Stopwatch& stopwatch) {
  for (int pass = 1; pass <= most_coupling_passes; ++pass) {
    PanelResult result = study.analyse(job, masonry, start, report, stopwatch);
    result.coupling_passes = pass;
    if (!result.stands()) return result;
    const double change = update_stiffness(job, forces_of(result).needles);
    stopwatch.lap("needle frames");
    if (change <= coupling_tolerance) return result;
    start = Eigen::Map<const Eigen::VectorXd>(
        result.fields.displacement.data(),
        static_cast<Eigen::Index>(result.fields.displacement.size()));
  }
  throw SolveError(
      fmt::format("wall and needle frames do not agree after {} passes", most_coupling_passes));
}

CoarseStudy study_coarse(Job job, Stopwatch& stopwatch) {
  CoarseStudy coarse;
  try {
    coarse.mesh = mesh_of(job, 2.0 * job.analysis.mesh_size);
    PanelStudy study(job, coarse.mesh.quads);
    Stopwatch unused;
    for (const MasonryModel masonry : job.analysis.masonry) {
      coarse.analyses.push_back(analyse_coupled(job, study, masonry, {}, {}, unused));
    }
  } catch (const mesh::GeometryError&) {  // too coarse for this wall: the fine mesh decides alone
  } catch (const SolveError&) {
  }
  stopwatch.lap("coarse mesh, for the mesh effect");
  return coarse;
}

Eigen::VectorXd start_from(const CoarseStudy& coarse, MasonryModel model,
                           const mesh::QuadMesh& fine) {
  const PanelResult* analysis = find_standing(coarse.analyses, model);
  if (analysis == nullptr) return {};
  return carry_over(coarse.mesh.quads, analysis->fields.displacement, fine);
}

JobResult analyse_at_once(const Job& job, const Progress& progress) {
  double furthest = 0.0;
  const auto tell = [&](std::string_view phase, double fraction) {
    furthest = std::max(furthest, fraction);
    if (progress) progress(phase, furthest);
  };
  Stopwatch stopwatch;
  JobResult result;
  Job coupled = job;
  tell("hand method", 0.0);
  result.hand = spread_at_45_degrees(job);
  stopwatch.lap("hand method");
  update_stiffness(coupled, hand_loads(result.hand));
  stopwatch.lap("needle frames");
  tell("coarse mesh", 0.02);
  const CoarseStudy coarse = study_coarse(coupled, stopwatch);
  tell("mesh", 0.15);
  result.mesh = mesh_of(job);
  stopwatch.lap("mesh");
  PanelStudy study(job, result.mesh.quads);
  stopwatch.lap("pattern and ordering");

  const Stage stage = stage_at_once(job);
  result.stages.push_back(
      {stage.name, {}, stage.day, stage.operations, state_after(job, state_before(job), stage)});
  std::vector<PanelResult>& analyses = result.stages.front().analyses;
  for (const MasonryModel masonry : job.analysis.masonry) {
    const auto report = [&](MasonryModel model, int step, double) {
      const double start = model == MasonryModel::uncracked ? 0.15 : 0.2;
      tell(to_string(model), start + 0.6 * (1.0 - std::exp(-0.1 * step)));
    };
    const Eigen::VectorXd start = start_from(coarse, masonry, result.mesh.quads);
    analyses.push_back(analyse_coupled(coupled, study, masonry, start, report, stopwatch));
    const PanelResult* same = find_standing(coarse.analyses, masonry);
    if (same == nullptr || !analyses.back().stands()) continue;
    result.mesh_effects.push_back(mesh_effect(analyses.back(), *same, coarse.mesh.size));
    analyses.back().mesh_error = mesh_error(job, analyses.back(), *same);
  }
  for (const PanelResult& analysis : analyses) check_load_total(analysis, result.hand.load_total);
  tell("why the methods differ", 0.85);
  result.job = coupled;
  result.comparison = compare(coupled, result.hand, analyses, ask_what_if(coupled, study));
  stopwatch.lap("why the methods differ");
  tell("what if", 0.9);
  result.sensitivities = sensitivity_at_once(coupled, result.mesh, analyses);
  stopwatch.lap("what if");
  tell("needle checks", 0.95);
  design_needles(coupled, result);
  add_beam_and_site(result);
  stopwatch.lap("needle checks");
  tell("done", 1.0);
  result.times = stopwatch.times();
  return result;
}

}  // namespace

JobResult analyse(const Job& given, const Progress& progress) {
  const Job job = with_house_loads(given);
  return job.analysis.sequence == Sequence::staged ? analyse_staged(job, progress)
                                                   : analyse_at_once(job, progress);
}

}  // namespace deadshore::solver
