#pragma once

#include "solver/job/job.h"
#include "solver/result/results.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace deadshore::solver {

/// The analysis under `model`, if it was made and the wall stands in it; else null.
[[nodiscard]] const PanelResult* find_standing(std::span<const PanelResult> analyses,
                                               MasonryModel model);

/// Upward forces of one analysis, N: needles in the job's order, and the two bases.
struct SupportForces {
  std::vector<double> needles;
  double base_left = 0.0;
  double base_right = 0.0;
};
[[nodiscard]] SupportForces forces_of(const PanelResult& result);

/// Uncracked answers to "what if", that tell why the methods differ.
struct WhatIf {
  SupportForces as_given;
  SupportForces unyielding;  ///< needles a thousand times as stiff, no slack, no preload
  std::optional<SupportForces> without_slack;  ///< none where no needle has slack
  std::vector<SupportForces> without_load;     ///< one for each point load left out
};

/// The jobs to solve for `WhatIf`, made from the one given.
[[nodiscard]] Job with_unyielding_needles(const Job& job);
[[nodiscard]] Job without_slack(const Job& job);
[[nodiscard]] Job without_point_load(const Job& job, std::size_t index);

/// Hand, uncracked and cracked side by side; where two differ by over 15% of the finite-element
/// load, sentences that say why, each from the numbers of `what_if` and of the hand sum.
[[nodiscard]] std::vector<NeedleComparison> compare(const Job& job, const SpreadResult& hand,
                                                    std::span<const PanelResult> analyses,
                                                    const WhatIf& what_if);

}  // namespace deadshore::solver
