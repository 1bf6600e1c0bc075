#pragma once

#include "solver/result/results.h"

#include <string>

namespace deadshore::io::test {

/// A result with round numbers that no analysis made: a wall of 4 m x 3 m over a cut of 2 m, two
/// needles, one lintel, 500 mm elements, both analyses of one stage. Everything adds up to 100 kN.
/// For the writers, which must not care where numbers come from.
[[nodiscard]] solver::JobResult made_up_result();

/// Works out again what follows from the job and the stages of a result: their states and what the
/// marks on the wall should move.
void work_out_again(solver::JobResult& result);

/// What its N1 depends on with cracked masonry: E, and most of all the packing of N2.
[[nodiscard]] solver::Sensitivity made_up_sensitivity();

/// The same where the cracked analysis finds no equilibrium for `reason`; its numbers are NaN.
[[nodiscard]] solver::JobResult made_up_result_that_falls(const std::string& reason);

/// The same wall followed through five stages, with a permanent beam and the floor on a dead shore
/// whose joist ends catch the wall: as built, needles in, cut, packed, finished. Needles, bases and
/// joists add up to the load of every stage: 115, 95, 80, 81 and 101 kN.
[[nodiscard]] solver::JobResult made_up_staged_result();

/// The same where the cut finds no equilibrium under cracked masonry: nothing follows it.
[[nodiscard]] solver::JobResult made_up_staged_result_that_falls(const std::string& reason);

}  // namespace deadshore::io::test
