#include "solver/checks/deflection.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

Check check_deflection(double deflection, double span, double limit) {
  Check check;
  check.check = "deflection";
  check.clause = "EN 1990 A1.4";
  check.demand = std::abs(deflection);
  check.capacity = limit * span;
  check.unit = "mm";
  check.working = fmt::format("span {:.2f} m / {:.0f}", span / 1000.0, 1.0 / limit);
  return check;
}

}  // namespace deadshore::solver
