#pragma once

#include "io/json_numbers.h"
#include "solver/model/results.h"

namespace deadshore::io {

/// "shores" of results.json: by the name of each dead shore that has a frame.
[[nodiscard]] Json shores_json(const solver::JobResult& result);

}  // namespace deadshore::io
