#pragma once

#include "solver/job/fault_list.h"
#include "solver/job/job.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Faults of the permanent beam, the dead shores and the order of work: a needle released before it
/// is fitted, a beam packed before it is placed, a beam placed before the cut is
/// out, days that fall, no stage that cuts, and so on.
void find_stage_faults(const Job& job, FaultList& faults);

/// Names of what may be taken out: "cut", "pockets" where there is a beam, the lintels in the cut.
[[nodiscard]] std::vector<std::string> removable_names(const Job& job);

/// `one of "N1", "N2"`, or a single name in quotes; a long list is cut short.
[[nodiscard]] std::string one_of(const std::vector<std::string>& names);

}  // namespace deadshore::solver
