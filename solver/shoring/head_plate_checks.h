#pragma once

#include "solver/shoring/shore_forces.h"

#include <span>
#include <vector>

namespace deadshore::solver {

/// Strength of a head plate of timber or steel: bending, shear, the bearing of joists on it and its
/// own bearing on the worst upright. Nothing holds it sideways between uprights.
/// \param factored what strengths are set against, as `factored_forces`
[[nodiscard]] std::vector<Check> check_head_plate(const ShoreFrame& frame,
                                                  std::span<const Upright> uprights,
                                                  const ShoreForces& factored,
                                                  const CheckRules& rules);

}  // namespace deadshore::solver
