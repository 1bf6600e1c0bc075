#pragma once

#include "solver/result/results.h"

namespace deadshore::viz {

/// The wall of `made_up_result` followed stage by stage with a permanent beam and the floor on dead
/// shores: a door with its lintel in the cut, both analyses, cracks, damage, joists, a beam and a
/// safety with a mechanism. Stresses, forces and movements by formula; no solver takes part.
[[nodiscard]] solver::JobResult made_up_staged_result();

}  // namespace deadshore::viz
