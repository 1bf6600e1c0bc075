#include "io/commands/text_table.h"

#include "io/commands/terminal.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

namespace deadshore::io {

namespace {

constexpr std::size_t page = 80;
constexpr std::size_t narrowest_first = 8;

std::vector<std::size_t> widths_of(const TextTable& table) {
  std::vector<std::size_t> widths;
  std::size_t others = 0;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    std::size_t width = std::max(table.columns[i].heading.size(), table.columns[i].unit.size());
    for (const TextTable::Row& row : table.rows) width = std::max(width, row.cells.at(i).size());
    widths.push_back(width);
    if (i > 0) others += 2 + width;
  }
  const std::size_t left = others + narrowest_first < page ? page - others : narrowest_first;
  widths.front() = std::min(widths.front(), left);
  return widths;
}

std::string line_of(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) {
  std::string line = fitted(cells.front(), widths.front());
  for (std::size_t i = 1; i < cells.size(); ++i) {
    line += fmt::format("  {:>{}}", cells[i], widths[i]);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

std::string headings_of(const TextTable& table, const std::vector<std::size_t>& widths) {
  std::vector<std::string> headings;
  std::vector<std::string> units;
  for (const TextTable::Column& column : table.columns) {
    headings.push_back(column.heading);
    units.push_back(column.unit);
  }
  return line_of(headings, widths) + line_of(units, widths);
}

}  // namespace

std::string source_line(std::string_view source) {
  return fmt::format("Source: {}.", source);
}

std::string text_of(const TextTable& table) {
  const std::vector<std::size_t> widths = widths_of(table);
  std::string text;
  const std::string* group = nullptr;
  for (const TextTable::Row& row : table.rows) {
    if (group == nullptr || *group != row.group) {
      text += (text.empty() ? "" : "\n") + wrapped(row.group) + headings_of(table, widths);
      group = &row.group;
    }
    text += line_of(row.cells, widths);
  }
  return text;
}

}  // namespace deadshore::io
