#pragma once

#include "solver/checks/check.h"

#include <span>
#include <string>

namespace deadshore::io {

/// The worst checks as a table for a terminal of 80 columns, and loudly every one that fails or
/// could not be made. `checks` are worst first; empty where there are none.
[[nodiscard]] std::string summary_of(std::span<const solver::Check> checks);

/// Whether every check is made and passes.
[[nodiscard]] bool all_pass(std::span<const solver::Check> checks);

}  // namespace deadshore::io
