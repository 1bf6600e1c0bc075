#include "solver/checks/steel_checks.h"

#include "solver/checks/presented_units.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double cm3 = 1e3;

/// By how much a shear force weakens the web, 6.2.8(3): 0 up to half its resistance.
double shear_reduction(const SteelMember& member, double shear, const SafetyBasis& basis) {
  const double used = std::abs(shear) / shear_resistance(member, basis);
  if (used <= 0.5) return 0.0;
  const double excess = 2.0 * used - 1.0;
  return std::min(excess * excess, 1.0);
}

bool resists_plastically(const SteelMember& member, const SafetyBasis& basis) {
  return member.class_in_bending <= 2 && !basis.elastic();
}

}  // namespace

double bending_modulus(const SteelMember& member, const SafetyBasis& basis) {
  if (member.class_in_bending > 3)
    throw MemberError(member.section.name,
                      fmt::format("class 4 in bending in {}", to_string(member.grade)),
                      "a thicker section or a lower grade is due");
  return resists_plastically(member, basis) ? member.properties.W_pl_y : member.properties.W_el_y;
}

double bending_resistance(const SteelMember& member, const SafetyBasis& basis) {
  return bending_modulus(member, basis) * member.f_y / basis.gamma_M0;
}

double shear_resistance(const SteelMember& member, const SafetyBasis& basis) {
  return member.properties.A_v * member.f_y / std::numbers::sqrt3 / basis.gamma_M0;
}

double bending_resistance_with_shear(const SteelMember& member, double shear,
                                     const SafetyBasis& basis) {
  const double without = bending_resistance(member, basis);
  const double rho = shear_reduction(member, shear, basis);
  const SteelSection& s = member.section;
  if (s.kind != SectionKind::i_section) return (1.0 - rho) * without;
  const double h_w = s.h - 2.0 * s.tf;
  const double web_modulus = resists_plastically(member, basis)
                                 ? 0.25 * s.tw * h_w * h_w
                                 : s.tw * h_w * h_w * h_w / (6.0 * s.h);
  return without - rho * web_modulus * member.f_y / basis.gamma_M0;
}

Check check_bending(const SteelMember& member, double moment, const SafetyBasis& basis) {
  Check check;
  check.check = "bending";
  check.clause = "EN 1993-1-1 6.2.5";
  check.demand = std::abs(moment) / kNm;
  check.capacity = bending_resistance(member, basis) / kNm;
  check.unit = "kNm";
  check.working = fmt::format("{} {} class {}: W_{} {:.1f} cm3 x f_y {:.0f} N/mm2 / {:.2f}",
                              member.section.name, to_string(member.grade), member.class_in_bending,
                              resists_plastically(member, basis) ? "pl" : "el",
                              bending_modulus(member, basis) / cm3, member.f_y, basis.gamma_M0);
  return check;
}

Check check_shear(const SteelMember& member, double shear, const SafetyBasis& basis) {
  const SteelSection& s = member.section;
  const double epsilon = std::sqrt(235.0 / member.f_y);
  const double web_slenderness = (s.h - 2.0 * s.tf) / s.tw;
  if (!s.is_hollow() && web_slenderness > 72.0 * epsilon)
    return not_verified("shear", "EN 1993-1-1 6.2.6(6)",
                        fmt::format("{}: the web's h_w/t_w {:.1f} is over {:.1f}; it may buckle",
                                    s.name, web_slenderness, 72.0 * epsilon));
  Check check;
  check.check = "shear";
  check.clause = "EN 1993-1-1 6.2.6";
  check.demand = std::abs(shear) / kN;
  check.capacity = shear_resistance(member, basis) / kN;
  check.unit = "kN";
  check.working =
      fmt::format("{} {}: A_v {:.0f} mm2 x f_y {:.0f} N/mm2 / (sqrt 3 x {:.2f})", s.name,
                  to_string(member.grade), member.properties.A_v, member.f_y, basis.gamma_M0);
  return check;
}

Check check_bending_with_shear(const SteelMember& member, double moment, double shear,
                               const SafetyBasis& basis) {
  const double rho = shear_reduction(member, shear, basis);
  Check check;
  check.check = "bending with shear";
  check.clause = "EN 1993-1-1 6.2.8";
  check.demand = std::abs(moment) / kNm;
  check.capacity = bending_resistance_with_shear(member, shear, basis) / kNm;
  check.unit = "kNm";
  check.working = fmt::format(
      "V {:.1f} kN of {:.1f} kN: {}; M {:.2f} kNm of {:.2f} kNm", std::abs(shear) / kN,
      shear_resistance(member, basis) / kN,
      rho > 0.0 ? fmt::format("rho {:.3f}", rho) : std::string("up to half, no reduction"),
      check.demand, check.capacity);
  return check;
}

}  // namespace deadshore::solver
