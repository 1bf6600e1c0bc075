#pragma once

#include "io/results/json_numbers.h"
#include "solver/result/results.h"

namespace deadshore::io {

/// "stages" of results.json: each with its name and analyses, and where the work was followed stage
/// by stage also its day, what was done and its safety without tension.
[[nodiscard]] Json stages_json(const solver::JobResult& result);

}  // namespace deadshore::io
