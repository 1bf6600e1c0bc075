#pragma once

#include "io/job/job_reader.h"
#include "solver/result/results.h"

#include <string>

namespace deadshore::io {

/// The text of results.json: forces in kN, lengths in mm, stresses in N/mm2, load factor 1.0.
///
/// An analysis that finds no equilibrium has "no_equilibrium" with the reason instead of "needles",
/// "base" and "max_settlement". A check that could not be made, or has no capacity, has the
/// utilisation null; it never passes. What was not found out is left out, never written as NaN. Run
/// times are left out too, so that the same job gives the same bytes; numbers have ten digits.
///
/// "input" has the name of the job file and the SHA-256 of its bytes.
///
/// \throws std::domain_error if a number that must be there is not finite.
[[nodiscard]] std::string results_json(const solver::JobResult& result, const JobFile& file);

}  // namespace deadshore::io
