#include "solver/checks/check.h"
#include "solver/members/error.h"
#include "solver/site/beam_share.h"
#include "solver/site/raised_beam.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace deadshore::solver {

namespace {

/// Holding moment over overturning moment, common practice, no source.
constexpr double against_tipping = 1.5;

Check capacity_check(const Lifter& lifter, const HeldLoad& held) {
  Check check;
  try {
    const double capacity = lift_capacity_at(lifter.capacity, lifter.load_distance);
    check.check = "lift";
    check.capacity = capacity / kN;
    check.working = fmt::format("{} = {:.3f} kN; may lift {:.3f} kN at {:.0f} mm", held.working,
                                held.load / kN, check.capacity, lifter.load_distance);
  } catch (const MemberError& error) {
    check = not_verified("lift", "", error.what());
    check.working = fmt::format("{} = {:.3f} kN", held.working, held.load / kN);
  }
  check.clause = lifter.capacity.source;
  check.demand = held.load / kN;
  check.unit = "kN";
  check.member = "lifter " + lifter.name;
  return check;
}

Check tipping_check(const Lifter& lifter, const HeldLoad& held) {
  const Lifter::Tipping& tipping = lifter.tipping.value();
  const double beyond = std::max(tipping.load_beyond, 0.0);
  Check check;
  check.member = "lifter " + lifter.name;
  check.check = "tipping over its front feet";
  check.clause = "moments, factor 1.5 (common practice, no source)";
  check.demand = against_tipping * held.load * beyond / kNm;
  check.capacity = tipping.own_weight * tipping.weight_behind / kNm;
  check.unit = "kNm";
  check.working =
      fmt::format("{:.1f} x {:.3f} kN x {:.0f} mm; own {:.3f} kN x {:.0f} mm", against_tipping,
                  held.load / kN, beyond, tipping.own_weight / kN, tipping.weight_behind);
  return check;
}

std::string working_of(const RaisedBeam& beam, const Lifter& lifter, const BeamShare& share,
                       double dynamic_factor) {
  if (!share.across)
    return fmt::format("all of {:.3f} kN x {:.2f}", beam.weight_up / kN, dynamic_factor);
  return fmt::format("{:.3f} kN x {:.0f} / {:.0f} mm x {:.2f}", beam.weight_up / kN,
                     std::abs(*share.across - 0.5 * beam.length),
                     std::abs(*share.across - lifter.at), dynamic_factor);
}

}  // namespace

double lift_capacity_at(const ForkTable& table, double distance) {
  const auto& rows = table.rows;
  const auto above = std::ranges::find_if(
      rows, [&](const ForkTable::Row& row) { return row.distance >= distance; });
  const bool covered = above != rows.end() && rows.front().distance <= distance;
  if (!covered)
    throw MemberError(table.source, fmt::format("a load {:.0f} mm out", distance),
                      rows.empty() ? "a table with rows is due"
                                   : fmt::format("the table holds from {:.0f} mm to {:.0f} mm",
                                                 rows.front().distance, rows.back().distance));
  if (above == rows.begin()) return above->load;
  const ForkTable::Row& below = *(above - 1);
  const double part = (distance - below.distance) / (above->distance - below.distance);
  return below.load + part * (above->load - below.load);
}

void add_lifters(const Job& job, const RaisedBeam& beam, LiftPlan& plan) {
  const Lifting& lifting = *job.lifting;
  std::vector<double> places;
  places.reserve(lifting.lifters.size());
  for (const Lifter& lifter : lifting.lifters) places.push_back(lifter.at);
  const double middle = 0.5 * beam.length;
  const std::vector<BeamShare> shares = largest_shares(places, middle);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Lifter& lifter = lifting.lifters[i];
    HeldLoad held;
    held.name = lifter.name;
    held.at = lifter.at;
    held.load = lifting.dynamic_factor * shares[i].part * beam.weight_up;
    held.working = working_of(beam, lifter, shares[i], lifting.dynamic_factor);
    plan.checks.push_back(capacity_check(lifter, held));
    if (lifter.tipping) plan.checks.push_back(tipping_check(lifter, held));
    plan.lifters.push_back(std::move(held));
  }
  plan.checks.push_back(
      balance_check(job.beam->name + " on its lifters", places, std::array{middle}));
}

}  // namespace deadshore::solver
