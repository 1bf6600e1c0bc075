#pragma once

#include "solver/model/results.h"

#include <string>

namespace deadshore::io::test {

/// A result with round numbers that no analysis made: a wall of 4 m x 3 m over a cut of 2 m, two
/// needles, one lintel, 500 mm elements, both analyses of one stage. Everything adds up to 100 kN.
/// For the writers, which must not care where numbers come from.
[[nodiscard]] solver::JobResult made_up_result();

/// The same where the cracked analysis finds no equilibrium for `reason`; its numbers are NaN.
[[nodiscard]] solver::JobResult made_up_result_that_falls(const std::string& reason);

}  // namespace deadshore::io::test
