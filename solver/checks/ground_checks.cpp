#include "solver/checks/ground_checks.h"

#include "solver/checks/check.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double most_spread = 30.0;            // mm at each end, EN 1995-1-1:2004 6.1.5(1)
constexpr double on_continuous_support = 1.25;  // k_c90 of solid softwood, 6.1.5(3)

}  // namespace

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
  const double beyond = std::max(0.0, 0.5 * (sole.length - length));
  GrainBearing bearing{length, width, std::min(most_spread, beyond), 1.0};
  const bool softwood = sole.timber.strength_class.name.starts_with('C');
  const bool far_apart = sole.length - length >= 2.0 * sole.timber.section.h;
  if (softwood && far_apart) bearing.k_c90 = on_continuous_support;
  Check check = check_bearing_across_grain(sole.timber, bearing, load, basis);
  check.check = "prop base on sole";
  return check;
}

double overburden_factor(double friction_angle) {
  const double phi = friction_angle * std::numbers::pi / 180.0;
  const double passive = std::tan(0.25 * std::numbers::pi + 0.5 * phi);
  return std::exp(std::numbers::pi * std::tan(phi)) * passive * passive;
}

double surface_bearing(double width, double length, double gamma, double friction_angle) {
  const double phi = friction_angle * std::numbers::pi / 180.0;
  const double N_gamma = 2.0 * (overburden_factor(friction_angle) - 1.0) * std::tan(phi);
  return 0.5 * gamma * width * N_gamma * (1.0 - 0.3 * width / length);
}

namespace {

/// Sand or gravel under a narrow sole on its surface.
Check on_granular(Check check, const GroundContact& contact, const Ground& ground) {
  if (!ground.friction_angle) {
    check.not_verified = check.passes();
    check.caution =
        "the presumed value is for foundations about 1 m wide; what a narrow sole on the surface "
        "of "
        "sand or gravel bears hangs on its angle of friction, which is not known: give it, or have "
        "the ground looked at";
    return check;
  }
  const double width = std::min(contact.width, contact.length);
  const double length = std::max(contact.width, contact.length);
  const double ultimate =
      surface_bearing(width, length, ground.unit_weight, *ground.friction_angle) / kN_per_m2;
  const double allowed = ultimate / surface_bearing_factor;
  if (allowed >= check.capacity) return check;
  check.working += fmt::format(
      "; on its surface 0.5 x {:.0f} kN/m3 x {:.3f} m x N_gamma (phi' {:.0f}) x (1 - 0.3 B/L) = "
      "{:.0f} kN/m2, / {:.0f}; presumed for wide foundations {:.0f} kN/m2",
      ground.unit_weight * 1e6, width / 1000.0, *ground.friction_angle, ultimate,
      surface_bearing_factor, check.capacity);
  check.capacity = allowed;
  check.clause = "EN 1997-1:2004 Annex D.4, / 3: common practice, no source";
  check.caution =
      "dry ground, level, nothing dug beside it; a wider or deeper sole bears more, water under it "
      "halves this";
  return check;
}

/// Ground under a slab: the slab has to spread the load, and nothing is known of it.
Check on_slab(Check check) {
  check.not_verified = check.passes();
  check.caution =
      "whether the slab carries a prop hangs on its thickness, its strength, what is under it and "
      "where its edges and joints are: open it up, or have it checked for bending and punching";
  return check;
}

}  // namespace

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
  if (ground.slab) return on_slab(std::move(check));
  if (ground.granular) return on_granular(std::move(check), contact, ground);
  check.caution = "holds on undisturbed ground below the topsoil: dig down to it";
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
