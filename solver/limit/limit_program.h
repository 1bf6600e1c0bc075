#pragma once

#include "solver/fem/linear_form.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/limit/equilibrium.h"

#include <Eigen/Core>

#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace deadshore::solver {

/// A force of unknown size that acts on the wall along a fixed combination of its free
/// displacements: a support that only pushes, or a hanger that takes weight off.
struct UnknownForce {
  LinearForm along;                                       ///< over the free displacements
  double most = std::numeric_limits<double>::infinity();  ///< 0 <= force <= most + parameter * rise
  double most_rise = 0.0;                                 ///< only where `most` is finite
  double cost = 0.0;
  double budget_share = 0.0;  ///< what it takes of the budget

  [[nodiscard]] bool is_bounded() const { return std::isfinite(most); }
};

/// Largest principal stresses that a quadrilateral bears: -compression <= stress <= tension.
struct Strength {
  double compression = 0.0;
  double tension = 0.0;
  double tension_rise = 0.0;  ///< added to `tension` per unit of the parameter
};

/// Largest work that stresses within strength can do on a strain, at parameter 0 and its rise per
/// unit of the parameter: the dissipation of the kinematic theorem.
struct LargestWork {
  double at_0 = 0.0;
  double rise = 0.0;
};
[[nodiscard]] LargestWork largest_work(const Strength& strength, const Mohr& strain);

/// A problem of limit analysis: find stresses within strength, unknown forces within bounds and a
/// parameter g (0 <= g <= most) in equilibrium with `load + g * load_rise`, so that
/// `parameter_cost * g + sum of cost * force` is least. The unknown forces' share of the budget
/// must not pass `budget + g * budget_rise`.
///
/// In any consistent units, best such that strengths, forces and the parameter are of order 1.
struct LimitProgram {
  Eigen::VectorXd load;            ///< on the free equations
  Eigen::VectorXd load_rise;       ///< empty: none
  std::vector<Strength> strength;  ///< one per quadrilateral
  std::vector<UnknownForce> forces;
  double parameter_cost = 0.0;
  double most_parameter = 0.0;  ///< 0: there is no parameter
  std::optional<double> budget;
  double budget_rise = 0.0;
};

/// What a program came to. `admissible` is the cost of a state that satisfies all conditions (up to
/// round-off in equilibrium), `bound` a lower bound on every cost, from the velocities: the static
/// and the kinematic theorem for the problem on its mesh. With elements that know stress at Gauss
/// points only, neither is a strict bound for the continuum.
struct LimitSolution {
  double admissible = 0.0;
  double bound = 0.0;
  double parameter = 0.0;
  double residual = 0.0;      ///< largest out-of-balance force over the largest force
  int iterations = 0;         ///< factorisations
  Eigen::VectorXd velocity;   ///< multipliers of equilibrium, on the free equations
  std::vector<Mohr> stress;   ///< at the Gauss points
  std::vector<double> force;  ///< in the program's order
};

/// Solves limit programs that share one mesh and its supports, by a primal-dual interior-point
/// method: Nesterov-Todd directions, Mehrotra's predictor and corrector. A program of this kind on
/// masonry: e.g. Portioli, Casapulla, Gilbert & Cascini, Int. J. Solids Struct. 51 (2014); the
/// method: Andersen, Roos & Terlaky, Math. Program. 95 (2003) 249-277 (both from memory).
class LimitSolver {
 public:
  explicit LimitSolver(const Equilibrium& equilibrium);

  /// \throws SolveError where bound and admissible cost do not come within `gap` of each other
  ///   relative to the larger of them and `scale`
  [[nodiscard]] LimitSolution solve(const LimitProgram& program, double scale, double gap);

 private:
  const Equilibrium& equilibrium_;
  SparseCholesky factor_;
};

}  // namespace deadshore::solver
