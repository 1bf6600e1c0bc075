#pragma once

#include "solver/conic/second_order_cone.h"
#include "solver/fem/linear_form.h"
#include "solver/limit/bound_problem.h"
#include "solver/limit/equilibrium.h"

#include <Eigen/Core>

#include <vector>

namespace deadshore::solver {

/// A bound problem in equations of equilibrium: an `Equilibrium` with three stress points for each
/// triangle, its corners, and the loads. Forces are in units of `force_unit` N, stresses in units of
/// the masonry's strength.
struct FlowElements {
  ElementMatrices matrices;
  double force_unit = 1.0;
  Eigen::VectorXd load;               ///< on the equations
  std::vector<LinearForm> lifting;    ///< of each triangle: a force of size s along it lifts s of
                                      ///< its weight
  std::vector<LinearForm> pushing;    ///< forces >= 0 that supports can exert
};

/// Stresses that are linear in each triangle, in equilibrium inside each and across each edge:
/// what satisfies these equations is in equilibrium everywhere, and strength at the corners is
/// strength everywhere since the set of stresses that masonry bears is convex. So a factor from
/// them is a strict lower bound. The stress may jump along an edge.
///
/// Equations: two for each triangle, two for each end of each edge. Their velocities are those of
/// the triangle and of the edge's ends. A. Makrodimopoulos & C. M. Martin, Int. J. Numer. Meth.
/// Engng 66 (2006) 604-634 (from memory).
[[nodiscard]] FlowElements lower_elements(const BoundProblem& problem);

/// Velocities that are quadratic in each triangle (six nodes) and continuous: strain rates are
/// linear, and since the dissipation is a convex function of them its integral is no more than
/// from the corners. So a factor from such velocities is a strict upper bound. Over a support the
/// three coefficients of the edge's quadratic in Bernstein's form are no less than 0, so that the
/// velocity is so everywhere. The same authors, Int. J. Numer. Anal. Meth. Geomech. 31 (2007)
/// 835-865 (from memory).
[[nodiscard]] FlowElements upper_elements(const BoundProblem& problem);

}  // namespace deadshore::solver
