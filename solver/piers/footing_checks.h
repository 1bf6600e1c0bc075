#pragma once

#include "solver/checks/check.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

/// Increase of load on an old footing without signs of distress that is accepted without knowing
/// the footing, as a part of what it had. Common practice, no source.
inline constexpr double accepted_change = 0.10;

/// The ground under both piers, by what each metre of a pier brings down before the work and at
/// most after, unfactored. With a `[[footing]]` in the job the pressure under it is checked;
/// without one the increase, which passes up to `accepted_change` and is not verified beyond.
[[nodiscard]] std::vector<Check> check_footings(const JobResult& result);

/// Allowable bearing pressure under a strip footing, N/mm2: the ground's presumed bearing, and on
/// sand and gravel no more than a third of EN 1997-1:2004 Annex D.4 with the soil beside it as
/// overburden. None where it is not known.
[[nodiscard]] std::optional<double> footing_bearing(const PierFooting& footing);

}  // namespace deadshore::solver
