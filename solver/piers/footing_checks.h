#pragma once

#include "solver/checks/check.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

/// More load on an old footing that shows no distress than this part of what it had is no longer
/// waved through. Common practice, no source.
inline constexpr double accepted_change = 0.10;

/// Load of each metre of both piers on what is under them, before the work and at most after, N/mm,
/// unfactored. With a `[[footing]]` the pressure under it; without one the change, which passes up
/// to a tenth more and is not verified beyond.
[[nodiscard]] std::vector<Check> check_footings(const JobResult& result);

/// What the ground may bear under a strip `width` wide at `depth`, N/mm2: its presumed bearing, and
/// on sand and gravel no more than a third of EN 1997-1:2004 Annex D.4 with the soil beside it as
/// overburden. None where it is not known.
[[nodiscard]] std::optional<double> footing_bearing(const PierFooting& footing);

}  // namespace deadshore::solver
