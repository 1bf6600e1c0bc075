#pragma once

#include "solver/frame/frame_solution.h"

#include <vector>

namespace deadshore::solver {

struct BucklingOptions {
  /// Each member is cut into; the load factor's error falls with their 4th power, its part from
  /// shear flexibility with their 2nd.
  int parts = 8;
  int modes = 1;
};

struct BucklingMode {
  double load_factor = 0.0;         ///< times all loads, at which the frame buckles
  Frame divided;                    ///< the frame cut up; its first nodes are the frame's own
  std::vector<NodeMovement> shape;  ///< of the nodes of `divided`; largest shift 1
};

/// Lowest modes of linear buckling: loads, and the springs that bear under them, grow in
/// proportion; displacements before buckling are neglected. G x = mu K x with the load factor 1 /
/// mu, G from the first-order axial forces. Empty if nothing that is compressed can buckle.
/// \throws SolveError like `solve`
[[nodiscard]] std::vector<BucklingMode> buckling(const Frame& frame,
                                                 const BucklingOptions& options = {});

}  // namespace deadshore::solver
