#include "solver/checks/ground_checks.h"

#include "solver/checks/check.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

GroundContact ground_contact(const SolePlate& sole) {
  const TimberSection& board = sole.timber.section;
  require_sound(board);
  if (!(sole.length > 0.0) || !(sole.prop_base > 0.0) || !std::isfinite(sole.length) ||
      !std::isfinite(sole.prop_base))
    throw MemberError("sole plate",
                      fmt::format("{} mm long under a base of {} mm", sole.length, sole.prop_base),
                      "sizes above 0 are due");
  return {std::min(sole.length, sole.prop_base + 4.0 * board.h),
          std::min(board.b, sole.prop_base + 2.0 * board.h)};
}

Check check_sole_bending(const SolePlate& sole, double load, const SafetyBasis& basis) {
  const GroundContact contact = ground_contact(sole);
  const double beyond = std::max(0.5 * (contact.length - sole.prop_base), 0.0);
  const double moment = 0.5 * std::abs(load) / contact.length * beyond * beyond;
  TimberMember strip = sole.timber;
  strip.section.b = contact.width;
  Check check = check_timber_bending(strip, moment, basis);
  check.check = "sole bending";
  check.working = fmt::format("{:.2f} kN over {:.0f} mm, {:.0f} mm beyond the base: {}",
                              std::abs(load) / kN, contact.length, beyond, check.working);
  return check;
}

Check check_sole_bearing(const SolePlate& sole, double load, const SafetyBasis& basis) {
  const double width = std::min(sole.prop_base, sole.timber.section.b);
  const double length = std::min(sole.prop_base, sole.length);
  Check check = check_bearing_across_grain(sole.timber, {length, width, 0.0, 1.0}, load, basis);
  check.check = "prop base on sole";
  return check;
}

Check check_ground_pressure(const SolePlate& sole, const Ground& ground, double unfactored_load) {
  const GroundContact contact = ground_contact(sole);
  Check check;
  check.check = "ground pressure";
  check.clause = ground.source;
  check.demand = std::abs(unfactored_load) / contact.area() / kN_per_m2;
  check.unit = "kN/m2";
  check.working =
      fmt::format("{:.2f} kN / ({:.0f} x {:.0f} mm); {}, unfactored",
                  std::abs(unfactored_load) / kN, contact.length, contact.width, ground.name);
  if (!ground.presumed_bearing) {
    check.not_verified = true;
    check.caution = "nothing may be presumed of " + ground.name +
                    ": have it looked at, or take the load to better ground";
    return check;
  }
  check.capacity = *ground.presumed_bearing / kN_per_m2;
  if (ground.granular)
    check.caution =
        "the presumed value is for foundations about 1 m wide; small soles on sand or "
        "gravel carry less";
  return check;
}

Check check_suspended_floor(const std::string& floor, double unfactored_load) {
  Check check = not_verified("suspended floor", "common practice",
                             "a prop on " + floor +
                                 ": nobody has shown that it carries this; go on down with props "
                                 "to solid bearing, or have the floor checked");
  check.demand = std::abs(unfactored_load) / kN;
  check.unit = "kN";
  check.working = fmt::format("{:.2f} kN, unfactored", check.demand);
  return check;
}

}  // namespace deadshore::solver
