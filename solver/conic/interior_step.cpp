#include "solver/conic/interior_step.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

Complementarity target_after(const Complementarity& now, const Complementarity& predicted,
                             const StepRules& rules) {
  const auto centring = [&](double before, double after) {
    if (!(before > 0.0)) return 0.0;
    return std::clamp(std::pow(after / before, 3), rules.least_centring, 1.0);
  };
  const double all = centring(now.all, predicted.all) * now.all;
  if (rules.one_target) return {all, all, all};
  const double cones = centring(now.cones, predicted.cones);
  const double bounds = std::max(cones, centring(now.bounds, predicted.bounds));
  return {cones * now.cones, bounds * now.bounds, all};
}

}  // namespace deadshore::solver
