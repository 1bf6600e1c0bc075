#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "io/tables/weight_tables.h"
#include "solver/job/job.h"
#include "solver/job/needle_frame.h"

#include <vector>
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

/// A [needle_frame.NAME] with its props, of the tables' members.
/// \throws InputError where a member is not known or cannot be made
[[nodiscard]] solver::NeedleFrame read_needle_frame(const NamedTable& entry,
                                                    const MemberTables& members);

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

/// Adds the stages of the tables to a job that has its needles and dead shores, and tells `source`
/// where each operation is written. Throws InputError for an operation that cannot be read.
void read_stages(const std::vector<NamedTable>& tables, solver::Job& job, JobSource& source);

}  // namespace deadshore::io
