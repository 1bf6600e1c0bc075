#pragma once

#include "solver/job/job.h"
#include "solver/shoring/shore_spacing.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// For each part of a dead shore that fails, a sentence with the next thing that would pass: a
/// deeper head plate or a heavier section, a stronger prop, a larger sole, closer studs.
[[nodiscard]] std::vector<std::string> remedies(const Job& job, const ShoreCase& asked,
                                                double spacing, const ShoreAnswer& answer);

}  // namespace deadshore::solver
