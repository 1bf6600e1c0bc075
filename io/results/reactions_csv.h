#pragma once

#include "solver/result/results.h"

#include <string>

namespace deadshore::io {

/// The text of reactions.csv (RFC 4180): stage, model, support, x [mm], force [kN], settlement
/// [mm], and where the work is followed stage by stage the day.
///
/// The hand method comes first as model "hand" with no stage and no settlement. Supports are the
/// needles, "left pier", "right pier", "base under the cut", "joists on SHORE", and "beam left end"
/// and "beam right end": what the beam's bearings push up, at their middles. The beam stands on the
/// piers, so its ends are no supports of the wall beside them. An analysis that finds no
/// equilibrium is one row whose support reads "no equilibrium".
[[nodiscard]] std::string reactions_csv(const solver::JobResult& result);

}  // namespace deadshore::io
