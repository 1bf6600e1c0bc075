#pragma once

#include "io/job/job_table.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// [removal], which may be left out. Throws InputError.
[[nodiscard]] solver::RemovalOptions read_removal(const JobTable& table);

}  // namespace deadshore::io
