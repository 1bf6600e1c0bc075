#pragma once

#include "io/job/job_table.h"
#include "io/job/job_wording.h"
#include "mesh/wall_shape.h"
#include "solver/job/field.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Reading a table of a job file into its struct.
namespace deadshore::io {

/// Reads the value of a field into its member. Nothing where it has none.
template <class Struct>
void read_field(const JobTable& table, const solver::Field<Struct>& field, Struct& values) {
  const Key& key = field.key;
  const auto number = [&] {
    return key.kind == KeyKind::number ? table.number(key.name) : table.quantity(key.name);
  };
  if (const auto* real = std::get_if<solver::Access<Struct, double>>(&field.member)) {
    real->to_change(values) = number();
  } else if (const auto* maybe =
                 std::get_if<solver::Access<Struct, std::optional<double>>>(&field.member)) {
    maybe->to_change(values) = number();
  } else if (const auto* whole = std::get_if<solver::Access<Struct, int>>(&field.member)) {
    whole->to_change(values) = table.whole_number(key.name);
  } else if (const auto* text = std::get_if<solver::Access<Struct, std::string>>(&field.member)) {
    text->to_change(values) = table.text(key.name);
  } else if (const auto* word = std::get_if<solver::WordAccess<Struct>>(&field.member)) {
    word->set(values, table.choice<int>(key.name));
  } else if (const auto* level = std::get_if<solver::LevelAccess<Struct>>(&field.member)) {
    const std::optional<double> given = table.quantity_unless_top(key.name);
    level->follows_top.to_change(values) = !given.has_value();
    if (given) level->level.to_change(values) = *given;
  }
}

/// `values` with what the table says. Fields that do not count by what was read before them are
/// left out; so are those without a member, which are the caller's to read.
/// \param fields of the table
/// \throws InputError where a key is missing that is required
template <class Struct>
[[nodiscard]] Struct read(const JobTable& table, const solver::Table<Struct>& fields,
                          Struct values) {
  for (const solver::Field<Struct>& field : fields.fields) {
    if (field.counts != nullptr && !field.counts(values)) continue;
    if (field.key.need == Need::required || table.has(field.key.name)) {
      read_field(table, field, values);
    }
  }
  return values;
}

/// The same from the struct's defaults.
template <class Struct>
[[nodiscard]] Struct read(const JobTable& table, const solver::Table<Struct>& fields) {
  return read(table, fields, fields.defaults());
}

/// The same of what lies along the wall, from one end to the other unless the table says where; on
/// the wall's highest point where it follows the top.
template <class Struct>
[[nodiscard]] Struct read_on_wall(const JobTable& table, const solver::Table<Struct>& fields,
                                  const mesh::WallShape& wall) {
  Struct values = fields.defaults();
  values.x = {0.0, wall.length};
  values = read(table, fields, std::move(values));
  if constexpr (requires { values.follows_top; }) {
    if (values.follows_top) values.level = wall.height();
  }
  return values;
}

/// The tables inside `around` that are of these fields, in the order of the file.
template <class Struct>
[[nodiscard]] std::vector<NamedTable> tables_of(const JobTable& around,
                                                const solver::Table<Struct>& fields) {
  return around.tables(fields.name.substr(fields.name.find_last_of('.') + 1));
}

/// What each of them says; none where there is none.
template <class Struct>
[[nodiscard]] std::vector<Struct> read_list(const JobTable& around,
                                            const solver::Table<Struct>& fields) {
  std::vector<Struct> all;
  for (const NamedTable& entry : tables_of(around, fields)) {
    all.push_back(read(entry.table, fields));
  }
  return all;
}

/// What the only one says, a [name]; the struct's defaults where there is none.
template <class Struct>
[[nodiscard]] Struct read_single(const JobTable& around, const solver::Table<Struct>& fields) {
  const std::vector<Struct> all = read_list(around, fields);
  return all.empty() ? fields.defaults() : all.front();
}

/// The place among `entries`, which are `what` in words, of the one that the table names at `key`.
/// \throws InputError where there is none
template <class Entries>
[[nodiscard]] std::size_t place_of_named(const JobTable& table, std::string_view key,
                                         const Entries& entries, std::string_view what) {
  const std::string name = table.text(key);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (entries[i].name == name) return i;
  }
  table.refuse(key, in_quotes(name), "due: the name of one of the " + std::string(what));
}

}  // namespace deadshore::io
