#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <vector>

namespace deadshore::solver {

/// The polygon of a needle's spread within `reach`: from the left end of its bearing anticlockwise
/// along the soffit, up at 45 degrees to the end of the reach or to the wall's top, back along the
/// top and down. Openings are not taken out. mm.
[[nodiscard]] std::vector<mesh::Point> spread_outline(const Job& job, const Needle& needle,
                                                      mesh::Interval reach);

}  // namespace deadshore::solver
