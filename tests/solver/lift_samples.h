#pragma once

#include "solver/job/job.h"
#include "solver/site/lift_plan.h"

#include <string>

namespace deadshore::solver::testing {

/// The invented wall of `beam_job` with three needles on props at 2, 3 and 4 m, and a beam 3.45 m
/// long that comes from outside, sideways, on two lifters 0.5 m to each side of its middle and two
/// stands 1.15 m to each side. Nothing is in its way and every check passes.
[[nodiscard]] Job lift_job();

/// The same endways through a left pocket of 520 mm.
[[nodiscard]] Job endways_job();

/// The one check of a member. \throws std::logic_error unless there is one
[[nodiscard]] Check check_of(const LiftPlan& plan, const std::string& member,
                             const std::string& check);

}  // namespace deadshore::solver::testing
