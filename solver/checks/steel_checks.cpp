#include "solver/checks/steel_checks.h"

#include "solver/checks/check.h"
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

bool is_covered(const SteelSection& section) {
  return section.kind == SectionKind::i_section;
}

Check not_covered(const SteelMember& member, std::string check, std::string clause) {
  return not_verified(
      std::move(check), std::move(clause),
      member.section.name + ": this clause holds for I sections only; stiffen or ask an engineer");
}

/// Effective loaded length l_y with the factors m_1 and m_2, (6.10) to (6.12).
double loaded_length(const SteelMember& member, const PatchLoad& patch, double k_F, double m_2) {
  const SteelSection& s = member.section;
  const double h_w = s.h - 2.0 * s.tf;
  const double m_1 = s.b / s.tw;  // flange and web are of the same steel
  const double spread = std::sqrt(m_1 + m_2);
  const double inside = patch.stiff_length + 2.0 * s.tf * (1.0 + spread);
  if (std::isinf(patch.end_distance)) return inside;
  const double l_e = std::min(k_F * steel_E * s.tw * s.tw / (2.0 * member.f_y * h_w),
                              patch.stiff_length + patch.end_distance);
  const double in_flange = l_e / s.tf;
  return std::min({inside, l_e + s.tf * std::sqrt(0.5 * m_1 + in_flange * in_flange + m_2),
                   l_e + s.tf * spread});
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

Check check_deflection(double deflection, double span, double limit) {
  Check check;
  check.check = "deflection";
  check.clause = "common practice, no source";
  check.demand = std::abs(deflection);
  check.capacity = limit * span;
  check.unit = "mm";
  check.working = fmt::format("span {:.2f} m / {:.0f}", span / 1000.0, 1.0 / limit);
  if (limit == masonry_limit) check.clause = "span / 600 under plain masonry: TMS 402, from memory";
  if (limit == brittle_finish_limit) check.clause = "span / 360: UK NA to EN 1993-1-1, from memory";
  return check;
}

WebBearing web_bearing(const SteelMember& member, const PatchLoad& patch,
                       const SafetyBasis& basis) {
  const SteelSection& s = member.section;
  if (!is_covered(s)) throw MemberError(s.name, "no I section", "an I section is due");
  if (!(patch.stiff_length > 0.0) || !std::isfinite(patch.stiff_length) ||
      !(patch.end_distance >= 0.0))
    throw MemberError(s.name,
                      fmt::format("a bearing {} mm long, {} mm from the end", patch.stiff_length,
                                  patch.end_distance),
                      "a length above 0 and a distance from 0 up are due");
  const double h_w = s.h - 2.0 * s.tf;
  WebBearing result;
  result.k_F = std::min(2.0 + 6.0 * (patch.stiff_length + patch.end_distance) / h_w, 6.0);
  const double F_cr = 0.9 * result.k_F * steel_E * s.tw * s.tw * s.tw / h_w;
  const auto slenderness = [&](double length) {
    return std::sqrt(length * s.tw * member.f_y / F_cr);
  };
  result.loaded_length = loaded_length(member, patch, result.k_F, 0.0);
  result.slenderness = slenderness(result.loaded_length);
  if (result.slenderness > 0.5) {
    const double m_2 = 0.02 * (h_w / s.tf) * (h_w / s.tf);
    result.loaded_length = loaded_length(member, patch, result.k_F, m_2);
    result.slenderness = slenderness(result.loaded_length);
  }
  result.factor = std::min(0.5 / result.slenderness, 1.0);
  result.resistance = member.f_y * result.factor * result.loaded_length * s.tw / basis.gamma_M1;
  return result;
}

Check check_web_bearing(const SteelMember& member, const PatchLoad& patch, double force,
                        const std::string& where, const SafetyBasis& basis) {
  const std::string name = "web bearing " + where;
  const std::string clause = "EN 1993-1-5 6.2";
  if (!is_covered(member.section)) return not_covered(member, name, clause);
  const WebBearing bearing = web_bearing(member, patch, basis);
  Check check;
  check.check = name;
  check.clause = clause;
  check.demand = std::abs(force) / kN;
  check.capacity = bearing.resistance / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "s_s {:.0f} mm{}: k_F {:.3f}, l_y {:.1f} mm, lambda_F {:.3f}, chi_F {:.3f} x t_w {:.1f} mm "
      "x f_y {:.0f} N/mm2 / {:.2f}",
      patch.stiff_length,
      std::isinf(patch.end_distance) ? "" : fmt::format(", c {:.0f} mm", patch.end_distance),
      bearing.k_F, bearing.loaded_length, bearing.slenderness, bearing.factor, member.section.tw,
      member.f_y, basis.gamma_M1);
  return check;
}

Check check_web_bearing_with_bending(const SteelMember& member, const PatchLoad& patch,
                                     double force, double moment, const SafetyBasis& basis) {
  const std::string name = "web bearing with bending";
  const std::string clause = "EN 1993-1-5 7.2";
  if (!is_covered(member.section)) return not_covered(member, name, clause);
  const double patch_used = std::abs(force) / web_bearing(member, patch, basis).resistance;
  const double elastic = member.properties.W_el_y * member.f_y / basis.gamma_M0;
  const double bending_used = std::abs(moment) / elastic;
  Check check;
  check.check = name;
  check.clause = clause;
  check.demand = patch_used + 0.8 * bending_used;
  check.capacity = 1.4;
  check.working = fmt::format("eta_2 {:.3f} + 0.8 x eta_1 {:.3f} <= 1.4", patch_used, bending_used);
  return check;
}

}  // namespace deadshore::solver
