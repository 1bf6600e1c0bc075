#pragma once

#include "solver/model/results.h"

#include <string>

namespace deadshore::io {

/// The text of reactions.csv (RFC 4180): stage, model, support, x [mm], force [kN], settlement
/// [mm].
///
/// The hand method comes first as model "hand" with no stage and no settlement. Piers have no `x`.
/// An analysis that finds no equilibrium is one row whose support reads "no equilibrium".
[[nodiscard]] std::string reactions_csv(const solver::JobResult& result);

}  // namespace deadshore::io
