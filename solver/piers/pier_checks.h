#pragma once

#include "solver/checks/check.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

/// Every pier at every level and stage, by EN 1996-1-1 6.1.2 with force and moment along the wall
/// of each standing analysis: one row a pier, its worst, and before the work the same. A pier is
/// any stretch of masonry beside an opening or the cut. Through the wall the lowest floor over the
/// soffit is taken to bear on 100 mm of its inner face, its load at a third of that (common
/// practice, no source); h_ef is the height over which the stretch is as it is, such as up to the
/// soffit or from sill to head. The permanent beam is in the analyses of the stages in which it is
/// in; where there are none such, its reaction by hand is put on each pier.
/// Then the ground under both piers by what each metre of them brings down before and after.
/// Empty where the wall does not stand: nothing beside that says otherwise.
[[nodiscard]] std::vector<Check> check_piers(const JobResult& result);

}  // namespace deadshore::solver
