#pragma once

#include <string>
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
/// headings. A first column of over 24 characters is cut. Empty without rows.
[[nodiscard]] std::string text_of(const TextTable& table);

}  // namespace deadshore::io
