#pragma once

#include "solver/job/job.h"

namespace deadshore::solver {

/// An invented wall of 6.0 x 5.2 m with a 4.8 m cut, two windows, two line loads, a point load and
/// four needles; nothing about it is symmetric.
[[nodiscard]] Job invented_wall();

/// The same wall seen from the other side.
[[nodiscard]] Job mirrored(const Job& job);

}  // namespace deadshore::solver
