#pragma once

#include "io/results/json_numbers.h"
#include "solver/result/results.h"

namespace deadshore::io {

/// "removed" of results.json: what comes out, course by course and strip by strip. Volumes in mm3.
[[nodiscard]] Json removed_json(const solver::RemovedMasonry& removed);

/// Adds "steps" in their order, and "monitoring": the marks to be watched and the rule to stop by.
/// What is not known is left out.
void add_site_plan(const solver::JobResult& result, Json& json);

}  // namespace deadshore::io
