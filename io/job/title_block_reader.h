#pragma once

#include "io/job/job_table.h"
#include "solver/job/title_block.h"

namespace deadshore::io {

/// [title_block], which may be left out, as may each of its keys. Throws InputError.
[[nodiscard]] solver::TitleBlock read_title_block(const JobTable& table);

}  // namespace deadshore::io
