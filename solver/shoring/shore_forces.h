#pragma once

#include "solver/needle/needle_checks.h"
#include "solver/shoring/uprights.h"

#include <span>
#include <vector>

namespace deadshore::solver {

/// The worst of every case that a shore is looked at in. N, mm.
struct ShoreForces {
  std::vector<double> uprights;  ///< the largest load of each
  double moment = 0.0;           ///< in the head plate, as a size
  double shear = 0.0;            ///< in the head plate, as a size
  double joist = 0.0;            ///< that one joist brings, with a point load on it
  double deflection = 0.0;       ///< of the head plate, as in `PlateAnswer`
  double deflection_span = 0.0;  ///< that goes with it
  double all = 0.0;              ///< every load and the head plate's weight
};

/// Forces under unfactored loads, the head plate's weight among them.
///
/// Cases: the joists anywhere on the plate (one over each upright, one in the middle of each bay,
/// and by quarters of their spacing); imposed load everywhere, or on every other bay; uprights that
/// are rigid, or as elastic as props or studs on their sole and ground are.
/// \throws SolveError where the plate tips off its uprights
[[nodiscard]] ShoreForces unfactored_forces(const ShoreFrame& frame,
                                            std::span<const Upright> uprights,
                                            const RowLoads& loads);

/// The same under the loads that strengths are set against, by the rules of the job.
[[nodiscard]] ShoreForces factored_forces(const ShoreFrame& frame,
                                          std::span<const Upright> uprights, const RowLoads& loads,
                                          const CheckRules& rules);

}  // namespace deadshore::solver
