#pragma once

#include "io/results/stage_facts.h"
#include "io/sheet/monitoring.h"
#include "solver/result/results.h"

#include <string>
#include <vector>

/// The order of work as someone on site follows it. N, mm.
namespace deadshore::io {

struct SiteStep {
  int number = 0;
  std::string stage;  ///< its name
  std::string title;  ///< the same with a capital
  double day = 0.0;
  std::vector<std::string> work;         ///< what is done, one sentence each
  std::vector<std::string> hold_points;  ///< what must be so before the next step is begun

  bool worked_out = false;  ///< whether there are figures: the work was followed so far
  bool stands = true;       ///< where not, nothing after it is given
  std::string needle;       ///< the most loaded; empty where none carries anything
  double needle_load = not_known;
  double movement = not_known;  ///< most that any mark has moved down since the first step
  double stop_at = not_known;   ///< by `stop_value`
};

struct SitePlan {
  std::vector<SiteStep> steps;
  std::vector<MonitoringMark> marks;
  double slight_damage = 0.0;  ///< see `movement_at_slight_damage`

  [[nodiscard]] bool stands() const { return std::ranges::all_of(steps, &SiteStep::stands); }
};

/// Steps with figures where the work was followed stage by stage, up to the first stage in which
/// the wall does not stand; the usual steps without figures for a job at once.
[[nodiscard]] SitePlan site_plan(const solver::JobResult& result);

/// Whether movement expected after a step is already past what any stop value may be: the engineer
/// has to set one before the step is begun.
[[nodiscard]] bool is_past_stop(const SiteStep& step);

}  // namespace deadshore::io
