#pragma once

#include "io/job/units.h"

#include <span>
#include <string>
#include <string_view>

/// The job file's schema as data: it drives reading, refusals, defaults and the reference page.
namespace deadshore::io {

enum class KeyKind {
  text,             ///< a string that is not empty
  number,           ///< a number without dimension
  quantity,         ///< a string with a number and a unit of the key's dimension
  quantity_or_top,  ///< the same, or the string "top"
  choice,           ///< one of the key's choices
  choices,          ///< a list of them, each once
  texts,            ///< a list of texts
  quantities,       ///< a list of quantities
  outline,          ///< a list of points, each a list of two lengths
  stretches,        ///< a list of stretches, each from one length to another
  flag,             ///< true or false
  layers,           ///< a list of what a floor, roof or wall is built up of
};

/// One key of a table.
struct SchemaKey {
  std::string_view name = {};
  KeyKind kind = KeyKind::text;
  Dimension dimension = Dimension::length;  ///< of quantities
  std::string_view usual_unit = {};         ///< of quantities
  std::string_view example = {};            ///< as written between the quotes
  bool required = false;
  /// The default as written between the quotes (all choices, separated by ", ", for a list); empty
  /// for required keys and where `meaning` says what happens without.
  std::string_view fallback = {};
  std::string_view choices = {};  ///< separated by ", "
  std::string_view range = {};    ///< in words; empty where any value will do
  std::string_view meaning = {};  ///< one sentence
};

enum class TableForm {
  root,    ///< keys above the first table
  single,  ///< [name]
  named,   ///< [name.NAME], once for each NAME
  list,    ///< [[name]], once for each entry
};

struct SchemaTable {
  std::string_view name = {};  ///< with those of the tables around it: "needle_frame.prop"
  TableForm form = TableForm::single;
  bool required = false;
  std::string_view meaning = {};  ///< one sentence
  std::span<const SchemaKey> keys = {};
};

/// All tables, the keys of the file's top first.
[[nodiscard]] std::span<const SchemaTable> job_schema();

/// The name of the table around a table ("" for the file's top), and its own without that.
[[nodiscard]] std::string_view parent_of(const SchemaTable& table);
[[nodiscard]] std::string_view own_name(const SchemaTable& table);

/// The table with this name ("" for the file's top). Throws std::out_of_range where there is none.
[[nodiscard]] const SchemaTable& schema_table(std::string_view name);

/// The key with this name, or null.
[[nodiscard]] const SchemaKey* find_key(const SchemaTable& table, std::string_view name);

/// The name among `known` with the fewest letters to change, add, drop or swap; the first of
/// equals. `known` must not be empty.
[[nodiscard]] std::string_view nearest_name(std::string_view name,
                                            std::span<const std::string_view> known);

}  // namespace deadshore::io
