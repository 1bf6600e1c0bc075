#pragma once

#include "solver/checks/check.h"

#include <span>
#include <string>

namespace deadshore::io {

/// The worst checks as a table for a terminal of 80 columns. `checks` are worst first, here and
/// below; empty where there are none.
[[nodiscard]] std::string check_table(std::span<const solver::Check> checks);

/// Loudly, those that fail, then those that could not be made; past six of a kind, how many more.
[[nodiscard]] std::string check_alarms(std::span<const solver::Check> checks);

/// The table and the alarms after it.
[[nodiscard]] std::string summary_of(std::span<const solver::Check> checks);

}  // namespace deadshore::io
