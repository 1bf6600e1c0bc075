#pragma once

#include "solver/shoring/shore_forces.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Limit of a head plate's deflection as a part of its span: common practice, no source.
inline constexpr double head_plate_limit = 1.0 / 200.0;

/// A dead shore on certain uprights, worked out.
struct ShoreAnswer {
  std::vector<Upright> uprights;
  ShoreForces service;        ///< unfactored
  ShoreForces factored;       ///< what strengths are set against
  std::vector<Check> checks;  ///< worst first, members and stage filled in
};

/// Works a dead shore out on certain uprights: every check of the head plate, its props or studs,
/// their sole and the ground. Loads on props and ground are unfactored, the others as the rules
/// say. Where the plate would tip off its uprights, that is the one check, never passed.
/// \param stage to print beside the checks
[[nodiscard]] ShoreAnswer work_out(const DeadShore& shore, std::vector<Upright> uprights,
                                   const RowLoads& loads, const CheckRules& rules,
                                   const std::string& stage);

/// Whether every check that a number covers passes: what is not verified is left out.
[[nodiscard]] bool passes_by_numbers(const std::vector<Check>& checks);

/// The worst check that a number covers; null where there is none.
[[nodiscard]] const Check* worst_by_numbers(const std::vector<Check>& checks);

}  // namespace deadshore::solver
