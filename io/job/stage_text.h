#pragma once

#include "solver/job/job.h"

#include <string>
#include <vector>

namespace deadshore::io {

/// Stages as [[stage]] tables of a job file, with comments on what is done.
[[nodiscard]] std::string stage_text(const solver::Job& job,
                                     const std::vector<solver::Stage>& stages);

}  // namespace deadshore::io
