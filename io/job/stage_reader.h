#pragma once

#include "io/job/job_table.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// Adds the stages of the tables to a job that has its needles and dead shores, and tells `source`
/// where each operation is written. Throws InputError for an operation that cannot be read.
void read_stages(const std::vector<NamedTable>& tables, solver::Job& job, JobSource& source);

}  // namespace deadshore::io
