#pragma once

#include "io/job/units.h"

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

/// Of a quantity, either way of 0.
[[nodiscard]] constexpr Magnitudes magnitudes_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return {1e-3, 1e6, "0.001 mm to 1 km"};
    case Dimension::force:
    case Dimension::weight:
      return {1e-3, 1e9, "0.001 N to 1 GN"};
    case Dimension::force_per_length:
      return {1e-6, 1e6, "0.001 N/m to 1 GN/m"};
    case Dimension::force_per_volume:
      return {1e-9, 1e3, "1 N/m3 to 1000 GN/m3"};
    case Dimension::stress:
      return {1e-9, 1e7, "0.001 N/m2 to 10000 GPa"};
    case Dimension::stiffness:
      return {1e-3, 1e12, "0.001 N/mm to 1e9 kN/mm"};
    case Dimension::area:
      return {1e-2, 1e12, "0.01 mm2 to 1 km2"};
    case Dimension::angle:
      return {1e-6, 360.0, "1e-6 to 360 degrees"};
  }
  return {};
}

/// Of a number without dimension.
constexpr Magnitudes number_magnitudes{1e-6, 1e6, "1e-6 to 1e6"};

}  // namespace deadshore::io
