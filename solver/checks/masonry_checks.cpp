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
  if (std::min(load.bearing_length, load.bearing_depth) >= least_bearing) return check;
  const double plain = load.bearing_length * load.bearing_depth * f_k / basis.gamma_masonry;
  check.capacity = plain / kN;
  check.working = fmt::format("{:.0f} x {:.0f} mm x f_k {:.2f} N/mm2 / {:.2f}, no enhancement",
                              load.bearing_length, load.bearing_depth, f_k, basis.gamma_masonry);
  check.caution = fmt::format("the bearing of {:.0f} x {:.0f} mm is under {:.0f} mm",
                              load.bearing_length, load.bearing_depth, least_bearing);
  check.not_verified = check.passes();
  return check;
}

WallResistance wall_resistance(const LoadedWall& wall, double f_k, const SafetyBasis& basis) {
  if (!(wall.length > 0.0) || !(wall.thickness > 0.0) || !(wall.height > 0.0) || !(f_k > 0.0))
    throw MemberError("masonry",
                      fmt::format("{} x {} mm of wall {} mm high, f_k {} N/mm2", wall.length,
                                  wall.thickness, wall.height, f_k),
                      "sizes above 0 are due");
  constexpr double most_slender = 27.0;    // 5.5.1.4(2)
  constexpr double small_area = 0.1e6;     // mm2, 6.1.2.1(3)
  constexpr double least_part = 0.05;      // of t, 6.1.2.2
  constexpr double from_building = 450.0;  // 5.5.1.1(4)
  const double t = wall.thickness;
  const double initial = wall.height / from_building;
  const double at_ends = std::max(std::abs(wall.through) + initial, least_part * t);
  const double at_middle = std::max(0.5 * std::abs(wall.through) + initial, least_part * t);
  WallResistance result;
  result.slenderness = wall.height / t;
  result.compressed = std::max(0.0, wall.length - 2.0 * std::abs(wall.along));
  const double area = wall.length * t;
  if (area < small_area) result.area_factor = 0.7 + 3.0 * area * 1e-6;
  result.ends = std::max(0.0, 1.0 - 2.0 * at_ends / t);
  const double A_1 = std::max(0.0, 1.0 - 2.0 * at_middle / t);
  const double below = 23.0 - 37.0 * at_middle / t;
  const double u = below > 0.0 ? (result.slenderness - 2.0) / below : most_slender;
  result.middle = u > 0.0 ? A_1 * std::exp(-0.5 * u * u) : A_1;
  if (result.slenderness > most_slender) result.middle = 0.0;
  result.resistance = std::min(result.ends, result.middle) * t * result.compressed *
                      result.area_factor * f_k / basis.gamma_masonry;
  return result;
}

Check check_loaded_wall(const LoadedWall& wall, double force, double f_k,
                        const SafetyBasis& basis) {
  const WallResistance result = wall_resistance(wall, f_k, basis);
  Check check;
  check.check = "pier under its load";
  check.clause = "EN 1996-1-1:2005 6.1.2";
  check.demand = force / kN;
  check.capacity = result.resistance / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "{:.0f} x {:.0f} mm, h_ef / t {:.1f}; {:.0f} mm off its middle along the wall leaves {:.0f} "
      "mm; "
      "{:.0f} mm through it: Phi {:.3f} at ends, {:.3f} at mid-height; area factor {:.3f}; f_k "
      "{:.2f} "
      "N/mm2 / {:.2f}",
      wall.length, wall.thickness, result.slenderness, std::abs(wall.along), result.compressed,
      std::abs(wall.through), result.ends, result.middle, result.area_factor, f_k,
      basis.gamma_masonry);
  return check;
}

}  // namespace deadshore::solver
