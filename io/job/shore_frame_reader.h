#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/permanent_works.h"

#include <optional>
#include <vector>

namespace deadshore::io {

/// A [[dead_shore]] and the [dead_shore.frame] that is inside it, if there is one.
struct ShoreTables {
  JobTable shore;
  std::optional<JobTable> frame;
};

/// Throws InputError for keys that are not known, in any of them.
[[nodiscard]] std::vector<ShoreTables> find_shore_tables(const JobTable& top);

[[nodiscard]] bool any_frame_in(const std::vector<ShoreTables>& shores);

/// What a dead shore is made of, of the tables' members. Throws InputError where a member is not
/// known or cannot be made, or keys do not go together.
[[nodiscard]] solver::ShoreFrame read_shore_frame(const ShoreTables& tables,
                                                  const MemberTables& members);

/// The same for each of the shores that has one.
void read_shore_frames(const std::vector<ShoreTables>& tables, const MemberTables& members,
                       std::vector<solver::DeadShore>& shores);

}  // namespace deadshore::io
