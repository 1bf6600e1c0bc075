#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/job.h"

#include <vector>

namespace deadshore::io {

/// A [beam] with its padstones and packing. Like the next two of the tables' members.
/// \throws InputError where a member is not known or cannot be made, or keys do not go together
[[nodiscard]] solver::PermanentBeam read_beam(const JobTable& table, const MemberTables& members);

/// A [[dead_shore]] with what it is made of.
/// \param loads the job's, with those of its house: the shore carries one of them
[[nodiscard]] solver::DeadShore read_dead_shore(const JobTable& table,
                                                const std::vector<solver::LineLoad>& loads,
                                                const MemberTables& members);

/// The [lift] with its lifters and stands.
[[nodiscard]] solver::Lifting read_lifting(const JobTable& table, const MemberTables& members);

}  // namespace deadshore::io
