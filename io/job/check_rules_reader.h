#pragma once

#include "io/job/job_table.h"
#include "solver/job/job.h"

namespace deadshore::io {

/// The rules of [checks]. Throws InputError.
[[nodiscard]] solver::CheckRules read_check_rules(const JobTable& table);

}  // namespace deadshore::io
