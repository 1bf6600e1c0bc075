#pragma once

#include "solver/result/results.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

/// Steps in a builder's words.
namespace deadshore::io {

/// "Cut" of "cut".
[[nodiscard]] std::string with_capital(std::string words);

/// What is done in a stage, one sentence each, with marks, sections and preloads.
[[nodiscard]] std::vector<std::string> work_of_step(const solver::JobResult& result,
                                                    const solver::Stage& stage);

/// What must be measured, cured or looked at after stage `index` and before the next is begun.
[[nodiscard]] std::vector<std::string> hold_points_of(const solver::Job& job,
                                                      std::span<const solver::Stage> stages,
                                                      std::size_t index);

}  // namespace deadshore::io
