#include "io/sheet/site_steps.h"

#include "io/sheet/step_words.h"
#include "solver/job/usual_stages.h"

#include <cmath>

namespace deadshore::io {
namespace {

using solver::Stage;
using solver::StageResult;

/// The whole order of work, those stages too that were not come to.
std::vector<Stage> stages_in_order(const solver::JobResult& result) {
  if (!is_staged(result) || !result.job.stages.empty()) return solver::stages_of(result.job);
  std::vector<Stage> stages;
  for (const StageResult& stage : result.stages) {
    stages.push_back({stage.name, stage.day, stage.operations});
  }
  return stages;
}

void add_figures(const StageResult& stage, const SitePlan& plan, SiteStep& step) {
  const StageFacts facts = facts_of(stage);
  step.worked_out = true;
  step.stands = facts.stands;
  if (!facts.stands) return;
  step.needle = facts.needle;
  step.needle_load = facts.needle_load;
  const std::size_t index = plan.steps.size();
  step.movement = most_movement(plan.marks, index);
  // The first step only sets the zero.
  if (index > 0) step.stop_at = stop_value(step.movement, plan.slight_damage);
}

}  // namespace

SitePlan site_plan(const solver::JobResult& result) {
  SitePlan plan;
  plan.marks = monitoring_marks(result);
  plan.slight_damage = movement_at_slight_damage(result.job);
  const std::vector<Stage> stages = stages_in_order(result);
  for (std::size_t i = 0; i < stages.size(); ++i) {
    SiteStep step;
    step.number = static_cast<int>(i) + 1;
    step.stage = stages[i].name;
    step.title = with_capital(stages[i].name);
    step.day = stages[i].day;
    const StageResult* found = is_staged(result) ? find_stage(result, step.stage) : nullptr;
    if (found != nullptr) add_figures(*found, plan, step);
    if (step.stands) {
      step.work = work_of_step(result, stages[i]);
      step.hold_points = hold_points_of(result.job, stages, i);
    }
    plan.steps.push_back(std::move(step));
    if (!plan.steps.back().stands) break;
  }
  return plan;
}

bool is_past_stop(const SiteStep& step) {
  return step.number > 1 && std::isfinite(step.movement) && std::isnan(step.stop_at);
}

}  // namespace deadshore::io
