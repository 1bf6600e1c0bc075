#include "solver/checks/web_bearing.h"

#include "solver/checks/presented_units.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

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
