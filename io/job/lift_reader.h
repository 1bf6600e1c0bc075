#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/lifting.h"

#include <optional>
#include <vector>

namespace deadshore::io {

/// A [[lift.lifter]] and what it may lift, or a [[lift.stand]] and what holds it together.
struct LiftPieceTables {
  JobTable piece;
  JobTable inner;
};

/// [lift] with what is inside it.
struct LiftTables {
  JobTable lift;
  std::vector<LiftPieceTables> lifters;
  std::vector<LiftPieceTables> stands;
};

/// Throws InputError for keys that are not known, in any of them.
[[nodiscard]] std::optional<LiftTables> find_lift_tables(const JobTable& top);

/// How the beam goes up. Throws InputError where a value or a member is not known.
[[nodiscard]] solver::Lifting read_lifting(const LiftTables& tables, const MemberTables& members);

}  // namespace deadshore::io
