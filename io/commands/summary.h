#pragma once

#include "solver/model/results.h"

#include <span>
#include <string>

namespace deadshore::io {

/// What a run found, as a table for a terminal of 80 columns: the load on each needle by hand and
/// by finite elements, the bases, the settlement, the worst checks, and loudly what has nothing to
/// hold it up and what fails. Of the last stage; loads in kN.
[[nodiscard]] std::string summary_of(const solver::JobResult& result);

/// Whether every analysis stands, with no masonry loose.
[[nodiscard]] bool is_held_up(const solver::JobResult& result);

/// Seconds of each phase, their sum and the peak of resident memory.
[[nodiscard]] std::string timings_of(std::span<const solver::PhaseTime> times,
                                     double peak_memory_in_mib);

}  // namespace deadshore::io
