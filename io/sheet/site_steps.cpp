#include "io/sheet/site_steps.h"

#include "io/note/wording.h"
#include "io/sheet/step_words.h"
#include "solver/job/usual_stages.h"

#include <fmt/format.h>

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

void add_figures(const StageResult& stage, SiteStep& step) {
  const solver::StageFacts facts = facts_of(stage);
  step.worked_out = true;
  step.stands = facts.stands;
  if (!facts.stands) return;
  step.needle = facts.needle;
  step.needle_load = facts.needle_load;
}

}  // namespace

std::vector<SiteStep> site_steps(const solver::JobResult& result) {
  std::vector<SiteStep> steps;
  const std::vector<Stage> stages = stages_in_order(result);
  for (std::size_t i = 0; i < stages.size(); ++i) {
    SiteStep step;
    step.number = static_cast<int>(i) + 1;
    step.stage = stages[i].name;
    step.title = with_capital(stages[i].name);
    step.day = stages[i].day;
    if (is_staged(result) && i < result.stages.size()) {
      add_figures(result.stages[i], step);
      step.movement = result.monitoring.stages.at(i);
    }
    if (step.stands) {
      step.work = work_of_step(result, stages[i]);
      step.hold_points = hold_points_of(result.job, stages, i);
    }
    steps.push_back(std::move(step));
    if (!steps.back().stands) break;
  }
  return steps;
}

std::string mark_name(std::size_t place) {
  return fmt::format("M{}", place + 1);
}

std::string mark_place(const solver::Job& job, const solver::MonitoringMark& mark) {
  switch (mark.place) {
    case solver::MarkPlace::left_pier:
      return "left pier";
    case solver::MarkPlace::over_needle:
      return "over " + job.needles.at(mark.needle).name;
    case solver::MarkPlace::middle_of_cut:
      return "middle of the cut";
    case solver::MarkPlace::right_pier:
      return "right pier";
  }
  return "";
}

std::string stop_rule(double slight_damage) {
  return fmt::format(
      "Stop value: 1.5 times the most that any mark is expected to have moved down after the step, "
      "rounded up to 0.5 mm, no less than 1 mm, and never more than {} mm, where the wall over the "
      "cut comes to damage category 2 (slight). Our rule: common practice, no source; the engineer "
      "may set less.",
      two_decimals(slight_damage));
}

}  // namespace deadshore::io
