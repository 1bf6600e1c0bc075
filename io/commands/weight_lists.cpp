#include "io/commands/weight_lists.h"

#include "io/commands/name_pattern.h"
#include "io/commands/terminal.h"
#include "io/commands/text_table.h"

namespace deadshore::io {

std::string list_of_materials(const WeightTables& tables, std::string_view pattern) {
  TextTable table{{{"material", ""}, {"by volume", "kN/m3"}, {"by area", "kN/m2"}}, {}};
  for (const WeightRow* row : matching(tables.materials, pattern, "material", &WeightRow::name)) {
    table.rows.push_back(
        {source_line(row->source),
         {row->name, row->unit_weight ? fmt::format("{:g}", *row->unit_weight * 1e6) : "-",
          row->area_weight ? fmt::format("{:g}", *row->area_weight * 1e3) : "-"}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Weights by volume go with a thickness; those by area are of the face, thickness "
             "and all. Old houses hide surprises: open up and look before you trust a name.");
}

std::string list_of_uses(const WeightTables& tables, std::string_view pattern) {
  TextTable table{{{"use", ""}, {"load", "kN/m2"}, {"concentrated", "kN"}}, {}};
  for (const UseRow* row : matching(tables.uses, pattern, "use", &UseRow::name)) {
    table.rows.push_back(
        {source_line(row->source),
         {row->name, fmt::format("{:g}", row->load * 1e3),
          row->concentrated > 0.0 ? fmt::format("{:g}", row->concentrated / 1e3) : "-"}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Characteristic imposed loads over the whole area; the concentrated load is what "
             "a single joist must stand, and is not added to a wall.");
}

}  // namespace deadshore::io
