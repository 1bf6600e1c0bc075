#pragma once

#include "solver/study/analyse.h"

namespace deadshore::solver {

/// `analyse` for a job whose work is followed stage by stage.
///
/// Every stage is solved under each masonry model that is asked for; where one leaves a wall
/// without equilibrium the sequence ends with it, since nothing can be built on a wall that falls.
/// Needles with frames keep one stiffness through all stages: that under the largest load of any
/// stage, found on elements twice as large. Limit analysis judges each stage beside that.
[[nodiscard]] JobResult analyse_staged(const Job& job, const Progress& progress);

}  // namespace deadshore::solver
