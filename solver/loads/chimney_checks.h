#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"
#include "solver/loads/take_down.h"

#include <vector>

namespace deadshore::solver {

/// A chimney breast over the cut, or within the 45-degree spread above it, stands proud of the wall
/// that needles and beam carry. The panel puts its weight on the wall's middle, so what holds the
/// breast itself, and the moment of its weight across the wall, are never passed: each such chimney
/// gives one check that is not verified and says how much stands how far out. None where the job
/// has no chimney there.
[[nodiscard]] std::vector<Check> check_chimneys(const Job& job, const TakeDown& take_down);

}  // namespace deadshore::solver
