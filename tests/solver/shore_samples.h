#pragma once

#include "solver/job/job.h"

namespace deadshore::solver::testing {

/// EN 338.
[[nodiscard]] TimberClass timber_c16();
[[nodiscard]] TimberClass timber_c24();

/// An invented wall of 6.0 x 5.0 m with a floor of 2 + 3 kN/m over all of it, whose joists span 4.0
/// m at 400 mm, on a dead shore 800 mm inside: a row from x = 1.0 m to 5.0 m of B30 props at
/// places to be proposed, under a head plate of 100 x 150 mm in C24, on a sole of 225 x 75 mm on
/// firm ground (300 kN/m2).
[[nodiscard]] Job shored_job();

/// The same with studs of 47 x 100 mm in C16 at 400 mm with noggings, under a head plate and on a
/// sole as wide.
[[nodiscard]] Job stud_wall_job();

}  // namespace deadshore::solver::testing
