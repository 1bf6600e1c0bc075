#pragma once

#include "solver/job/job.h"
#include "solver/result/results.h"

#include <functional>
#include <string_view>

namespace deadshore::solver {

/// Told what is being worked on and how far the whole job is, 0 to 1.
using Progress = std::function<void(std::string_view phase, double fraction)>;

/// Does the whole of a job: the hand method, the finite elements under each masonry model asked
/// for, the same on elements twice as large (for the mesh effect), and the comparison.
///
/// Needles that have frames get their stiffness from them; wall and frames are solved in turn until
/// they agree, and every member is checked under the largest load that any method gives it.
/// What the house brings down comes onto the wall here; the result's job has it among its loads.
/// Every stage of the work is solved under each masonry model that is asked for, and judged by
/// limit analysis beside that; where one leaves a wall without equilibrium the sequence ends with
/// it, since nothing can be built on a wall that falls. Everything at once is a job of one stage:
/// the wall as cut with the needles in place. Characteristic loads, load factor 1.0. \pre the job
/// has no faults (find_faults of solver/loads/house_loads.h) \throws mesh::GeometryError where the
/// wall cannot be meshed \throws SolveError where an analysis does not converge, or is not in
/// equilibrium to 1e-8
[[nodiscard]] JobResult analyse(const Job& job, const Progress& progress = {});

}  // namespace deadshore::solver
