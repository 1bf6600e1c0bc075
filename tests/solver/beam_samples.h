#pragma once

#include "solver/beam/beam_checks.h"
#include "solver/job/job.h"
#include "solver/result/results.h"

#include <string>
#include <vector>

namespace deadshore::solver::testing {

/// An invented wall of 6.0 x 5.0 m, 215 mm thick, with a 3.0 m cut in its middle and UB 254x146x31
/// in S275 under it on 225 mm bearings. Masonry, steel and padstones weigh nothing, and there is no
/// load: a test brings its own.
[[nodiscard]] Job weightless_beam_job();

/// The same with weight of masonry, steel and padstones and a floor of 4 + 3 kN/m over all.
[[nodiscard]] Job beam_job();

/// A staged analysis with the beam in place, moment and shear at one station.
[[nodiscard]] PanelResult with_beam(MasonryModel model, double moment, double shear);

/// The job's result with these analyses at a stage "packed" that places the beam.
[[nodiscard]] JobResult staged_result(const Job& job, std::vector<PanelResult> analyses);

/// All rows of a member's check: by hand and staged.
[[nodiscard]] std::vector<Check> rows_of(const std::vector<Check>& checks,
                                         const std::string& member, const std::string& check);

/// The one row of a member's check at a stage. \throws std::logic_error unless there is one
[[nodiscard]] Check row_of(const std::vector<Check>& checks, const std::string& member,
                           const std::string& check, const std::string& stage = "hand, full load");

}  // namespace deadshore::solver::testing
