#include "solver/limit/limit_program.h"

#include "solver/limit/interior_point.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

LargestWork largest_work(const Strength& strength, const Mohr& strain) {
  // The principal strains are half of mean +- radius of these three components.
  const double radius = std::sqrt(strain(1) * strain(1) + strain(2) * strain(2));
  const double major = 0.5 * (strain(0) + radius);
  const double minor = 0.5 * (strain(0) - radius);
  const double opening = std::max(major, 0.0) + std::max(minor, 0.0);
  const double crushing = -std::min(major, 0.0) - std::min(minor, 0.0);
  return {strength.tension * opening + strength.compression * crushing,
          strength.tension_rise * opening};
}

LimitSolver::LimitSolver(const Equilibrium& equilibrium)
    : equilibrium_(equilibrium), factor_(equilibrium.pattern().empty()) {}

LimitSolution LimitSolver::solve(const LimitProgram& program, double scale, double gap) {
  return InteriorPoint(equilibrium_, factor_, program).run(scale, gap);
}

}  // namespace deadshore::solver
