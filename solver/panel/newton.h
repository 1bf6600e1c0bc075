#pragma once

#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <functional>

namespace deadshore::solver {

/// When Newton's method stops. The relative residual is the norm of the out-of-balance forces over
/// the larger of the norms of loads and internal forces.
struct NewtonOptions {
  double tolerance = 1e-10;   ///< converged at this relative residual
  double round_off = 1e-9;    ///< converged at this relative residual, if it no longer falls
  int most_iterations = 300;  ///< factorisations at most
  int patience = 8;           ///< steps without a new least residual before a line search
};

/// What a solution by Newton's method came to. Not converged means: do not use it.
struct [[nodiscard]] NewtonReport {
  bool converged = false;
  int iterations = 0;     ///< factorisations
  double residual = 0.0;  ///< relative residual at the end
};

/// Relative residual at the displacement `u` (2 per node, mm).
[[nodiscard]] double out_of_balance(const PanelModel& model, const PanelLoading& loading,
                                    const Eigen::VectorXd& u);

/// Finds the displacement of least energy.
///
/// The energy is convex and piecewise quadratic, so plain Newton steps end exactly once the pattern
/// of cracks and contacts is nearly right; from a start that is near the answer nothing else is
/// needed. Where they do not converge, as in masonry that bears hardly any tension, an interior
/// path (interior_path.h) leads to that pattern; its count of steps hardly depends on the mesh.
/// Newton steps with a line search on the slope of the energy, which always lower it, come first in
/// stronger masonry and last in any. All ways lead to the same least energy, since there is only
/// one.
///
/// panel_model.h has an example from a job to what its needles carry.
///
/// \param u start, and the result; 2 per node, mm
/// \param progress called after each step with the factorisations so far and the relative
///   residual; may be empty
/// \returns whether it converged; if not, `u` must not be used
/// \throws SolveError if a part of the wall can move even with all contacts closed, or with those
///   that are closed in the end; or if the stiffness is singular for another reason
NewtonReport minimise(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd& u,
                      const NewtonOptions& options = {},
                      const std::function<void(int, double)>& progress = {});

}  // namespace deadshore::solver
