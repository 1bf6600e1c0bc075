#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// What a material of a house weighs: by volume or by area of its face, exactly one of the two.
struct WeightRow {
  std::string name;
  std::optional<double> unit_weight;  ///< N/mm3
  std::optional<double> area_weight;  ///< N/mm2, thickness and all
  std::string source;
};

/// What a use of a floor or a roof brings.
struct UseRow {
  std::string name;
  double load = 0.0;          ///< N/mm2
  double concentrated = 0.0;  ///< N, not at the same time; 0: none is given
  std::string source;
};

/// Weights and imposed loads to choose from, in the order of the files. Names are found whatever
/// their case and spaces. The finders throw UnknownMember (io/tables/member_tables.h).
struct WeightTables {
  std::vector<WeightRow> materials;
  std::vector<UseRow> uses;

  [[nodiscard]] const WeightRow& material(std::string_view name) const;
  [[nodiscard]] const UseRow& use(std::string_view name) const;
};

/// The tables of io/data/weights.toml and imposed.toml, which are built into the library.
[[nodiscard]] WeightTables built_in_weight_tables();

/// Adds the groups of a file in the form of those two; a known name is replaced. Throws InputError,
/// and leaves `tables` as it was, where a row is unsound. Groups of members are left to
/// add_member_tables.
void add_weight_tables(std::string_view text, const std::string& file_name, WeightTables& tables);

}  // namespace deadshore::io
