#pragma once

#include "io/job/field_reader.h"
#include "io/job/job_wording.h"
#include "io/tables/member_tables.h"
#include "solver/job/needle_frame.h"
#include "solver/members/steel_member.h"

#include <fmt/format.h>

#include <string>
#include <string_view>

/// Members that a job names. Every function throws InputError, with the nearest known name, where
/// no table has the one that is asked for.
namespace deadshore::io {

/// What `find` has under `name`, which the job has at `key`.
/// \param find throws UnknownMember where it has nothing
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

/// `section` of the table's `grade`.
/// \throws InputError for `key` where it cannot be made
[[nodiscard]] solver::SteelMember read_steel(const JobTable& table, std::string_view key,
                                             const solver::SteelSection& section);

/// The section that the table names at `section`, of its `grade`.
[[nodiscard]] solver::SteelMember read_steel_of_tables(const JobTable& table,
                                                       const MemberTables& members);

/// Timber of the strength class that the table names at `key`, for its `duration` and
/// `service_class`; without a section yet.
[[nodiscard]] solver::TimberMember read_timber(const JobTable& table, std::string_view key,
                                               const MemberTables& members);
[[nodiscard]] solver::TimberClass read_strength_class(const JobTable& table, std::string_view key,
                                                      const MemberTables& members);

/// The prop that the table names at `prop`.
[[nodiscard]] solver::Prop read_prop(const JobTable& table, const MemberTables& members);

/// The ground of the tables, or where `kind`, the key that is given, is not "ground" the one given
/// in the job itself with what is known of it so far.
[[nodiscard]] solver::Ground read_kind_of_ground(const JobTable& table, std::string_view kind,
                                                 const MemberTables& members, solver::Ground given);

/// Fills in what the sole stands on, for a footing whose own keys are read.
void read_ground(const JobTable& table, const MemberTables& members, solver::Footing& footing);

/// Loads by what they depend on: the rows of a list `load` and of the list `by`.
template <class Capacity>
[[nodiscard]] Capacity read_capacity(const JobTable& table, const solver::Table<Capacity>& fields,
                                     std::string_view by) {
  Capacity capacity = read(table, fields);
  const std::vector<double> places = table.quantities(by);
  const std::vector<double> loads = table.quantities("load");
  if (loads.size() != places.size()) {
    table.refuse("load", fmt::format("a list of {}", loads.size()),
                 fmt::format("one for each of the {} {}s is due", places.size(), by));
  }
  for (std::size_t i = 0; i < loads.size(); ++i) capacity.rows.push_back({places[i], loads[i]});
  return capacity;
}

}  // namespace deadshore::io
