#include "solver/checks/timber_fasteners.h"

#include "solver/checks/presented_units.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

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
