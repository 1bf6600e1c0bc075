#include "solver/checks/check.h"
#include "solver/checks/timber_checks.h"
#include "solver/site/beam_share.h"
#include "solver/site/raised_beam.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr int stands_due = 2;

/// On the beam's weight, which is permanent, where timber is checked under it.
double load_factor(const CheckRules& rules) {
  return rules.design_load(1.0, 0.0);
}

/// Demand is the number of stands that are missing, with nothing to set against it.
Check existence_check(const Lifting& lifting) {
  Check check;
  check.member = "stands";
  check.check = "held while it waits";
  check.clause = "common practice, no source";
  check.demand = std::max(stands_due - static_cast<int>(lifting.stands.size()), 0);
  check.working = fmt::format("{} stands; two or more are due", lifting.stands.size());
  if (!check.passes())
    check.caution =
        "a lifter must never be the only thing that holds the beam: put stands under "
        "it before anyone works at it";
  return check;
}

TimberMember under_weight(const Stand& stand) {
  TimberMember leg = stand.leg;
  leg.duration = LoadDuration::permanent;
  return leg;
}

Check fixing_check(const Stand& stand, const HeldLoad& held, const CheckRules& rules) {
  const Fixing& fixing = stand.fixing;
  if (!fixing.capacity) {
    const SingleShear shear{fixing.diameter, fixing.tensile_strength, fixing.side_thickness,
                            fixing.penetration, fixing.predrilled};
    return check_single_shear(shear, under_weight(stand), load_factor(rules) * held.per_fixing,
                              rules.basis);
  }
  Check check;
  check.check = "fixing in shear";
  check.clause = "given capacity";
  check.demand = held.per_fixing / kN;
  check.capacity = *fixing.capacity / kN;
  check.unit = "kN";
  check.working = fmt::format("{:.3f} kN / {} fixings; {:.3f} kN each, usable, not factored",
                              held.load / kN, fixing.number, check.capacity);
  return check;
}

/// The largest share of a stand over the places that the beam's middle comes to.
BeamShare worst_share(std::span<const double> places, std::span<const double> middles,
                      std::size_t i, double& at_middle) {
  BeamShare worst;
  worst.part = -1.0;
  for (const double middle : middles) {
    const BeamShare share = largest_shares(places, middle)[i];
    if (share.part <= worst.part) continue;
    worst = share;
    at_middle = middle;
  }
  return worst;
}

std::string working_of(const RaisedBeam& beam, const Stand& stand, const BeamShare& share,
                       double middle) {
  if (!share.across) return fmt::format("all of {:.3f} kN", beam.weight / kN);
  return fmt::format("{:.3f} kN x {:.0f} / {:.0f} mm", beam.weight / kN,
                     std::abs(*share.across - middle), std::abs(*share.across - stand.at));
}

void add_stand(const Job& job, const Stand& stand, HeldLoad held, LiftPlan& plan) {
  const CheckRules& rules = job.check_rules;
  held.name = stand.name;
  held.at = stand.at;
  held.per_leg = held.load / stand.legs;
  held.per_fixing = held.load / stand.fixing.number;
  Check leg = check_timber_compression(under_weight(stand), load_factor(rules) * held.per_leg,
                                       stand.leg_length, stand.leg_length, rules.basis);
  leg.check = "leg in compression";
  leg.working = fmt::format("{} / {} legs; {}", held.working, stand.legs, leg.working);
  Check fixing = fixing_check(stand, held, rules);
  leg.member = fixing.member = "stand " + stand.name;
  plan.checks.push_back(std::move(leg));
  plan.checks.push_back(std::move(fixing));
  plan.stands.push_back(std::move(held));
}

}  // namespace

void add_stands(const Job& job, const RaisedBeam& beam, LiftPlan& plan) {
  const std::vector<Stand>& stands = job.lifting->stands;
  plan.checks.push_back(existence_check(*job.lifting));
  if (stands.empty()) return;
  std::vector<double> places;
  places.reserve(stands.size());
  for (const Stand& stand : stands) places.push_back(stand.at);
  const double at_place = 0.5 * beam.length;
  const std::array middles = {at_place, at_place + beam.shift};
  for (std::size_t i = 0; i < stands.size(); ++i) {
    double middle = at_place;
    const BeamShare share = worst_share(places, middles, i, middle);
    HeldLoad held;
    held.load = share.part * beam.weight;
    held.working = working_of(beam, stands[i], share, middle);
    add_stand(job, stands[i], std::move(held), plan);
  }
  plan.checks.push_back(balance_check(job.beam->name + " on its stands", places, middles));
}

}  // namespace deadshore::solver
