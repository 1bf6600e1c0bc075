#include "solver/fem/plane_tensor.h"

#include <cmath>

namespace deadshore::solver {

Principal principal_of(const PlaneTensor& tensor) {
  const double mean = 0.5 * (tensor.xx + tensor.yy);
  const double half_difference = 0.5 * (tensor.xx - tensor.yy);
  const double radius = std::hypot(half_difference, tensor.xy);
  return {mean + radius, mean - radius, 0.5 * std::atan2(tensor.xy, half_difference)};
}

}  // namespace deadshore::solver
