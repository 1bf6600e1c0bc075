#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/needle_frame.h"

namespace deadshore::io {

/// A [needle_frame.NAME] with its props, of the tables' members.
/// \throws InputError where a member is not known or cannot be made
[[nodiscard]] solver::NeedleFrame read_needle_frame(const NamedTable& entry,
                                                    const MemberTables& members);

}  // namespace deadshore::io
