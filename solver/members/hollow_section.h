#pragma once

#include "solver/members/steel_section.h"

namespace deadshore::solver {

/// Properties of hot-finished hollow sections by EN 10210-2 annex B (corners 1.5 t outside and 1.0
/// t inside), without mass and radii of gyration.
[[nodiscard]] SteelProperties rectangular_hollow_properties(const SteelSection& section);
[[nodiscard]] SteelProperties circular_hollow_properties(const SteelSection& section);

}  // namespace deadshore::solver
