#pragma once

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

}  // namespace deadshore::io
