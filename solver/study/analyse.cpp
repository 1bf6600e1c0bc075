#include "solver/study/analyse.h"

#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/one_thread.h"
#include "solver/job/error.h"
#include "solver/job/usual_stages.h"
#include "solver/limit/stage_safety.h"
#include "solver/loads/house_loads.h"
#include "solver/result/result_stages.h"
#include "solver/study/comparison.h"
#include "solver/study/coupled_stages.h"
#include "solver/study/envelope.h"
#include "solver/study/mesh_error.h"
#include "solver/study/needle_coupling.h"
#include "solver/study/sensitivity_study.h"
#include "solver/study/stopwatch.h"
#include "solver/study/study_parts.h"

#include <algorithm>
#include <atomic>
#include <future>

namespace deadshore::solver {

namespace {

/// Says how far a job is; never goes back.
class Teller {
 public:
  explicit Teller(const Progress& progress) : progress_(progress) {}

  void operator()(std::string_view phase, double fraction) {
    furthest_ = std::max(furthest_, fraction);
    if (progress_) progress_(phase, furthest_);
  }

 private:
  const Progress& progress_;
  double furthest_ = 0.0;
};

/// Whether limit analysis sees no difference between two states: packing holds the soffit wherever
/// a needle might.
bool same_for_safety(const StageState& a, const StageState& b) {
  const auto in = [](NeedleState needle) { return is_in(needle); };
  return same_masonry(a, b) && a.packed_on.has_value() == b.packed_on.has_value() &&
         (a.packed_on || std::ranges::equal(a.needles, b.needles, {}, in, in)) &&
         a.shore_tight == b.shore_tight && a.line_load_share == b.line_load_share &&
         a.point_load_share == b.point_load_share;
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
  return safety;
}

void add_mesh_effects(const StageRun& coarse, JobResult& result) {
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
void add_mesh_errors(const Job& job, const StageRun& coarse, std::vector<StageResult>& stages) {
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
/// everything acting at once; where the work is followed in stages, on elements twice as large:
/// they explain, they are not results.
void add_comparison(const Job& job, JobResult& result) {
  const StageResult* stage = compared_stage(result);
  if (stage == nullptr) return;
  const WhatIf what_if = is_staged(result)
                             ? ask_what_if(job, mesh_of(job, 2.0 * job.analysis.mesh_size))
                             : ask_what_if(job, result.mesh);
  result.comparison = compare(job, result.hand, stage->analyses, what_if);
}

/// Stages on the run's own mesh, beside them their limit analysis, and what the coarser run says of
/// both. The stiffnesses of needle frames are left in `job`: followed through stages they are those
/// found on the larger elements.
void add_stages(Job& job, const std::vector<Stage>& stages, JobResult& result, Teller& tell,
                Stopwatch& stopwatch) {
  const bool staged = job.analysis.sequence == Sequence::staged;
  tell("coarse mesh", 0.02);
  Job coarse_job = job;
  const StageRun coarse = run_coarse(coarse_job, stages);
  if (staged) job = coarse_job;
  stopwatch.lap("coarse mesh, for the mesh effect");
  tell("mesh", 0.2);
  result.mesh = mesh_of_run(job, job.analysis.mesh_size);
  stopwatch.lap("mesh");
  std::atomic<std::size_t> end = staged ? stages.size() : 0;
  auto safety = std::async(std::launch::async, [&, settled = job] {
    const OneThread one;
    return judge_states(settled, states_of(settled, stages), result.mesh, end);
  });
  const auto report = [&](const std::string& stage, double part) { tell(stage, 0.2 + 0.6 * part); };
  result.stages = staged && !coarse.stages.empty()
                      ? run_stages(job, stages, result.mesh, &coarse, report)
                      : run_coupled(job, stages, result.mesh, &coarse, report);
  end = std::min(end.load(), result.stages.size());
  stopwatch.lap("stages");
  tell("limit analysis", 0.8);
  const auto judged = safety.get();
  for (std::size_t k = 0; k < result.stages.size(); ++k) result.stages[k].safety = judged[k];
  stopwatch.lap("limit analysis, after the stages");
  check_loads(job, result);
  result.job = job;
  if (staged) result.job.stages = stages;
  add_mesh_effects(coarse, result);
  add_mesh_errors(job, coarse, result.stages);
}

}  // namespace

JobResult analyse(const Job& given, const Progress& progress) {
  Teller tell(progress);
  Stopwatch stopwatch;
  JobResult result;
  Job job = with_house_loads(given);
  const std::vector<Stage> stages = analysed_stages(job);
  tell("hand method", 0.0);
  result.hand = spread_at_45_degrees(job);
  update_stiffness(job, hand_loads(result.hand));
  stopwatch.lap("hand method");
  add_stages(job, stages, result, tell, stopwatch);
  tell("why the methods differ", 0.9);
  add_comparison(job, result);
  stopwatch.lap("why the methods differ");
  tell("what if", 0.92);
  result.sensitivities = sensitivities_of(job, stages, result.stages, result.mesh);
  stopwatch.lap("what if");
  tell("needle checks", 0.95);
  design_needles(job, result);
  add_beam_and_site(result);
  stopwatch.lap("needle checks");
  tell("done", 1.0);
  result.times = stopwatch.times();
  return result;
}

}  // namespace deadshore::solver
