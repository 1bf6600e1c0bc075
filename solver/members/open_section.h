#pragma once

#include "solver/members/steel_section.h"

namespace deadshore::solver {

/// Properties of an I section and of a channel with parallel flanges, without mass and radii of
/// gyration.
[[nodiscard]] SteelProperties i_section_properties(const SteelSection& section);
[[nodiscard]] SteelProperties channel_properties(const SteelSection& section);

}  // namespace deadshore::solver
