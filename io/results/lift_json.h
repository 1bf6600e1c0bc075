#pragma once

#include "io/results/json_numbers.h"
#include "solver/site/lift_plan.h"

namespace deadshore::io {

/// "lift" of results.json: weights, what lifters and stands carry, and the steps. Its checks are
/// among the others.
[[nodiscard]] Json lift_json(const solver::LiftPlan& plan);

}  // namespace deadshore::io
