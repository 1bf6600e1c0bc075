#include "solver/loads/roof_loads.h"

#include "solver/checks/check.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

/// Part of a load that stays on a slope: 1 up to 30 degrees, falling linearly to 0 at 60.
double part_that_stays(double pitch) {
  return std::clamp((60.0 - pitch) / 30.0, 0.0, 1.0);
}

}  // namespace

double roof_access_load(double pitch) {
  return 0.6 * kN_per_m2 * part_that_stays(pitch);
}

double snow_shape_coefficient(double pitch) {
  return 0.8 * part_that_stays(pitch);
}

double ground_snow_uk(double zone, double altitude) {
  constexpr double metre = 1000.0;
  const double s_k = 0.15 + (0.1 * zone + 0.05) + (altitude / metre - 100.0) / 525.0;
  return std::max(s_k, 0.0) * kN_per_m2;
}

}  // namespace deadshore::solver
