#pragma once

#include "solver/shoring/shore_forces.h"

#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::solver {

/// Checks of one stud: compression with buckling over its whole length across the
/// row, and along it over the same or, with noggings, half of it (EN 1995-1-1 6.3.2, pinned ends);
/// its bearing on sole and head plate across their grain (6.1.5). The contact spreads by up to 30
/// mm at each side, no more than its own length, half the way to the next stud, or the plate's end.
/// k_c90: 1.25 on a softwood sole where studs are apart by twice its thickness, else 1.0; 1.0 under
/// the head plate, since a joist may stand straight over a stud.
/// \param which of the uprights
/// \param factored_load N, as the rules say
[[nodiscard]] std::vector<Check> check_stud(const ShoreFrame& frame,
                                            std::span<const Upright> uprights, std::size_t which,
                                            double factored_load, const CheckRules& rules);

}  // namespace deadshore::solver
