#include "solver/checks/buckling_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace deadshore::solver {

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

}  // namespace deadshore::solver
