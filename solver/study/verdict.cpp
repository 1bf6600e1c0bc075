#include "solver/study/verdict.h"

#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

bool is_of_strength(const Check& check) {
  return check.unit != "mm";
}

double most_movement(const Monitoring& monitoring) {
  double most = not_known;
  for (const MonitoringMark& mark : monitoring.marks)
    for (const double movement : mark.movement)
      if (std::isfinite(movement) && !(movement <= most)) most = movement;
  return most;
}

std::string in_kilonewtons(double newtons) {
  return fmt::format("{:.2f} kN", newtons / kN);
}

}  // namespace

bool Verdict::nothing_fails() const {
  return stands && !by_tension_alone && no_factor.empty() && !(loose_weight > 0.0) && !(load_on_nothing > 0.0) &&
         fails.empty();
}

Verdict verdict_of(const JobResult& result) {
  Verdict verdict;
  verdict.stands = stands(result);
  verdict.load_on_nothing = result.hand.on_nothing();
  for (const StageResult& stage : result.stages)
    verdict.loose_weight = std::max(verdict.loose_weight, facts_of(stage).loose_weight);
  const StageResult* least = stage_of_least_factor(result);
  verdict.by_tension_alone = least != nullptr && !is_safe_without_tension(least->safety->factor);
  for (const StageResult& stage : result.stages) {
    if (is_staged(result) && stage.stands() && !stage.safety)
      verdict.no_factor.push_back(stage.name);
  }
  for (const Check& check : result.checks) {
    if (check.not_verified) {
      verdict.not_verified.push_back(check);
      continue;
    }
    ++verdict.made;
    if (!check.passes()) verdict.fails.push_back(check);
    if (is_of_strength(check) &&
        (!verdict.governs || check.utilisation() > verdict.governs->utilisation()))
      verdict.governs = check;
  }
  sort_worst_first(verdict.fails);
  verdict.movement_since_start = most_movement(result.monitoring);
  return verdict;
}

std::vector<std::string> objections(const Verdict& verdict) {
  std::vector<std::string> found;
  if (!verdict.stands) found.emplace_back("the wall does not stand");
  if (const std::size_t failing = verdict.fails.size(); failing > 0)
    found.push_back(failing == 1 ? "1 check fails" : fmt::format("{} checks fail", failing));
  if (verdict.loose_weight > 0.0) found.emplace_back("masonry is loose");
  if (verdict.by_tension_alone) found.emplace_back("the wall is not shown to stand without tension");
  for (const std::string& stage : verdict.no_factor)
    found.push_back(fmt::format("no factor without tension was found for stage \"{}\"", stage));
  if (verdict.load_on_nothing > 0.0)
    found.push_back(in_kilonewtons(verdict.load_on_nothing) + " reach no needle and no pier");
  return found;
}

}  // namespace deadshore::solver
