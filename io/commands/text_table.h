#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// A table of text in columns: the first to the left, the others to the right.
struct TextTable {
  struct Column {
    std::string heading;
    std::string unit;
  };
  struct Row {
    std::string group;  ///< a paragraph above the rows that share it, such as their source
    std::vector<std::string> cells;
  };
  std::vector<Column> columns;
  std::vector<Row> rows;
};

/// The table for a terminal: before each run of rows of one group the group's paragraph and the
/// headings. The first column is cut to what the others leave of 80. Empty without rows.
[[nodiscard]] std::string text_of(const TextTable& table);

/// The group of rows that share a source.
[[nodiscard]] std::string source_line(std::string_view source);

}  // namespace deadshore::io
