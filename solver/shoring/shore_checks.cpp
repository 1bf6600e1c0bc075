#include "solver/shoring/shore_checks.h"

#include "solver/checks/prop_checks.h"
#include "solver/checks/steel_checks.h"
#include "solver/job/error.h"
#include "solver/shoring/head_plate_checks.h"
#include "solver/shoring/stud_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr const char* tipping = "tipping";

/// Half of the length of sole that counts for an upright: half way to its nearer neighbour, or to
/// the sole's nearer end.
double half_of_sole(const ShoreFrame& frame, std::span<const Upright> uprights, std::size_t i) {
  const double x = uprights[i].x;
  const double beyond = 0.5 * (frame.footing.sole.length - frame.x.length());
  double half = std::min(x - frame.x.from, frame.x.to - x) + beyond;
  if (i > 0) half = std::min(half, 0.5 * (x - uprights[i - 1].x));
  if (i + 1 < uprights.size()) half = std::min(half, 0.5 * (uprights[i + 1].x - x));
  return half;
}

/// The ground under one upright; its share of the sole is as long on both sides, the safe side.
Check ground_check(const ShoreFrame& frame, SolePlate sole, double half, double load) {
  const Footing& footing = frame.footing;
  if (!footing.suspended_floor.empty()) return check_suspended_floor(footing.suspended_floor, load);
  sole.length = 2.0 * half;
  return check_ground_pressure(sole, footing.ground, load);
}

std::vector<Check> prop_checks(const ShoreFrame& frame, const PropRow& props,
                               const ShoreAnswer& answer, std::size_t i, const CheckRules& rules) {
  SolePlate sole = frame.footing.sole;
  sole.prop_base = props.base;
  const double service = answer.service.uprights[i];
  const double factored = answer.factored.uprights[i];
  return {check_prop(props.prop, upright_length(frame), service, rules.prop_basis),
          check_sole_bending(sole, factored, rules.basis),
          check_sole_bearing(sole, factored, rules.basis),
          ground_check(frame, sole, half_of_sole(frame, answer.uprights, i), service)};
}

/// Sole and ground of a stud, beside the checks of the stud itself.
std::vector<Check> stud_foot_checks(const ShoreFrame& frame, const StudRow& studs,
                                    const ShoreAnswer& answer, std::size_t i,
                                    const CheckRules& rules) {
  SolePlate sole = frame.footing.sole;
  sole.prop_base = answer.uprights[i].count * studs.stud.section.b;
  return {check_sole_bending(sole, answer.factored.uprights[i], rules.basis),
          ground_check(frame, sole, half_of_sole(frame, answer.uprights, i),
                       answer.service.uprights[i])};
}

void keep_worst(Check check, const std::string& mark, std::vector<Check>& kept) {
  check.working = mark + ": " + check.working;
  const auto same =
      std::ranges::find_if(kept, [&](const Check& other) { return other.check == check.check; });
  if (same == kept.end())
    kept.push_back(std::move(check));
  else if (check.utilisation() > same->utilisation())
    *same = std::move(check);
}

/// The worst stud for each check, named in the working.
std::vector<Check> worst_studs(const ShoreFrame& frame, const StudRow& studs,
                               const ShoreAnswer& answer, const CheckRules& rules) {
  std::vector<Check> kept;
  for (std::size_t i = 0; i < answer.uprights.size(); ++i) {
    const std::string where =
        fmt::format("{} at x {:.2f} m", answer.uprights[i].mark, answer.uprights[i].x / 1000.0);
    for (Check& check : check_stud(frame, answer.uprights, i, answer.factored.uprights[i], rules))
      keep_worst(std::move(check), where, kept);
    for (Check& check : stud_foot_checks(frame, studs, answer, i, rules))
      keep_worst(std::move(check), where, kept);
  }
  return kept;
}

Check deflection_check(const ShoreForces& service) {
  Check check = check_deflection(service.deflection, service.deflection_span, head_plate_limit);
  check.working += "; unfactored; the limit is common practice, no source";
  return check;
}

Check tips(const std::string& reason) {
  return not_verified(tipping, "equilibrium",
                      "the head plate would tip off its uprights: put them nearer to the row's "
                      "ends and under the loads at points (" +
                          reason + ")");
}

}  // namespace

ShoreAnswer work_out(const DeadShore& shore, std::vector<Upright> uprights, const RowLoads& loads,
                     const CheckRules& rules, const std::string& stage) {
  const ShoreFrame& frame = *shore.frame;
  ShoreAnswer answer;
  answer.uprights = std::move(uprights);
  const auto add = [&](const std::string& member, std::vector<Check> checks) {
    for (Check& check : labelled(std::move(checks), member, stage))
      answer.checks.push_back(std::move(check));
  };
  const std::string plate = shore.name + " head plate";
  try {
    answer.service = unfactored_forces(frame, answer.uprights, loads);
    answer.factored = factored_forces(frame, answer.uprights, loads, rules);
  } catch (const SolveError& error) {
    add(plate, {tips(error.what())});
    return answer;
  }
  add(plate, check_head_plate(frame, answer.uprights, answer.factored, rules));
  add(plate, {deflection_check(answer.service)});
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights)) {
    add(shore.name + " stud", worst_studs(frame, *studs, answer, rules));
  } else {
    const auto& props = std::get<PropRow>(frame.uprights);
    for (std::size_t i = 0; i < answer.uprights.size(); ++i)
      add(answer.uprights[i].mark, prop_checks(frame, props, answer, i, rules));
  }
  sort_worst_first(answer.checks);
  return answer;
}

const Check* worst_by_numbers(const std::vector<Check>& checks) {
  const Check* worst = nullptr;
  for (const Check& check : checks) {
    if (check.not_verified) continue;
    if (worst == nullptr || check.utilisation() > worst->utilisation()) worst = &check;
  }
  return worst;
}

bool passes_by_numbers(const std::vector<Check>& checks) {
  const Check* worst = worst_by_numbers(checks);
  return worst != nullptr && worst->passes();
}

}  // namespace deadshore::solver
