#include "viz/page/round_number.h"

#include <cmath>

namespace deadshore::viz {

double largest_round(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return 1.0;
  constexpr double sliver = 1.0 + 1e-9;
  const double power = std::pow(10.0, std::floor(std::log10(value * sliver)));
  if (5.0 * power <= value * sliver) return 5.0 * power;
  return 2.0 * power <= value * sliver ? 2.0 * power : power;
}

double next_round_below(double round) {
  return largest_round(0.8 * round);
}

}  // namespace deadshore::viz
