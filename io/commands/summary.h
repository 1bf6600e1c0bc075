#pragma once

#include "solver/checks/check.h"
#include "solver/result/results.h"

#include <span>
#include <string>
namespace deadshore::io {

/// What a run found, as a table for a terminal of 80 columns: the load on each needle by hand and
/// by finite elements, the bases, the settlement, the worst checks, and loudly what has nothing to
/// hold it up and what fails. Where the work is followed stage by stage, first a row for each
/// stage, and the loads of the stage that the hand method is compared with. Loads in kN.
[[nodiscard]] std::string summary_of(const solver::JobResult& result);

/// Seconds of each phase, their sum and the peak of resident memory.
[[nodiscard]] std::string timings_of(std::span<const solver::PhaseTime> times,
                                     double peak_memory_in_mib);

/// The worst checks as a table for a terminal of 80 columns. `checks` are worst first, here and
/// below; empty where there are none.
[[nodiscard]] std::string check_table(std::span<const solver::Check> checks);

/// Loudly, those that fail, then those that could not be made; past six of a kind, how many more.
[[nodiscard]] std::string check_alarms(std::span<const solver::Check> checks);

/// The table and the alarms after it.
[[nodiscard]] std::string summary_of(std::span<const solver::Check> checks);

}  // namespace deadshore::io
