#include "solver/checks/member_buckling.h"

#include "solver/checks/check.h"
#include "solver/checks/steel_checks.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace deadshore::solver {

namespace {

/// What 6.3.2.2 and 6.3.2.3 differ in.
struct CurveFamily {
  double plateau;
  double beta;
};

CurveFamily family_of(LateralCurves curves) {
  return curves == LateralCurves::rolled ? CurveFamily{0.4, 0.75} : CurveFamily{0.2, 1.0};
}

BucklingCurve curve_of(const SteelSection& s, LateralCurves curves) {
  const double slender = s.h / s.b;
  if (s.kind == SectionKind::channel) return BucklingCurve::d;
  if (curves == LateralCurves::general) {
    if (s.kind != SectionKind::i_section) return BucklingCurve::d;
    return slender <= 2.0 ? BucklingCurve::a : BucklingCurve::b;
  }
  if (slender <= 2.0) return BucklingCurve::b;
  return slender <= 3.1 ? BucklingCurve::c : BucklingCurve::d;
}

bool is_free_of_lateral_buckling(const SteelSection& s) {
  return s.is_hollow() && s.h <= 2.0 * s.b;
}

}  // namespace

const char* to_string(BucklingCurve curve) {
  constexpr std::array<const char*, 5> names = {"a0", "a", "b", "c", "d"};
  return names[static_cast<std::size_t>(curve)];
}

double imperfection_factor(BucklingCurve curve) {
  constexpr std::array<double, 5> alpha = {0.13, 0.21, 0.34, 0.49, 0.76};
  return alpha[static_cast<std::size_t>(curve)];
}

double buckling_factor(double slenderness, BucklingCurve curve) {
  if (slenderness <= 0.2) return 1.0;
  const double squared = slenderness * slenderness;
  const double phi = 0.5 * (1.0 + imperfection_factor(curve) * (slenderness - 0.2) + squared);
  return std::min(1.0, 1.0 / (phi + std::sqrt(phi * phi - squared)));
}

BucklingCurve column_curve(const SteelSection& section, SectionAxis axis) {
  if (section.is_hollow()) return BucklingCurve::a;
  if (section.kind == SectionKind::channel) return BucklingCurve::c;
  const bool strong = axis == SectionAxis::y;
  if (section.tf > 100.0) return BucklingCurve::d;
  if (section.h > 1.2 * section.b && section.tf <= 40.0)
    return strong ? BucklingCurve::a : BucklingCurve::b;
  return strong ? BucklingCurve::b : BucklingCurve::c;
}

ColumnBuckling column_buckling(const SteelMember& member, SectionAxis axis, double effective_length,
                               const SafetyBasis& basis) {
  if (member.class_in_compression > 3)
    throw MemberError(member.section.name,
                      fmt::format("class 4 in compression in {}", to_string(member.grade)),
                      "a thicker section or a lower grade is due");
  if (!(effective_length > 0.0) || !std::isfinite(effective_length))
    throw MemberError(member.section.name,
                      fmt::format("a buckling length of {} mm", effective_length),
                      "a length above 0 is due");
  const SteelProperties& p = member.properties;
  const double I = axis == SectionAxis::y ? p.I_y : p.I_z;
  ColumnBuckling result;
  result.N_cr = std::pow(std::numbers::pi / effective_length, 2) * steel_E * I;
  result.slenderness = std::sqrt(p.A * member.f_y / result.N_cr);
  result.curve = column_curve(member.section, axis);
  result.factor = buckling_factor(result.slenderness, result.curve);
  result.resistance = result.factor * p.A * member.f_y / basis.gamma_M1;
  return result;
}

Check check_flexural_buckling(const SteelMember& member, SectionAxis axis, double effective_length,
                              double compression, const SafetyBasis& basis) {
  const ColumnBuckling buckling = column_buckling(member, axis, effective_length, basis);
  Check check;
  check.check = axis == SectionAxis::y ? "buckling about y" : "buckling about z";
  check.clause = "EN 1993-1-1 6.3.1";
  check.demand = std::abs(compression) / kN;
  check.capacity = buckling.resistance / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "L_cr {:.2f} m: N_cr {:.1f} kN, lambda {:.3f}, curve {}, chi {:.3f} x A {:.0f} mm2 x f_y "
      "{:.0f} N/mm2 / {:.2f}",
      effective_length / 1000.0, buckling.N_cr / kN, buckling.slenderness,
      to_string(buckling.curve), buckling.factor, member.properties.A, member.f_y, basis.gamma_M1);
  return check;
}

Check check_frame_buckling(double factor, double least) {
  Check check;
  check.check = "frame buckling";
  check.clause = fmt::format(
      "EN 1993-1-1:2005 5.2.1(3), 5.2.2(5); margin of {:.2g} common practice, no source", least);
  check.demand = least;
  check.capacity = factor;
  check.working =
      fmt::format("buckles at {:.2f} times its design loads, {}", factor,
                  factor < 3.0    ? "under 3: a full second-order analysis is due, and was made"
                  : factor < 10.0 ? "under 10: second order counts, and is counted"
                                  : "10 or more: second order hardly counts");
  return check;
}

double critical_moment(const SteelMember& member, const LateralSpan& span) {
  if (!(span.length > 0.0) || !std::isfinite(span.length))
    throw MemberError(member.section.name,
                      fmt::format("{} mm between sideways restraints", span.length),
                      "a length above 0 is due");
  const SteelProperties& p = member.properties;
  const double effective = span.k_z * span.length;
  const double N_z = std::pow(std::numbers::pi / effective, 2) * steel_E * p.I_z;
  const double ratio = span.k_z / span.k_w;
  const double above = span.C_2 * span.z_g;
  return span.C_1 * N_z *
         (std::sqrt(ratio * ratio * p.I_w / p.I_z + steel_G * p.I_t / N_z + above * above) - above);
}

LateralBuckling lateral_buckling(const SteelMember& member, const LateralSpan& span,
                                 const SafetyBasis& basis, LateralCurves curves) {
  const double characteristic = bending_modulus(member, basis) * member.f_y;
  LateralBuckling result;
  result.M_cr = critical_moment(member, span);
  result.slenderness = std::sqrt(characteristic / result.M_cr);
  result.curve = curve_of(member.section, curves);

  const auto [plateau, beta] = family_of(curves);
  const double squared = result.slenderness * result.slenderness;
  result.phi = 0.5 * (1.0 + imperfection_factor(result.curve) * (result.slenderness - plateau) +
                      beta * squared);
  if (result.slenderness > plateau && !is_free_of_lateral_buckling(member.section)) {
    const double factor = 1.0 / (result.phi + std::sqrt(result.phi * result.phi - beta * squared));
    result.factor = std::min({1.0, 1.0 / squared, factor});
  }
  result.resistance = result.factor * characteristic / basis.gamma_M1;
  return result;
}

Check check_lateral_buckling(const SteelMember& member, const LateralSpan& span, double moment,
                             const SafetyBasis& basis, LateralCurves curves) {
  const LateralBuckling buckling = lateral_buckling(member, span, basis, curves);
  Check check;
  check.check = "lateral-torsional buckling";
  check.clause = curves == LateralCurves::rolled ? "EN 1993-1-1 6.3.2.3" : "EN 1993-1-1 6.3.2.2";
  check.demand = std::abs(moment) / kNm;
  check.capacity = buckling.resistance / kNm;
  check.unit = "kNm";
  check.working = fmt::format(
      "L {:.2f} m, C1 {:.2f}, C2 {:.2f}, z_g {:.0f} mm: M_cr {:.1f} kNm, lambda {:.3f}, curve {}, "
      "chi {:.3f} x W {:.1f} cm3 x f_y {:.0f} N/mm2 / {:.2f}",
      span.length / 1000.0, span.C_1, span.C_2, span.z_g, buckling.M_cr / kNm, buckling.slenderness,
      to_string(buckling.curve), buckling.factor, bending_modulus(member, basis) / 1e3, member.f_y,
      basis.gamma_M1);
  if (member.section.kind == SectionKind::channel)
    check.caution = "a channel twists unless it is loaded through its shear centre; use pairs";
  return check;
}

}  // namespace deadshore::solver
