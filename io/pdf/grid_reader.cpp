#include "io/pdf/grid_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace deadshore::io {
namespace {

GridCell cell_of(const pugi::xml_node& element, const MarkupRules& rules) {
  rules.check_classes(element);
  if (element.attribute("rowspan")) rules.unknown("a cell over more than one row");
  GridCell cell;
  cell.text = inline_text(element, rules);
  cell.columns = std::max(1, element.attribute("colspan").as_int(1));
  cell.figures = has_class(element, "fig");
  cell.label = std::string_view(element.name()) == "th";
  cell.blank = has_class(element, "blank");
  return cell;
}

GridRow row_of(const pugi::xml_node& element, const MarkupRules& rules) {
  rules.check_classes(element);
  GridRow row;
  row.heading = has_class(element, "group");
  row.total = has_class(element, "total");
  row.fails = has_class(element, "fails");
  row.unverified = has_class(element, "unverified");
  row.worked = has_class(element, "worked");
  row.working = has_class(element, "working");
  for (const pugi::xml_node& child : element.children()) {
    const std::string_view tag = child.name();
    if (tag == "td" || tag == "th") {
      row.cells.push_back(cell_of(child, rules));
    } else if (child.type() == pugi::node_element) {
      rules.unknown(fmt::format("<{}> in a row of a table", tag));
    }
  }
  return row;
}

void append_rows(std::vector<GridRow>& rows, const pugi::xml_node& part, const MarkupRules& rules) {
  bool first = true;
  for (const pugi::xml_node& child : part.children("tr")) {
    if (is_left_out(child)) continue;
    rows.push_back(row_of(child, rules));
    rows.back().starts_group = first;
    first = false;
  }
}

}  // namespace

GridBlock grid_of(const pugi::xml_node& table, const MarkupRules& rules) {
  GridBlock grid;
  grid.id = table.attribute("id").value();
  rules.check_classes(table);
  for (const pugi::xml_node& child : table.children()) {
    const std::string_view tag = child.name();
    if (tag == "caption") {
      grid.caption = inline_text(child, rules);
    } else if (tag == "thead") {
      append_rows(grid.head, child, rules);
    } else if (tag == "tbody" || tag == "tfoot") {
      append_rows(grid.rows, child, rules);
    } else if (tag == "tr") {
      grid.rows.push_back(row_of(child, rules));
    } else if (child.type() == pugi::node_element) {
      rules.unknown(fmt::format("<{}> in a table", tag));
    }
  }
  return grid;
}

}  // namespace deadshore::io
