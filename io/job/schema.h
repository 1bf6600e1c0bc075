#pragma once

#include "solver/job/field.h"

#include <span>
#include <string_view>
#include <vector>

/// The job file's keys for whoever does not care what they are read into: messages, the reference
/// page, the JSON schema, the starter job. All of it is said in solver/job/*_fields.h.
namespace deadshore::io {

using solver::Dimension;
using solver::Key;
using solver::KeyKind;
using solver::Need;
using solver::TableForm;

/// A table and its keys. Every default is in `Key::fallback`, and a key that is required in some
/// tables only is optional.
struct SchemaTable {
  std::string_view name = {};  ///< with those of the tables around it: "needle_frame.prop"
  TableForm form = TableForm::single;
  bool required = false;
  std::string_view meaning = {};  ///< one sentence
  std::vector<Key> keys = {};
};

/// All tables, the keys of the file's top first.
[[nodiscard]] std::span<const SchemaTable> job_schema();

/// The name of the table around a table ("" for the file's top), and its own without that.
[[nodiscard]] std::string_view parent_of(const SchemaTable& table);
[[nodiscard]] std::string_view own_name(const SchemaTable& table);

/// The tables right inside a table, in the schema's order.
[[nodiscard]] std::vector<const SchemaTable*> tables_in(const SchemaTable& table);

/// The table with this name ("" for the file's top).
/// \throws std::out_of_range where there is none
[[nodiscard]] const SchemaTable& schema_table(std::string_view name);

/// The key with this name, or null.
[[nodiscard]] const Key* find_key(const SchemaTable& table, std::string_view name);

/// The name among `known` with the fewest letters to change, add, drop or swap; the first of
/// equals.
/// \pre `known` is not empty
[[nodiscard]] std::string_view nearest_name(std::string_view name,
                                            std::span<const std::string_view> known);

}  // namespace deadshore::io
