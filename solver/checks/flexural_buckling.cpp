#include "solver/checks/flexural_buckling.h"

#include "solver/checks/presented_units.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace deadshore::solver {

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
  check.clause = "EN 1993-1-1 5.2.2(5)";
  check.demand = least;
  check.capacity = factor;
  check.working =
      fmt::format("buckles at {:.2f} times its loads; at least {:.2f} is due", factor, least);
  return check;
}

}  // namespace deadshore::solver
