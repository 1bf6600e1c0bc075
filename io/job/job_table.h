#pragma once

#include "io/job/schema.h"
#include "io/job/units.h"
#include "mesh/plane.h"

#include <toml++/toml.h>

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
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

  /// Says that `path` of a solver::Fault is written at `in_file`: "masonry" at "masonry.brick".
  void place(const std::string& path, const std::string& in_file) {
    places_.insert_or_assign(path, in_file);
  }

  /// Where the file has what a fault's key points at, by the longest part of it that was placed.
  [[nodiscard]] std::string path_in_file(const std::string& key) const;

  /// The line of `path`, or of the closest table or entry around it; 1 where there is none.
  [[nodiscard]] int line_of(std::string path) const;

  /// Throws InputError for `path` at its line.
  [[noreturn]] void refuse(const std::string& path, const std::string& found,
                           const std::string& due) const;

 private:
  std::string file_;
  const Units& units_;
  std::map<std::string, int> lines_;
  std::map<std::string, std::string> places_;
};

/// The line of a node in its file, from 1.
[[nodiscard]] int line_of_node(const toml::node& node);

struct NamedTable;

/// A layer of a build-up as it is written: one or none of the weights, and a thickness where there
/// is no weight by area; N and mm.
struct WrittenLayer {
  std::string material;
  std::optional<double> thickness = {};
  std::optional<double> area_weight = {};  ///< N/mm2
  std::optional<double> unit_weight = {};  ///< N/mm3
  std::string path = {};                   ///< in the job: "floor[0].build_up[1]"
};

/// One table of a job, read by the schema: every getter takes a key of the table's schema, applies
/// its default and throws InputError where the value is not what the schema asks for, or where
/// there is neither a value nor a default.
class JobTable {
 public:
  /// Throws InputError for a key that the schema does not know. `table` and `source` must outlive
  /// this; `path` is the table's path in the job, "" for the file's top.
  JobTable(const toml::table& table, const SchemaTable& schema, std::string path,
           JobSource& source);

  /// The tables with this name in this table, in the order of the file (by NAME for [name.NAME]).
  /// Throws InputError where they are not of the schema's form, or are missing but required.
  [[nodiscard]] std::vector<NamedTable> tables(std::string_view name) const;

  /// The [name] in this table; where there is none, one without keys, so that its defaults hold.
  [[nodiscard]] JobTable table_or_defaults(std::string_view name) const;

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path_of(std::string_view key) const;
  [[nodiscard]] bool has(std::string_view key) const;

  /// Which of these keys, separated by ", ", the table has; it is due to have just one.
  [[nodiscard]] std::string one_of(std::string_view keys) const;

  [[nodiscard]] std::string text(std::string_view key) const;
  [[nodiscard]] std::string choice(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> choices(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key) const;
  [[nodiscard]] bool flag(std::string_view key) const;
  /// In internal units, as are the next four.
  [[nodiscard]] double quantity(std::string_view key) const;
  [[nodiscard]] std::vector<double> quantities(std::string_view key) const;
  /// Empty where the string is "top".
  [[nodiscard]] std::optional<double> quantity_unless_top(std::string_view key) const;
  /// At least two points.
  [[nodiscard]] std::vector<mesh::Point> outline(std::string_view key) const;
  /// At least one.
  [[nodiscard]] std::vector<mesh::Interval> stretches(std::string_view key) const;
  /// Each a material's name, or a list of it and its thickness, its weight by area, or thickness
  /// and weight by volume. At least one.
  [[nodiscard]] std::vector<WrittenLayer> layers(std::string_view key) const;

  [[noreturn]] void refuse(std::string_view key, const std::string& found,
                           const std::string& due) const;
  /// What is written for `key`, as it is quoted in a message.
  [[nodiscard]] std::string written(std::string_view key) const;

 private:
  using Pairs = std::vector<std::pair<double, double>>;

  const SchemaTable& table_schema(std::string_view name) const;
  const SchemaKey& schema_key(std::string_view key) const;
  const toml::node* find(const SchemaKey& key) const;
  std::string string_of(const SchemaKey& key, const toml::node& node,
                        const std::string& path) const;
  std::string text_or_fallback(const SchemaKey& key) const;
  double to_quantity(const SchemaKey& key, const std::string& text, const std::string& path) const;
  double quantity_of(const SchemaKey& key, const toml::node& node, const std::string& path) const;
  const toml::array& list_of(const SchemaKey& key) const;
  /// The path of an entry of a list, whose line is remembered.
  std::string remember_entry(std::string_view key, std::size_t index,
                             const toml::node& entry) const;
  Pairs length_pairs(std::string_view key, std::string_view usual_unit, std::string_view name,
                     std::string_view example) const;
  void measure_layer(WrittenLayer& layer, const toml::node& node, const std::string& path) const;
  WrittenLayer layer_of(const SchemaKey& key, const toml::node& entry,
                        const std::string& path) const;
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

}  // namespace deadshore::io
