#pragma once

#include "mesh/plane.h"
#include "solver/model/job.h"

#include <string>

namespace deadshore::solver {

/// Where a crack between `from` and `to` lies, widest at `widest`, in plain words from the job's
/// geometry: at a corner, over the head or under the sill of an opening; in the soffit over or
/// between needles, padstones' jambs; over a jamb; in a pier; in the wall above. `near`: how far
/// from a thing still is at it, mm.
[[nodiscard]] std::string place_of_crack(const Job& job, mesh::Point from, mesh::Point to,
                                         mesh::Point widest, double near);

}  // namespace deadshore::solver
