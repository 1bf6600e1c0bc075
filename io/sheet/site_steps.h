#pragma once

#include "solver/result/results.h"
#include "solver/study/stage_facts.h"

#include <cstddef>
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
  double needle_load = solver::not_known;
  solver::StageMovement movement;  ///< of the marks
};

/// Steps with figures where the work was followed stage by stage, up to the first stage in which
/// the wall does not stand; the usual steps without figures for a job at once.
[[nodiscard]] std::vector<SiteStep> site_steps(const solver::JobResult& result);

/// "M1", by its place among the marks.
[[nodiscard]] std::string mark_name(std::size_t place);

/// "over N1", "middle of the cut", "left pier"
[[nodiscard]] std::string mark_place(const solver::Job& job, const solver::MonitoringMark& mark);

/// The rule of stop values in words, with this job's figure.
[[nodiscard]] std::string stop_rule(double slight_damage);

}  // namespace deadshore::io
