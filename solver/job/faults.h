#pragma once

#include "solver/job/job.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Something in a job that makes no sense: which entry, what was found, what was due. A job's
/// reader makes a message of it, with the line of the file.
struct Fault {
  std::string key;    ///< path in the job, e.g. "opening[1].left" (counted from 0)
  std::string found;  ///< e.g. "6.2 m, past the wall's right end at 5.6 m"
  std::string due;    ///< e.g. "an opening inside the wall"
};

/// Checks the numbers and geometry of a job whose loads are all there (`with_house_loads`): finite
/// and positive sizes, openings inside the wall (one may reach its top edge), openings and cut that
/// do not run into each other, masonry over every needle, needles inside the cut and clear of each
/// other, loads on masonry, lintels over their openings, needle frames whose props can hold them up
/// and reach, a permanent beam that fits and bears on masonry, an order of work that can be done.
/// Empty for a sound job; else in the order of the job's parts.
///
/// `find_faults` (solver/loads/house_loads.h) brings the loads down and asks this.
[[nodiscard]] std::vector<Fault> find_complete_job_faults(const Job& job);

}  // namespace deadshore::solver
