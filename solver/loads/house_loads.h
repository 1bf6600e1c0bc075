#pragma once

#include "solver/job/faults.h"
#include "solver/job/job.h"

#include <vector>

/// A job with what its house brings down onto the wall.
namespace deadshore::solver {

/// The job with everything that `job.house` brings down (take_down.h) among its line and point
/// loads, marked `from_house`, behind those given, in the order of the take-down; what stands on
/// the floor of a dead shore goes along with that shore.
///
/// Loads marked `from_house` are made anew each time, so that completing a job that is complete
/// changes nothing: no load can come onto the wall twice.
/// \pre the house has no faults (find_house_faults)
[[nodiscard]] Job with_house_loads(Job job);

/// Everything that makes no sense in a job: first in its house, then in the job with the loads that
/// the house brings down (find_complete_job_faults). Faults of such a load have the key of its
/// place among the loads of `with_house_loads(job)`. Empty for a sound job.
[[nodiscard]] std::vector<Fault> find_faults(const Job& job);

}  // namespace deadshore::solver
