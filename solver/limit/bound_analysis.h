#pragma once

#include "solver/limit/bound_problem.h"

#include <vector>

namespace deadshore::solver {

/// Part of its compressive strength that masonry without tension is left with in a lower bound: at
/// 2.4 N/mm2 it holds a layer a millimetre deep. Free edges leave no stress inside strength without.
inline constexpr double tension_left_in_bounds = 1e-5;

/// A strict lower bound on the factor of all loads, from stresses in equilibrium; what shows that it
/// is one was measured afterwards.
struct LowerBound {
  double factor = 0.0;          ///< stresses were scaled down until all of them are within strength
  double out_of_balance = 0.0;  ///< largest force that is not in equilibrium over the largest load
  double tension = 0.0;         ///< largest principal stress in masonry, N/mm2
  int iterations = 0;           ///< factorisations
};

/// A strict upper bound, from a mechanism that obeys the flow rule and the supports exactly.
struct UpperBound {
  double factor = 0.0;
  std::vector<mesh::Point> velocity;  ///< of each node, largest 1
  std::vector<double> work;           ///< that each triangle takes, parts of all
  int iterations = 0;
};

/// Least weight that must hang so that the rest is in equilibrium at factor 1.
struct LooseTriangles {
  double masonry = 0.0;      ///< N
  double load = 0.0;         ///< applied loads and weight that is not masonry, N
  std::vector<double> part;  ///< of each triangle's weight that hangs, 0 to 1
  int iterations = 0;
};

/// Bounds on the factor up to which the wall bears all its loads; no more than `most` is looked for.
/// A lower bound of 0 says that none was found.
[[nodiscard]] LowerBound lower_bound(const BoundProblem& problem, double most);
[[nodiscard]] UpperBound upper_bound(const BoundProblem& problem, double most);

[[nodiscard]] LooseTriangles loose_triangles(const BoundProblem& problem);

}  // namespace deadshore::solver
