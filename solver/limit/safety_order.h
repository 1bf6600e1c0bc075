#pragma once

#include "solver/job/stage_state.h"
#include "solver/limit/stage_safety.h"

#include <optional>
#include <span>

namespace deadshore::solver {

/// Whether limit analysis sees no difference between two states: packing holds the soffit wherever
/// a needle might.
[[nodiscard]] bool same_for_safety(const StageState& a, const StageState& b);

/// Whether `a` has nothing to bear or hold it that `b` lacks, and no less load.
[[nodiscard]] bool is_held_no_better(const StageState& a, const StageState& b);

/// Lowers the factor of each state to that of any state that it is held no better than: what a wall
/// bears with less it bears with more, so whatever was let go, no factor may rise when support or
/// masonry goes. Says so in the verdict. Upper bounds follow where the masonry is the same.
void put_in_order(std::span<const StageState> states,
                  std::span<std::optional<StageSafety>> safety);

}  // namespace deadshore::solver
