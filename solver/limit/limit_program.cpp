#include "solver/limit/limit_program.h"

#include "solver/job/error.h"
#include "solver/limit/limit_iterate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr int most_iterations = 100;
constexpr double balance_tolerance = 1e-5;  // of the largest load on a node
constexpr double spoilt = 10.0;             // times the gap asked for is still a result
constexpr int patience = 4;                 // iterations

}  // namespace

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
  LimitIterate iterate(equilibrium_, factor_, program);
  LimitSolution best;
  double best_gap = std::numeric_limits<double>::infinity();
  int iteration = 0;
  for (;; ++iteration) {
    const double residual = iterate.residual();
    const double admissible = iterate.cost();
    const double bound = iterate.bound();
    const double gap_now = (admissible - bound) / std::max(std::abs(admissible), scale);
    if (residual < balance_tolerance && gap_now < best_gap) {
      best_gap = gap_now;
      best = {admissible,       bound,          iterate.parameter(),
              residual,         iteration,      iterate.velocity(),
              iterate.stress(), iterate.force()};
    }
    // Round-off near the end may spoil the steps; what was found before stands.
    const bool stuck = best_gap < spoilt * gap && iteration > best.iterations + patience;
    if (best_gap < gap || stuck || iteration == most_iterations) break;
    if (!interior_step(iterate, {})) break;
  }
  best.iterations = iteration;
  if (best_gap > spoilt * gap) {
    throw SolveError(
        fmt::format("limit analysis did not settle in {} steps: between {:.6g} and {:.6g}",
                    best.iterations, best.bound, best.admissible));
  }
  return best;
}

}  // namespace deadshore::solver
