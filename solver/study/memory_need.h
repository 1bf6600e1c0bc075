#pragma once

#include "solver/job/job.h"

namespace deadshore::solver {

/// Memory that `analyse` and the results of a job take at their most, bytes: an estimate to refuse
/// hopeless jobs by before anything is allocated. Grows with n log n of the unknowns, as the factor
/// of a nested dissection does (George 1973), and with the analyses kept.
///
/// Fitted to runs of walls of 34 and 29 m2 with elements of 200 to 12 mm; never below what they
/// took, and up to half as much again.
[[nodiscard]] double memory_needed(const Job& job);

/// The smallest element size, whole mm, at which the job needs no more than `memory` bytes; 0 where
/// there is none up to the wall's own length.
[[nodiscard]] double smallest_mesh_within(const Job& job, double memory);

}  // namespace deadshore::solver
