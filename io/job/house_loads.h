#pragma once

#include "io/job/house_reader.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// Refuses a name that two loads have, whether given or brought down by the house. Throws
/// InputError at the later one, with the path of the other.
void refuse_shared_names(const JobTable& top, const HouseTables& house, const JobSource& source);

/// Takes `job.house` down and puts what it comes to among the job's loads; dead shores under a
/// floor get what stands on it. Tells `source` which table each load comes from. Throws InputError
/// for a fault of the house, and for a dead shore under something that stands on a floor.
void bring_down_house(const HouseTables& house, JobSource& source, solver::Job& job);

}  // namespace deadshore::io
