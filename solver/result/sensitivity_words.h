#pragma once

#include "solver/result/sensitivity.h"

#include <string>

namespace deadshore::solver {

/// The range that a bracket covers: "E of the masonry x 0.5 to 2", "1 mm lost in the packing of
/// N2".
[[nodiscard]] std::string range_in_words(const ReactionBracket& bracket);

/// The same of anything that is changed: `needle` may be empty ("of one needle").
[[nodiscard]] std::string range_in_words(Unsure what, const std::string& needle = "");

}  // namespace deadshore::solver
