#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>
/// Text for a terminal of 80 columns.
namespace deadshore::io {

/// `text` cut to `width` characters, or filled up with spaces.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);

/// `text` broken between words into lines of at most `width` columns, without line ends; a longer
/// word has a line of its own.
[[nodiscard]] std::vector<std::string> broken(std::string_view text, std::size_t width);

/// The same into lines of at most 80 columns, each after `indent` spaces and with a line end.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t indent = 0);

/// Whether what is written to a file descriptor goes to a terminal that may be given colours:
/// https://no-color.org and TERM=dumb say no.
[[nodiscard]] bool wants_colour(int descriptor);

/// `text` with its alarms in colour: from a line that holds "!! " (red) or begins with "! "
/// (yellow) to the end of its paragraph or the next alarm.
[[nodiscard]] std::string coloured(std::string_view text);

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
