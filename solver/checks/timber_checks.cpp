#include "solver/checks/timber_checks.h"

#include "solver/checks/check.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double pi = std::numbers::pi;

std::string strength_working(const char* name, const TimberMember& member, double characteristic,
                             const SafetyBasis& basis) {
  return fmt::format("{} {} {:.2f} x {:.1f} / {:.2f}", member.strength_class.name, name,
                     modification_factor(member.duration, member.service), characteristic,
                     basis.gamma_timber);
}

Check stress_check(std::string name, std::string clause, double stress, double strength,
                   std::string working) {
  Check check;
  check.check = std::move(name);
  check.clause = std::move(clause);
  check.demand = stress;
  check.capacity = strength;
  check.unit = "N/mm2";
  check.working = std::move(working);
  return check;
}

constexpr double thickest_nail = 8.0;      // mm, 8.3.1.1(5)
constexpr double least_penetration = 8.0;  // in diameters, smooth nails, 8.3.1.2(2)
constexpr const char* clause = "EN 1995-1-1 8.2.2 (8.6)";

void require_sound_fastener(const SingleShear& fastener) {
  const bool sound = fastener.diameter > 0.0 && fastener.tensile_strength > 0.0 &&
                     fastener.side_thickness > 0.0 && fastener.penetration > 0.0;
  if (sound) return;
  throw MemberError(
      "fastener",
      fmt::format("d {} mm, f_u {} N/mm2, t_1 {} mm, t_2 {} mm", fastener.diameter,
                  fastener.tensile_strength, fastener.side_thickness, fastener.penetration),
      "values above 0 are due");
}

/// Thickness below which timber splits unless it is predrilled, (8.18).
double least_thickness(double rho_k, double diameter) {
  return std::max(7.0 * diameter, (13.0 * diameter - 30.0) * rho_k / 400.0);
}

/// Why the rules do not cover it; empty where they do.
std::string gap_in_rules(const SingleShear& fastener, double rho_k) {
  const double d = fastener.diameter;
  if (fastener.penetration < least_penetration * d)
    return fmt::format(
        "{:.0f} mm in the other timber, where EN 1995-1-1 8.3.1.2(2) asks for 8 d, "
        "{:.0f} mm",
        fastener.penetration, least_penetration * d);
  if (!fastener.predrilled && fastener.side_thickness < least_thickness(rho_k, d))
    return fmt::format(
        "timber {:.0f} mm thick, where EN 1995-1-1 8.3.1.2(6) asks for {:.0f} mm "
        "unless it is predrilled",
        fastener.side_thickness, least_thickness(rho_k, d));
  return {};
}

}  // namespace

double usable_strength(const TimberMember& member, double characteristic,
                       const SafetyBasis& basis) {
  return modification_factor(member.duration, member.service) * characteristic / basis.gamma_timber;
}

TimberBuckling timber_buckling(const TimberClass& strength_class, double depth,
                               double effective_length) {
  if (!(depth > 0.0) || !(effective_length >= 0.0) || !std::isfinite(effective_length))
    throw MemberError(
        "timber", fmt::format("a buckling length of {} mm, {} mm deep", effective_length, depth),
        "a depth above 0 and a length from 0 up are due");
  TimberBuckling result;
  result.slenderness = effective_length / (depth / std::sqrt(12.0));
  result.relative_slenderness =
      result.slenderness / pi * std::sqrt(strength_class.f_c_0_k / strength_class.E_0_05);
  if (result.relative_slenderness <= 0.3) return result;
  constexpr double beta_c = 0.2;
  const double squared = result.relative_slenderness * result.relative_slenderness;
  const double k = 0.5 * (1.0 + beta_c * (result.relative_slenderness - 0.3) + squared);
  result.factor = 1.0 / (k + std::sqrt(k * k - squared));
  return result;
}

double timber_lateral_factor(const TimberMember& member, double effective_length) {
  const TimberSection& s = member.section;
  require_sound(s);
  if (!(effective_length > 0.0)) return 1.0;
  const double critical =
      0.78 * s.b * s.b * member.strength_class.E_0_05 / (s.h * effective_length);
  const double slenderness = std::sqrt(member.strength_class.f_m_k / critical);
  if (slenderness <= 0.75) return 1.0;
  return slenderness <= 1.4 ? 1.56 - 0.75 * slenderness : 1.0 / (slenderness * slenderness);
}

Check check_timber_bending(const TimberMember& member, double moment, const SafetyBasis& basis,
                           double lateral_factor) {
  const TimberSection& s = member.section;
  require_sound(s);
  const double strength =
      lateral_factor * usable_strength(member, member.strength_class.f_m_k, basis);
  return stress_check(
      "bending", lateral_factor < 1.0 ? "EN 1995-1-1 6.3.3" : "EN 1995-1-1 6.1.6",
      std::abs(moment) / s.modulus(), strength,
      fmt::format("M {:.3f} kNm / W {:.1f} cm3 ({:.0f} x {:.0f} mm); {} x k_crit {:.2f}",
                  std::abs(moment) / kNm, s.modulus() / 1e3, s.b, s.h,
                  strength_working("f_m", member, member.strength_class.f_m_k, basis),
                  lateral_factor));
}

Check check_timber_shear(const TimberMember& member, double shear, const SafetyBasis& basis) {
  const TimberSection& s = member.section;
  require_sound(s);
  return stress_check(
      "shear", "EN 1995-1-1 6.1.7", 1.5 * std::abs(shear) / (crack_factor * s.area()),
      usable_strength(member, member.strength_class.f_v_k, basis),
      fmt::format("1.5 x V {:.2f} kN / ({:.2f} x {:.0f} x {:.0f} mm); {}", std::abs(shear) / kN,
                  crack_factor, s.b, s.h,
                  strength_working("f_v", member, member.strength_class.f_v_k, basis)));
}

Check check_timber_compression(const TimberMember& member, double compression,
                               double length_along_h, double length_along_b,
                               const SafetyBasis& basis) {
  const TimberSection& s = member.section;
  require_sound(s);
  const TimberBuckling along_h = timber_buckling(member.strength_class, s.h, length_along_h);
  const TimberBuckling along_b = timber_buckling(member.strength_class, s.b, length_along_b);
  const TimberBuckling& worse = along_h.factor <= along_b.factor ? along_h : along_b;
  return stress_check(
      "compression along the grain", "EN 1995-1-1 6.3.2", std::abs(compression) / s.area(),
      worse.factor * usable_strength(member, member.strength_class.f_c_0_k, basis),
      fmt::format("N {:.2f} kN / ({:.0f} x {:.0f} mm); lambda {:.1f}, lambda_rel {:.2f}, k_c "
                  "{:.3f} x {}",
                  std::abs(compression) / kN, s.b, s.h, worse.slenderness,
                  worse.relative_slenderness, worse.factor,
                  strength_working("f_c0", member, member.strength_class.f_c_0_k, basis)));
}

Check check_bearing_across_grain(const TimberMember& member, const GrainBearing& bearing,
                                 double force, const SafetyBasis& basis) {
  if (!(bearing.length > 0.0) || !(bearing.width > 0.0) || !(bearing.spread_each >= 0.0) ||
      !(bearing.spread_each <= 30.0) || !(bearing.k_c90 >= 1.0) || !(bearing.k_c90 <= 1.75))
    throw MemberError("timber",
                      fmt::format("a bearing of {} x {} mm, spread {} mm, k_c90 {}", bearing.length,
                                  bearing.width, bearing.spread_each, bearing.k_c90),
                      "lengths above 0, a spread of 0 to 30 mm and k_c90 of 1.0 to 1.75 are due");
  const double area = (bearing.length + 2.0 * bearing.spread_each) * bearing.width;
  return stress_check(
      "bearing across the grain", "EN 1995-1-1 6.1.5", std::abs(force) / area,
      bearing.k_c90 * usable_strength(member, member.strength_class.f_c_90_k, basis),
      fmt::format("F {:.2f} kN / (({:.0f} + 2 x {:.0f}) x {:.0f} mm); k_c90 {:.2f} x {}",
                  std::abs(force) / kN, bearing.length, bearing.spread_each, bearing.width,
                  bearing.k_c90,
                  strength_working("f_c90", member, member.strength_class.f_c_90_k, basis)));
}

double embedment_strength(double rho_k, double diameter, bool predrilled) {
  if (!(diameter > 0.0) || !(diameter <= thickest_nail))
    throw MemberError("fastener", fmt::format("a diameter of {} mm", diameter),
                      "above 0 and up to 8 mm is due: thicker ones go by the rules for bolts");
  return predrilled ? 0.082 * (1.0 - 0.01 * diameter) * rho_k
                    : 0.082 * rho_k * std::pow(diameter, -0.3);
}

double nail_yield_moment(double tensile_strength, double diameter) {
  return 0.3 * tensile_strength * std::pow(diameter, 2.6);
}

char JohansenModes::governing() const {
  return static_cast<char>(
      'a' + (std::min_element(resistance.begin(), resistance.end()) - resistance.begin()));
}

double JohansenModes::least() const {
  return *std::min_element(resistance.begin(), resistance.end());
}

JohansenModes johansen_modes(const SingleShear& fastener, double embedment_side,
                             double embedment_point, double yield_moment) {
  require_sound_fastener(fastener);
  const double d = fastener.diameter;
  const double t1 = fastener.side_thickness;
  const double t2 = fastener.penetration;
  const double f = embedment_side;
  const double beta = embedment_point / embedment_side;
  const double t = t2 / t1;
  const double both_stiff =
      std::sqrt(beta + 2.0 * beta * beta * (1.0 + t + t * t) + beta * beta * beta * t * t) -
      beta * (1.0 + t);
  const double hinge_in_point =
      std::sqrt(2.0 * beta * (1.0 + beta) +
                4.0 * beta * (2.0 + beta) * yield_moment / (f * d * t1 * t1)) -
      beta;
  const double hinge_in_side =
      std::sqrt(2.0 * beta * beta * (1.0 + beta) +
                4.0 * beta * (1.0 + 2.0 * beta) * yield_moment / (f * d * t2 * t2)) -
      beta;
  return {{f * t1 * d, embedment_point * t2 * d, f * t1 * d / (1.0 + beta) * both_stiff,
           1.05 * f * t1 * d / (2.0 + beta) * hinge_in_point,
           1.05 * f * t2 * d / (1.0 + 2.0 * beta) * hinge_in_side,
           1.15 * std::sqrt(2.0 * beta / (1.0 + beta)) * std::sqrt(2.0 * yield_moment * f * d)}};
}

Check check_single_shear(const SingleShear& fastener, const TimberMember& timber, double force,
                         const SafetyBasis& basis) {
  require_sound_fastener(fastener);
  const double rho_k = timber.strength_class.rho_k;
  const double f_h = embedment_strength(rho_k, fastener.diameter, fastener.predrilled);
  const double yield_moment = nail_yield_moment(fastener.tensile_strength, fastener.diameter);
  const std::string gap = gap_in_rules(fastener, rho_k);
  if (!gap.empty()) return not_verified("fixing in shear", clause, gap);
  const JohansenModes modes = johansen_modes(fastener, f_h, f_h, yield_moment);
  Check check;
  check.check = "fixing in shear";
  check.clause = clause;
  check.demand = std::abs(force) / kN;
  check.capacity = usable_strength(timber, modes.least(), basis) / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "d {:.2f} mm through {:.0f} into {:.0f} mm, f_h {:.2f} N/mm2, M_y {:.2f} Nm: ({}) {:.0f} N; "
      "{:.2f} x {:.0f} N / {:.2f}, no rope effect, n_ef = n",
      fastener.diameter, fastener.side_thickness, fastener.penetration, f_h, yield_moment / 1e3,
      modes.governing(), modes.least(), modification_factor(timber.duration, timber.service),
      modes.least(), basis.gamma_timber);
  return check;
}

}  // namespace deadshore::solver
