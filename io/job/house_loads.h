#pragma once

#include "io/job/house_reader.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// Refuses a name that two loads have, whether given or brought down by the house. Throws
/// InputError at the later one, with the path of the other.
void refuse_shared_names(const JobTable& top, const HouseTables& house, const JobSource& source);

/// Puts what `job.house` comes to among the job's loads (solver::with_house_loads) and tells
/// `source` which table each of them comes from. Throws InputError for a fault of the house.
/// \pre the wall has a length
void bring_down_house(const HouseTables& house, JobSource& source, solver::Job& job);

}  // namespace deadshore::io
