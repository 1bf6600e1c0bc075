#pragma once

#include "io/results/json_numbers.h"
#include "solver/result/results.h"

namespace deadshore::io {

/// "sensitivity" of results.json: for each masonry model the bracket [least, most] of every support
/// while one thing goes through its range.
[[nodiscard]] Json sensitivity_json(const solver::JobResult& result);

}  // namespace deadshore::io
