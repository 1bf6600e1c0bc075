#pragma once

#include <cstddef>
#include <string_view>

/// How much a job may hold: far more than any job needs, and little enough to be read at once.
namespace deadshore::io {

constexpr std::size_t longest_text = 500;  ///< bytes
constexpr std::size_t longest_name = 100;  ///< bytes; names become parts of file names
constexpr std::size_t most_tables = 500;   ///< of one kind
constexpr std::size_t most_values = 5000;  ///< of one list
constexpr std::size_t most_table_files = 20;
constexpr std::size_t most_rows = 3000;  ///< of members or weights of one kind, built in and own

/// Numbers that are not 0 and lie outside are slips of the pen, whatever they are for: the sums
/// would lose them, or everything else.
struct Magnitudes {
  double least = 0.0;  ///< in internal units, as is `most`
  double most = 0.0;
  std::string_view in_words = {};  ///< "0.001 mm to 1 km"

  [[nodiscard]] bool hold(double value) const {
    const double size = value < 0.0 ? -value : value;
    return size == 0.0 || (size >= least && size <= most);
  }
};

}  // namespace deadshore::io
