#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"

#include <vector>

namespace deadshore::solver {

/// What the props on one side of the wall carry, unfactored, N.
struct PropRowLoad {
  PropSide side = PropSide::inside;
  double total = 0.0;    ///< of all its props
  double largest = 0.0;  ///< of one prop
  int count = 0;         ///< of props
};

/// Bracing of each row of props, along the row and across it, for a horizontal force that is
/// `Bracing::horizontal` of what the row carries: 2.5% unless the job says more (BS 5975, from
/// memory). One diagonal at 45 degrees takes all of it, held by a swivel coupler; head and foot of
/// each prop are fixed for the same part of its own load. The working of a row is its bracing
/// schedule.
[[nodiscard]] std::vector<Check> check_bracing(const Bracing& bracing,
                                               const std::vector<PropRowLoad>& rows);

}  // namespace deadshore::solver
