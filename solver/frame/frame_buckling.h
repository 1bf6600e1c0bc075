#pragma once

#include "solver/frame/frame_solution.h"

#include <vector>

namespace deadshore::solver {

/// How finely buckling is looked for.
struct BucklingOptions {
  /// Into which each member is cut: the error of the load factor falls with their 4th power, its
  /// part from shear flexibility with their 2nd.
  int parts = 8;
  int modes = 1;  ///< how many are wanted, at most
};

/// A buckling mode.
struct BucklingMode {
  double load_factor = 0.0;         ///< on all loads, at which the frame buckles
  Frame divided;                    ///< the frame cut up; its first nodes are the frame's own
  std::vector<NodeMovement> shape;  ///< of the nodes of `divided`; largest displacement 1
};

/// Lowest modes of linear buckling. All loads grow in proportion, and the springs that bear under
/// them once go on bearing; displacements before buckling are neglected. The eigenproblem is G x =
/// mu K x with the load factor 1 / mu, K the stiffness and G the geometric stiffness (with its sign
/// turned) by the first-order axial forces.
/// \returns modes by rising load factor; none if nothing that is compressed can buckle
/// \throws SolveError like `solve`
[[nodiscard]] std::vector<BucklingMode> buckling(const Frame& frame,
                                                 const BucklingOptions& options = {});

}  // namespace deadshore::solver
