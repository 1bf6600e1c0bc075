#pragma once

#include "solver/job/stage_state.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

/// Whether the job was followed stage by stage, on a mesh of the whole wall.
[[nodiscard]] bool is_staged(const JobResult& result);

/// What is there and what acts in each stage that was come to. \pre the result is staged
[[nodiscard]] std::vector<StageState> states_of(const JobResult& result);

}  // namespace deadshore::solver
