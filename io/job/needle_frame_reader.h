#pragma once

#include "io/job/job_table.h"
#include "io/tables/member_tables.h"
#include "solver/job/needle_frame.h"

#include <optional>
#include <string>
#include <vector>

namespace deadshore::io {

/// A [[needle_frame.NAME.prop]] and its supplier's safe loads.
struct PropTables {
  JobTable prop;
  std::optional<JobTable> capacity;
};

/// A [needle_frame.NAME] with what is inside it.
struct FrameTables {
  std::string name;
  JobTable frame;
  std::vector<PropTables> props;
};

/// Throws InputError for keys that are not known, in any of them.
[[nodiscard]] std::vector<FrameTables> find_frame_tables(const JobTable& top);

/// A frame of the tables' members. Throws InputError where a member is not known or cannot be made.
[[nodiscard]] solver::NeedleFrame read_needle_frame(const FrameTables& tables,
                                                    const MemberTables& members);

}  // namespace deadshore::io
