#include "io/commands/terminal.h"

#include "io/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <unistd.h>
namespace deadshore::io {

namespace {

constexpr std::size_t columns = 80;

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U;
  }));
}

}  // namespace

std::string fitted(std::string_view text, std::size_t width) {
  std::string cut = printable(std::string(text));
  while (width_of(cut) > width) {
    while ((static_cast<unsigned char>(cut.back()) & 0xc0U) == 0x80U) cut.pop_back();
    cut.pop_back();
  }
  return cut.append(width - width_of(cut), ' ');
}

std::vector<std::string> broken(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    const bool fits = !lines.empty() && used + 1 + width_of(word) <= width;
    if (fits) {
      lines.back().append(1, ' ').append(word);
      used += 1 + width_of(word);
    } else {
      lines.emplace_back(word);
      used = width_of(word);
    }
  }
  return lines;
}

std::string wrapped(std::string_view text, std::size_t indent) {
  std::string lines;
  for (const std::string& line : broken(text, columns - indent)) {
    lines += std::string(indent, ' ') + line + '\n';
  }
  return lines.empty() ? "\n" : lines;
}

bool wants_colour(int descriptor) {
  const char* refused = std::getenv("NO_COLOR");  // NOLINT(concurrency-mt-unsafe): nobody sets it
  if (refused != nullptr && *refused != '\0') return false;
  const char* terminal = std::getenv("TERM");  // NOLINT(concurrency-mt-unsafe)
  return terminal != nullptr && std::string_view(terminal) != "dumb" && isatty(descriptor) != 0;
}

std::string coloured(std::string_view text) {
  constexpr std::string_view red = "\033[1;31m";
  constexpr std::string_view yellow = "\033[33m";
  constexpr std::string_view plain = "\033[0m";
  std::string painted;
  std::string_view colour;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t alarm = line.find("!! ");
    if (alarm != std::string_view::npos) colour = red;
    if (line.starts_with("! ")) colour = yellow;
    if (line.empty()) colour = {};
    if (colour.empty()) {
      painted.append(line);
    } else {
      painted.append(colour).append(line).append(plain);
    }
    painted += '\n';
    // In the middle of a line the alarm is a cell of a table, and goes no further.
    if (alarm != std::string_view::npos && alarm > 0) colour = {};
  }
  return painted;
}

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
