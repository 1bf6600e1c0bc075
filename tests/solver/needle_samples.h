#pragma once

#include "solver/job/needle_frame.h"

namespace deadshore::solver {

/// An invented needle: UC 152x152x23 on a B35 prop 600 mm from each face of the wall, soles on
/// stiff clay.
[[nodiscard]] NeedleFrame sample_needle();

}  // namespace deadshore::solver
