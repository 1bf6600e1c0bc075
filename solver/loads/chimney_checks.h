#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"
#include "solver/loads/take_down.h"

#include <vector>

namespace deadshore::solver {

/// Rows for chimney breasts over the cut, or within the 45-degree spread above it: one each, never
/// verified. Such a breast stands proud of the wall that needles and beam carry, while the panel
/// puts its weight on the wall's middle: what holds the breast itself, and the moment of its weight
/// across the wall, are not worked out. The row says how much stands how far out.
[[nodiscard]] std::vector<Check> check_chimneys(const Job& job, const TakeDown& take_down);

}  // namespace deadshore::solver
