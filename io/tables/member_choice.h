#pragma once

#include "io/job/job_table.h"
#include "io/job/job_wording.h"
#include "io/tables/member_tables.h"
#include "solver/job/needle_frame.h"
#include "solver/members/steel_member.h"

#include <fmt/format.h>

#include <string>
#include <string_view>

/// Members that a job names.
namespace deadshore::io {

/// What `find` has under `name`. Throws InputError for `key`, with the nearest known name, where it
/// throws UnknownMember.
template <class Find>
auto known_member(const JobTable& table, std::string_view key, const std::string& name, Find find) {
  try {
    return find(name);
  } catch (const UnknownMember& error) {
    table.refuse(key, in_quotes(name) + ", which no table has",
                 error.nearest().empty()
                     ? "none is known"
                     : fmt::format("the nearest known one is {}", in_quotes(error.nearest())));
  }
}

/// The same of the name at `key`.
template <class Find>
auto known_member(const JobTable& table, std::string_view key, Find find) {
  return known_member(table, key, table.text(key), find);
}

/// `section` of the table's `grade`. Throws InputError for `key` where it cannot be made.
[[nodiscard]] solver::SteelMember read_steel(const JobTable& table, std::string_view key,
                                             const solver::SteelSection& section);

/// The section that the table names at `section`, of its `grade`.
[[nodiscard]] solver::SteelMember read_steel_of_tables(const JobTable& table,
                                                       const MemberTables& members);

/// The table's `duration` and `service_class` of timber.
[[nodiscard]] solver::LoadDuration read_duration(const JobTable& table);
[[nodiscard]] solver::ServiceClass read_service_class(const JobTable& table);

/// The strength class of timber that the table names at `key`.
[[nodiscard]] solver::TimberClass read_strength_class(const JobTable& table, std::string_view key,
                                                      const MemberTables& members);

/// Fills in what the sole stands on: `ground`, `ground_bearing` or `suspended_floor`, and
/// `subgrade_modulus`.
void read_ground(const JobTable& table, const MemberTables& members, solver::Footing& footing);

}  // namespace deadshore::io
