#pragma once

#include "solver/job/fault_list.h"
#include "solver/job/job.h"

namespace deadshore::solver {

/// Faults of the permanent beam, the dead shores and the order of work: unknown names, a needle
/// released before it is fitted, a beam packed before it is placed, a beam placed before the cut is
/// out, days that fall, no stage that cuts, and so on.
void find_stage_faults(const Job& job, FaultList& faults);

}  // namespace deadshore::solver
