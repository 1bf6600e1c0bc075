#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/job.h"

#include <optional>
#include <vector>

namespace deadshore::io {

/// [beam] with what is inside it.
struct BeamTables {
  JobTable beam;
  JobTable padstone;
  JobTable packing;
};

/// Throws InputError for keys that are not known, in any of them, and where there is no padstone.
[[nodiscard]] std::optional<BeamTables> find_beam_tables(const JobTable& top);

/// A beam of the tables' sections. Throws InputError where its section is not known.
[[nodiscard]] solver::PermanentBeam read_beam(const BeamTables& tables,
                                              const MemberTables& members);

/// \param loads the job's, with those of its house: the shore carries one of them. Throws
/// InputError
///   where there is none of that name
[[nodiscard]] solver::DeadShore read_dead_shore(const JobTable& table,
                                                const std::vector<solver::LineLoad>& loads);

}  // namespace deadshore::io
