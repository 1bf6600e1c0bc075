#pragma once

#include "solver/result/sensitivity.h"

#include <string>

namespace deadshore::solver {

/// The range that a bracket covers: "E of the masonry x 0.5 to 2", "1 mm lost in the packing of
/// N2".
[[nodiscard]] std::string range_in_words(const Job& job, const ReactionBracket& bracket);

/// The same of anything that is changed; without a needle "of one needle".
[[nodiscard]] std::string range_in_words(const Job& job, Unsure what,
                                         std::optional<NeedleId> needle);

}  // namespace deadshore::solver
