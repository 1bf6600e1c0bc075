#pragma once

#include "solver/result/results.h"

namespace deadshore::solver {

/// Whether the job was followed stage by stage, on a mesh of the whole wall.
[[nodiscard]] bool is_staged(const JobResult& result);

}  // namespace deadshore::solver
