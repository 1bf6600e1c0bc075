#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"

#include <vector>

namespace deadshore::solver {

/// Bearing on masonry by EN 1996-1-1 6.1.3, under every point load of the job and every purlin of
/// its house: over the load's own bearing along the wall and half the wall's thickness through it,
/// so that it is a quarter of the thickness off the wall's middle. And under both ends of every
/// lintel that stays, each of which takes half of all that stands straight over its opening, with
/// no arching.
[[nodiscard]] std::vector<Check> check_point_bearings(const Job& job);

}  // namespace deadshore::solver
