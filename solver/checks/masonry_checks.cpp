#include "solver/checks/masonry_checks.h"

#include "solver/checks/check.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double least_bearing = 90.0;  // mm, 6.1.3(7)

void require_sound(const ConcentratedLoad& load, double f_k) {
  const bool sound = load.bearing_length > 0.0 && load.bearing_depth > 0.0 &&
                     load.bearing_depth <= load.thickness && load.near_end >= 0.0 &&
                     load.far_end >= load.near_end && load.height > 0.0 && f_k > 0.0 &&
                     std::isfinite(load.bearing_length + load.thickness + load.height + f_k) &&
                     std::isfinite(load.eccentricity);
  if (sound) return;
  throw MemberError(
      "masonry",
      fmt::format("a bearing of {} x {} mm on a wall {} mm thick and {} mm high, {} and {} mm from "
                  "its ends, f_k {} N/mm2",
                  load.bearing_length, load.bearing_depth, load.thickness, load.height,
                  load.near_end, load.far_end, f_k),
      "sizes above 0, a bearing within the wall and the nearer end first are due");
}

}  // namespace

double masonry_strength(const MasonryUnits& units) {
  if (!(units.K > 0.0) || !(units.f_b > 0.0) || !(units.f_m > 0.0))
    throw MemberError("masonry", fmt::format("K {}, f_b {}, f_m {}", units.K, units.f_b, units.f_m),
                      "values above 0 are due");
  const double f_b = std::min(units.f_b, 75.0);
  const double f_m = std::min({units.f_m, 20.0, 2.0 * f_b});
  const double strength = units.K * std::pow(f_b, 0.7) * std::pow(f_m, 0.3);
  return units.longitudinal_joint ? 0.8 * strength : strength;
}

ConcentratedResistance concentrated_resistance(const ConcentratedLoad& load, double f_k,
                                               const SafetyBasis& basis) {
  require_sound(load, f_k);
  const double spread = 0.5 * load.height / std::numbers::sqrt3;  // at 60 degrees, to half height
  ConcentratedResistance result;
  result.spread_length =
      load.bearing_length + std::min(load.near_end, spread) + std::min(load.far_end, spread);
  const double area = load.bearing_length * load.bearing_depth;
  const double share = std::min(area / (result.spread_length * load.thickness), 0.45);
  const double most = std::min(1.25 + load.near_end / (2.0 * load.height), 1.5);
  result.enhancement =
      std::clamp((1.0 + 0.3 * load.near_end / load.height) * (1.5 - 1.1 * share), 1.0, most);
  result.resistance = result.enhancement * area * f_k / basis.gamma_masonry;
  return result;
}

Check check_concentrated_load(const ConcentratedLoad& load, double force, double f_k,
                              const SafetyBasis& basis) {
  const ConcentratedResistance result = concentrated_resistance(load, f_k, basis);
  Check check;
  check.check = "masonry under concentrated load";
  check.clause = "EN 1996-1-1 6.1.3";
  check.demand = std::abs(force) / kN;
  check.capacity = result.resistance / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "a_1 {:.0f}, h_c {:.0f}, l_efm {:.0f} mm: beta {:.3f} x {:.0f} x {:.0f} mm x f_k {:.2f} "
      "N/mm2 / {:.2f}",
      load.near_end, load.height, result.spread_length, result.enhancement, load.bearing_length,
      load.bearing_depth, f_k, basis.gamma_masonry);
  if (std::abs(load.eccentricity) > 0.25 * load.thickness)
    return not_verified(check.check, check.clause,
                        fmt::format("the load is {:.0f} mm off the wall's middle, over a quarter "
                                    "of its {:.0f} mm",
                                    std::abs(load.eccentricity), load.thickness));
  if (std::min(load.bearing_length, load.bearing_depth) < least_bearing)
    return not_verified(check.check, check.clause,
                        fmt::format("the bearing of {:.0f} x {:.0f} mm is under {:.0f} mm",
                                    load.bearing_length, load.bearing_depth, least_bearing));
  return check;
}

}  // namespace deadshore::solver
