#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <string>

namespace deadshore::solver {

/// Where a crack between `from` and `to` lies, widest at `widest`, in plain words from the job's
/// geometry: from a corner of an opening, if it is widest towards one; in the soffit over a needle
/// or between two; over a head or under a sill; over a jamb; in a pier; in the wall above. Says
/// also which corner its other end runs to.
/// \param near largest distance at which a crack is still at a thing, mm
[[nodiscard]] std::string place_of_crack(const Job& job, mesh::Point from, mesh::Point to,
                                         mesh::Point widest, double near);

}  // namespace deadshore::solver
