#pragma once

#include "io/job/job_source.h"
#include "io/job/schema.h"
#include "mesh/plane.h"

#include <toml++/toml.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {

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
  /// \throws InputError where they are not of the schema's form, or are missing but required
  [[nodiscard]] std::vector<NamedTable> tables(std::string_view name) const;

  /// The only one, of a [name].
  [[nodiscard]] std::optional<JobTable> table(std::string_view name) const;

  /// Reads every key that this table and the tables inside it have, also those that the rest of the
  /// job makes needless (the stiffness of packing 0 mm thick).
  /// \throws InputError for a key that is not known, in any of them, and then for the first value
  ///   that is not what the schema asks for
  void check_all() const;

  [[nodiscard]] const SchemaTable& schema() const { return schema_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path_of(std::string_view key) const;
  [[nodiscard]] bool has(std::string_view key) const;

  /// Which of these keys the table has.
  /// \throws InputError unless it is just one
  [[nodiscard]] std::string_view one_of(std::initializer_list<std::string_view> keys) const;

  /// Throws InputError where there is no such key.
  void require(std::string_view key) const;

  /// A choice's too, as a text.
  [[nodiscard]] std::string text(std::string_view key) const;
  /// What the word stands for.
  template <class Value>
  [[nodiscard]] Value choice(std::string_view key) const {
    return static_cast<Value>(chosen_word(key).value);
  }
  /// What the words stand for; all of the key's where it is missing.
  [[nodiscard]] std::vector<int> choices(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key) const;
  /// A number in the key's range of whole numbers.
  [[nodiscard]] int whole_number(std::string_view key) const;
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

  const solver::Word& word_of(const Key& key, const std::string& text, const std::string& path,
                              const std::string& due) const;
  const solver::Word& chosen_word(std::string_view key) const;
  const SchemaTable& table_schema(std::string_view name) const;
  const Key& schema_key(std::string_view key) const;
  const toml::node* find(const Key& key) const;
  std::string string_of(const Key& key, const toml::node& node, const std::string& path) const;
  std::string text_or_fallback(const Key& key) const;
  double to_quantity(const Key& key, const std::string& text, const std::string& path) const;
  double quantity_of(const Key& key, const toml::node& node, const std::string& path) const;
  const toml::array& list_of(const Key& key) const;
  /// The path of an entry of a list, whose line is remembered.
  std::string remember_entry(std::string_view key, std::size_t index,
                             const toml::node& entry) const;
  Pairs length_pairs(std::string_view key, std::string_view name, std::string_view example) const;
  void measure_layer(WrittenLayer& layer, const toml::node& node, const std::string& path) const;
  WrittenLayer layer_of(const Key& key, const toml::node& entry, const std::string& path) const;
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
