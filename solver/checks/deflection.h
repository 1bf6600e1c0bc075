#pragma once

#include "solver/checks/check.h"

namespace deadshore::solver {

/// Limits of deflection as a part of the span.
inline constexpr double brittle_finish_limit = 1.0 / 360.0;  ///< UK NA to EN 1993-1-1, from memory
inline constexpr double masonry_limit = 1.0 / 600.0;  ///< under plain masonry; TMS 402, from memory

/// Deflection under unfactored loads against a part of the span, mm.
[[nodiscard]] Check check_deflection(double deflection, double span, double limit = masonry_limit);

}  // namespace deadshore::solver
