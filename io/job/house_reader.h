#pragma once

#include "io/job/job_table.h"
#include "io/tables/weight_tables.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// Whether a job describes a house by its parts.
[[nodiscard]] bool has_house(const JobTable& top);

/// Reads the house of a job that has its wall and its loads, weighs it by the tables, and puts what
/// it brings down among the job's loads (solver::with_house_loads); lofts come after the floors.
/// Tells `source` where faults of its parts and of its loads are written. \throws InputError for a
/// fault of the house, a name that two loads have, and, with the nearest
///   known name, for a material or a use that no table has
void read_house(const JobTable& top, const WeightTables& weights, solver::Job& job,
                JobSource& source);

}  // namespace deadshore::io
