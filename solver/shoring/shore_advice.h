#pragma once

#include "solver/job/job.h"
#include "solver/shoring/shore_spacing.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Advice on a dead shore in plain sentences, each of them computed: the props' spacing and what
/// would fail beyond it; what an upright under a load at a point changes; what fails and the next
/// thing that would pass; which of its loads the row does not reach.
[[nodiscard]] std::vector<std::string> advise_on_shore(const Job& job, const ShoreCase& asked,
                                                       const SpacingFound& spacing,
                                                       const ShoreAnswer& answer);

}  // namespace deadshore::solver
