#include "io/tables/weight_tables.h"

#include "io/job/toml_text.h"
#include "io/tables/member_data.h"
#include "io/tables/member_row.h"
#include "io/tables/rows_by_name.h"
#include "solver/checks/check.h"

#include <utility>

namespace deadshore::io {

namespace {

using solver::kN;
using solver::kN_per_m2;
constexpr double kN_per_m3 = 1e-6;

void add_weights(const MemberRow& group, WeightTables& tables) {
  for (const MemberRow& row : group.rows("rows", {"name", "unit_weight", "area_weight"})) {
    WeightRow weight{row.text("name"), {}, {}, group.text("source")};
    if (row.has("unit_weight")) weight.unit_weight = row.number("unit_weight") * kN_per_m3;
    if (row.has("area_weight")) weight.area_weight = row.number("area_weight") * kN_per_m2;
    if (weight.unit_weight.has_value() == weight.area_weight.has_value())
      row.refuse("", weight.unit_weight ? "a weight by volume and one by area" : "no weight",
                 "either unit_weight in kN/m3 or area_weight in kN/m2 is due");
    put_row(tables.materials, std::move(weight), &WeightRow::name);
  }
}

void add_uses(const MemberRow& group, WeightTables& tables) {
  for (const MemberRow& row : group.rows("rows", {"name", "load", "concentrated"})) {
    UseRow use{row.text("name"), row.number("load") * kN_per_m2, 0.0, group.text("source")};
    if (row.has("concentrated")) use.concentrated = row.number("concentrated") * kN;
    put_row(tables.uses, std::move(use), &UseRow::name);
  }
}

}  // namespace

const WeightRow& WeightTables::material(std::string_view name) const {
  return find_row(materials, name, "material", &WeightRow::name);
}

const UseRow& WeightTables::use(std::string_view name) const {
  return find_row(uses, name, "use", &UseRow::name);
}

WeightTables built_in_weight_tables() {
  WeightTables tables;
  for (const MemberData& file : built_in_weight_data())
    add_weight_tables(file.text, std::string(file.name), tables);
  return tables;
}

void add_weight_tables(std::string_view text, const std::string& file_name, WeightTables& tables) {
  const toml::table root = parse_toml(text, file_name, "a file of tables");
  const MemberRow file(root, file_name, "", table_groups());
  WeightTables extended = tables;
  if (file.has("weight_group"))
    for (const MemberRow& group : file.rows("weight_group", {"source", "rows"}))
      add_weights(group, extended);
  if (file.has("imposed_group"))
    for (const MemberRow& group : file.rows("imposed_group", {"source", "rows"}))
      add_uses(group, extended);
  tables = std::move(extended);
}

}  // namespace deadshore::io
