#pragma once

#include "solver/job/job.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

[[nodiscard]] NeedleSite site_of(const Job& job);

/// Gives every needle with a frame the stiffness that the frame has under `loads` (N, in the job's
/// order). Returns the largest relative change of a stiffness.
double update_stiffness(Job& job, const std::vector<double>& loads);

/// Frames of the job's needles under the largest load that the hand method or any analysis gives
/// each, with every check and advice (for the most loaded needle of each frame). Does nothing where
/// an analysis does not stand: there is then no load to design for.
void design_needles(const Job& job, JobResult& result);

}  // namespace deadshore::solver
