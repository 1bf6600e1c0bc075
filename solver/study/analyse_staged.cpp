#include "solver/study/analyse_staged.h"

#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/one_thread.h"
#include "solver/job/error.h"
#include "solver/job/usual_stages.h"
#include "solver/limit/safety_order.h"
#include "solver/limit/stage_safety.h"
#include "solver/stages/stage_sequence.h"
#include "solver/study/comparison.h"
#include "solver/study/envelope.h"
#include "solver/study/mesh_error.h"
#include "solver/study/needle_coupling.h"
#include "solver/study/sensitivity_study.h"
#include "solver/study/study_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <future>

namespace deadshore::solver {

namespace {

constexpr double staged_coupling_tolerance = 0.005;  // change of a needle's stiffness
constexpr int most_staged_passes = 8;

/// The job's stages on one mesh.
struct StagedRun {
  mesh::WallMesh mesh;
  std::vector<StageResult> stages;
};

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

/// Runs the stages until needle frames and wall agree; leaves the frames' stiffnesses in `job`.
StagedRun run_coupled(Job& job, const std::vector<Stage>& stages, double size,
                      const StageReport& report) {
  StagedRun run;
  run.mesh = whole_mesh_of(job, size);
  for (int pass = 0; pass < most_staged_passes; ++pass) {
    run.stages = run_stages(job, stages, run.mesh, report);
    if (!std::ranges::all_of(run.stages, &StageResult::stands)) return run;
    if (update_stiffness(job, largest_loads(job, run.stages)) <= staged_coupling_tolerance)
      return run;
  }
  throw SolveError(
      fmt::format("wall and needle frames do not agree after {} passes", most_staged_passes));
}

/// The same on elements twice as large; no stages where those are too coarse for the wall.
StagedRun run_coarse(Job& job, const std::vector<Stage>& stages) {
  try {
    return run_coupled(job, stages, 2.0 * job.analysis.mesh_size, {});
  } catch (const mesh::GeometryError&) {
  } catch (const SolveError&) {
  }
  return {};
}

/// Safety of each state; states that are alike are judged once. None where it could not be found,
/// and from `end` on, which falls when the work turns out to end sooner.
std::vector<std::optional<StageSafety>> judge_states(const Job& job,
                                                     const std::vector<StageState>& states,
                                                     const mesh::WallMesh& mesh,
                                                     const std::atomic<std::size_t>& end) {
  std::vector<std::optional<StageSafety>> safety(states.size());
  for (std::size_t k = 0; k < std::min(states.size(), end.load()); ++k) {
    const auto earlier =
        std::find_if(states.begin(), states.begin() + static_cast<std::ptrdiff_t>(k),
                     [&](const StageState& state) { return same_for_safety(state, states[k]); });
    const std::size_t place = static_cast<std::size_t>(earlier - states.begin());
    if (place < k) {
      safety[k] = safety[place];
      continue;
    }
    try {
      safety[k] = stage_safety(job, states[k], mesh);
    } catch (const SolveError&) {
    } catch (const mesh::GeometryError&) {
    }
  }
  put_in_order(states, safety);
  return safety;
}

void add_mesh_effects(const StagedRun& coarse, JobResult& result) {
  const StageResult* fine = compared_stage(result);
  if (fine == nullptr) return;
  const std::size_t place = static_cast<std::size_t>(fine - result.stages.data());
  if (place >= coarse.stages.size()) return;
  const StageResult& same = coarse.stages[place];
  for (const PanelResult& analysis : fine->analyses) {
    const PanelResult* other = find_standing(same.analyses, analysis.model);
    if (other == nullptr || !analysis.stands()) continue;
    result.mesh_effects.push_back(mesh_effect(analysis, *other, coarse.mesh.size));
    result.mesh_effects.back().stage = fine->name;
  }
}

/// Stages of both runs come in the same order; either may end before the other.
void add_mesh_errors(const Job& job, const StagedRun& coarse, std::vector<StageResult>& stages) {
  const std::size_t both = std::min(stages.size(), coarse.stages.size());
  for (std::size_t k = 0; k < both; ++k) {
    for (PanelResult& analysis : stages[k].analyses) {
      const PanelResult* same = find_standing(coarse.stages[k].analyses, analysis.model);
      if (same == nullptr || !analysis.stands()) continue;
      analysis.mesh_error = mesh_error(job, analysis, *same);
    }
  }
}

/// Every stage in which the cut is out, against the hand sum of the wall as cut.
void check_loads(const Job& job, const JobResult& result) {
  for (const StageResult& stage : result.stages) {
    if (!stage.state.cut_out) continue;
    const double expected =
        result.hand.load_total - load_off(job, stage.state) + weight_of_works(job, stage.state);
    for (const PanelResult& analysis : stage.analyses) {
      check_load_total(analysis, expected);
    }
  }
}

/// Hand method against the stage compared. What the what-ifs change is seen on the wall as cut with
/// everything acting at once, on elements twice as large: they explain, they are not results.
void add_comparison(const Job& job, JobResult& result) {
  const StageResult* stage = compared_stage(result);
  if (stage == nullptr) return;
  const mesh::WallMesh mesh = mesh_of(job, 2.0 * job.analysis.mesh_size);
  PanelStudy study(job, mesh.quads);
  result.comparison = compare(job, result.hand, stage->analyses, ask_what_if(job, study));
}

}  // namespace

JobResult analyse_staged(const Job& job, const Progress& progress) {
  double furthest = 0.0;
  const auto tell = [&](std::string_view phase, double fraction) {
    furthest = std::max(furthest, fraction);
    if (progress) progress(phase, furthest);
  };
  Stopwatch stopwatch;
  JobResult result;
  Job coupled = job;
  const std::vector<Stage> stages = stages_of(job);
  const std::vector<StageState> states = states_of(job, stages);
  tell("hand method", 0.0);
  result.hand = spread_at_45_degrees(job);
  update_stiffness(coupled, hand_loads(result.hand));
  stopwatch.lap("hand method");

  tell("coarse mesh", 0.02);
  const StagedRun coarse = run_coarse(coupled, stages);
  stopwatch.lap("coarse mesh, for the mesh effect");
  tell("mesh", 0.2);
  result.mesh = whole_mesh_of(coupled, job.analysis.mesh_size);
  stopwatch.lap("mesh");
  std::atomic<std::size_t> end = stages.size();
  auto safety = std::async(std::launch::async, [&, settled = coupled] {
    const OneThread one;
    return judge_states(settled, states, result.mesh, end);
  });
  if (coarse.stages.empty()) {
    result.stages = run_coupled(coupled, stages, job.analysis.mesh_size, {}).stages;
  } else {
    result.stages =
        run_stages(coupled, stages, result.mesh,
                   [&](const std::string& stage, double part) { tell(stage, 0.2 + 0.6 * part); });
  }
  end = result.stages.size();
  stopwatch.lap("stages");
  tell("limit analysis", 0.8);
  const auto judged = safety.get();
  for (std::size_t k = 0; k < result.stages.size(); ++k) result.stages[k].safety = judged[k];
  stopwatch.lap("limit analysis, after the stages");
  check_loads(job, result);
  add_mesh_effects(coarse, result);
  add_mesh_errors(job, coarse, result.stages);
  result.job = coupled;
  result.job.stages = stages;
  tell("why the methods differ", 0.9);
  add_comparison(coupled, result);
  stopwatch.lap("why the methods differ");
  tell("what if", 0.92);
  result.sensitivities = sensitivity_staged(coupled, stages, result.stages, result.mesh);
  stopwatch.lap("what if");
  tell("needle checks", 0.95);
  design_needles(coupled, result);
  add_beam_and_site(result);
  stopwatch.lap("needle checks");
  tell("done", 1.0);
  result.times = stopwatch.times();
  return result;
}

}  // namespace deadshore::solver
