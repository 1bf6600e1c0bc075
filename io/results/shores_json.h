#pragma once

#include "io/results/json_numbers.h"
#include "solver/result/results.h"

namespace deadshore::io {

/// "shores" of results.json: by the name of each dead shore that has a frame.
[[nodiscard]] Json shores_json(const solver::JobResult& result);

}  // namespace deadshore::io
