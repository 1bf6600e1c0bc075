#include "solver/shoring/head_plate_checks.h"

#include "solver/checks/member_buckling.h"
#include "solver/checks/steel_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <variant>

namespace deadshore::solver {

namespace {

/// Joists on the top flange of an evenly loaded bay: C_2 of a uniform load (SN003, from memory,
/// unverified) with C_1 of a uniform moment, both on the safe side.
constexpr double load_position_factor = 0.454;

double longest_bay(std::span<const Upright> uprights) {
  double longest = 0.0;
  for (std::size_t i = 1; i < uprights.size(); ++i)
    longest = std::max(longest, uprights[i].x - uprights[i - 1].x);
  return longest;
}

/// Length and width over which an upright bears on the plate.
struct Contact {
  double length = 0.0;
  double width = 0.0;
};

Contact contact_of(const ShoreFrame& frame, const Upright& upright) {
  const double plate = width_of(frame.head);
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights))
    return {upright.count * studs->stud.section.b, std::min(studs->stud.section.h, plate)};
  const double base = std::get<PropRow>(frame.uprights).base;
  return {base, std::min(base, plate)};
}

/// The worse of what was found before and a check at an upright.
void keep_worse(Check check, const Upright& upright, Check& worst) {
  if (!worst.check.empty() && check.utilisation() <= worst.utilisation()) return;
  check.working = fmt::format("at {}: {}", upright.mark, check.working);
  worst = std::move(check);
}

Check joist_on_timber(const ShoreFrame& frame, const TimberMember& timber, double force,
                      const CheckRules& rules) {
  GrainBearing bearing;
  bearing.length = frame.joist_width;
  bearing.width = timber.section.b;
  bearing.spread_each = std::clamp(0.5 * (frame.joist_spacing - frame.joist_width), 0.0,
                                   std::min(30.0, frame.joist_width));
  Check check = check_bearing_across_grain(timber, bearing, force, rules.basis);
  check.check = "bearing of a joist";
  check.caution = "the joists themselves are taken to be no weaker across the grain";
  return check;
}

std::vector<Check> timber_checks(const ShoreFrame& frame, const TimberMember& timber,
                                 std::span<const Upright> uprights, const ShoreForces& factored,
                                 const CheckRules& rules) {
  const double sideways = timber_lateral_factor(timber, longest_bay(uprights));
  Check at_upright;
  // A stud's bearing on the plate is among the checks of the stud.
  if (!stands_on_studs(frame)) {
    for (std::size_t i = 0; i < uprights.size(); ++i) {
      const Contact contact = contact_of(frame, uprights[i]);
      Check check = check_bearing_across_grain(timber, {contact.length, contact.width, 0.0, 1.0},
                                               factored.uprights[i], rules.basis);
      check.check = "bearing on a prop's head";
      keep_worse(std::move(check), uprights[i], at_upright);
    }
  }
  std::vector<Check> checks = {check_timber_bending(timber, factored.moment, rules.basis, sideways),
                               check_timber_shear(timber, factored.shear, rules.basis),
                               joist_on_timber(frame, timber, factored.joist, rules)};
  if (!at_upright.check.empty()) checks.push_back(std::move(at_upright));
  return checks;
}

std::vector<Check> steel_checks(const ShoreFrame& frame, const SteelMember& steel,
                                std::span<const Upright> uprights, const ShoreForces& factored,
                                const CheckRules& rules) {
  const SafetyBasis& basis = rules.basis;
  LateralSpan lateral;
  lateral.length = longest_bay(uprights);
  lateral.C_2 = load_position_factor;
  lateral.z_g = 0.5 * steel.section.h;
  PatchLoad joist;
  joist.stiff_length = frame.joist_width;
  Check at_upright;
  for (std::size_t i = 0; i < uprights.size(); ++i) {
    PatchLoad head;
    head.stiff_length = contact_of(frame, uprights[i]).length;
    const double to_end = std::min(uprights[i].x - frame.x.from, frame.x.to - uprights[i].x);
    head.end_distance = std::max(0.0, to_end - 0.5 * head.stiff_length);
    keep_worse(check_web_bearing(steel, head, factored.uprights[i], "at an upright", basis),
               uprights[i], at_upright);
  }
  // The largest moment and the largest shear force need not meet; together they are the safe side.
  return {check_bending(steel, factored.moment, basis),
          check_shear(steel, factored.shear, basis),
          check_bending_with_shear(steel, factored.moment, factored.shear, basis),
          check_lateral_buckling(steel, lateral, factored.moment, basis),
          check_web_bearing(steel, joist, factored.joist, "under a joist", basis),
          std::move(at_upright)};
}

}  // namespace

std::vector<Check> check_head_plate(const ShoreFrame& frame, std::span<const Upright> uprights,
                                    const ShoreForces& factored, const CheckRules& rules) {
  if (const auto* steel = std::get_if<SteelMember>(&frame.head))
    return steel_checks(frame, *steel, uprights, factored, rules);
  return timber_checks(frame, std::get<TimberMember>(frame.head), uprights, factored, rules);
}

}  // namespace deadshore::solver
