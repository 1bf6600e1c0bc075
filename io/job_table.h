#pragma once

#include "io/schema.h"
#include "io/units.h"
#include "mesh/plane.h"

#include <toml++/toml.h>

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// Where a job comes from, and on which line each key read so far has its value.
class JobSource {
 public:
  /// `units` must outlive the source.
  JobSource(std::string file, const Units& units) : file_(std::move(file)), units_(units) {}

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const Units& units() const { return units_; }

  void remember(const std::string& path, int line) { lines_.insert_or_assign(path, line); }

  /// The line of `path`, or of the closest table or entry around it; 1 where there is none.
  [[nodiscard]] int line_of(std::string path) const;

  /// Throws InputError for `path` at its line.
  [[noreturn]] void refuse(const std::string& path, const std::string& found,
                           const std::string& due) const;

 private:
  std::string file_;
  const Units& units_;
  std::map<std::string, int> lines_;
};

/// One table of a job, read by the schema: every getter takes a key of the table's schema, applies
/// its default and throws InputError where the value is not what the schema asks for.
class JobTable {
 public:
  /// Throws InputError for a key that the schema does not know. `table` and `source` must outlive
  /// this; `path` is the table's path in the job, "" for the file's top.
  JobTable(const toml::table& table, const SchemaTable& schema, std::string path,
           JobSource& source);

  [[nodiscard]] std::string path_of(std::string_view key) const;
  [[nodiscard]] bool has(std::string_view key) const;

  [[nodiscard]] std::string text(std::string_view key) const;
  [[nodiscard]] std::string choice(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> choices(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key) const;
  /// In internal units, as are the next two.
  [[nodiscard]] double quantity(std::string_view key) const;
  /// Empty where the string is "top".
  [[nodiscard]] std::optional<double> quantity_unless_top(std::string_view key) const;
  /// At least two points.
  [[nodiscard]] std::vector<mesh::Point> outline(std::string_view key) const;

  [[noreturn]] void refuse(std::string_view key, const std::string& found,
                           const std::string& due) const;
  /// What is written for `key`, as it is quoted in a message.
  [[nodiscard]] std::string written(std::string_view key) const;

 private:
  const SchemaKey& schema_key(std::string_view key) const;
  const toml::node* find(const SchemaKey& key) const;
  std::string string_of(const SchemaKey& key, const toml::node& node,
                        const std::string& path) const;
  std::string text_or_fallback(const SchemaKey& key) const;
  double to_quantity(const SchemaKey& key, const std::string& text, const std::string& path) const;
  double quantity_of(const SchemaKey& key, const toml::node& node, const std::string& path) const;
  void refuse_unknown_keys() const;

  const toml::table& table_;
  const SchemaTable& schema_;
  std::string path_;
  JobSource& source_;
};

/// A table and, for [name.NAME], its NAME.
struct NamedTable {
  std::string name;
  JobTable table;
};

/// The tables with this name in the job, in the order of the file (by NAME for [name.NAME]).
/// Throws InputError where they are not of the schema's form, or are missing but required.
[[nodiscard]] std::vector<NamedTable> find_tables(const toml::table& root, std::string_view name,
                                                  JobSource& source);

}  // namespace deadshore::io
