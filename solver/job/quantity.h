#pragma once

#include <limits>
#include <string>
#include <string_view>

/// What a number of a job measures, how it is written, and where it may lie.
namespace deadshore::solver {

/// What a number measures, with the unit that it is held in inside the program.
enum class Dimension {
  none,              ///< a plain number
  length,            ///< mm
  force,             ///< N
  force_per_length,  ///< N/mm
  force_per_volume,  ///< N/mm3
  stress,            ///< N/mm2; also a load on an area
  stiffness,         ///< N/mm
  area,              ///< mm2
  angle,             ///< degrees
  weight,            ///< N; may be given as a mass, under standard gravity
};

/// The unit that a builder gives a quantity in.
struct Unit {
  Dimension dimension = Dimension::none;
  std::string_view symbol = {};  ///< as written: "kN/m"; empty for a number without dimension
  double size = 1.0;             ///< of one of it in internal units
};

/// Where a number may lie: knows whether it does, and says itself.
struct Range {
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  bool above_least = false;      ///< `least` itself is out
  bool below_most = false;       ///< `most` itself is out
  bool whole = false;            ///< whole numbers only
  bool or_none = false;          ///< 0 is in, and stands for none
  std::string_view bounds = {};  ///< what else bounds it, in words: "inside the wall"
  std::string_view reason = {};  ///< why, to follow the range in a message

  /// Numbers in range that are not 0 and lie outside these are slips of a thousand: what is
  /// measured is never so small or so large. `likely_unit` asks for the unit that was meant.
  double likely_least = 0.0;
  double likely_most = std::numeric_limits<double>::infinity();
  std::string_view likely_unit = {};

  /// Whether a value (in internal units) is in the range.
  [[nodiscard]] bool holds(double value) const;
  /// Whether a value is within the likely ones, or 0.
  [[nodiscard]] bool is_likely(double value) const;

  /// The same range, bounded by something else too.
  [[nodiscard]] constexpr Range within(std::string_view other_bounds) const {
    Range range = *this;
    range.bounds = other_bounds;
    return range;
  }
};

/// A number with its unit: "5.6 m" or "150 mm" for a length, "19 kN/m3" for what is given in kN/m3,
/// "0.2" for a plain number.
/// \param value in internal units
[[nodiscard]] std::string in_words(double value, const Unit& unit);

/// A range in words: "more than 0", "0 or more and less than 90 degrees", "1 or 2"; empty where any
/// number will do. Without `bounds`, which depend on other keys.
/// \param unit of the numbers
[[nodiscard]] std::string in_words(const Range& range, const Unit& unit);

/// The likely values of a range in words: "50 N/mm2 to 100000 N/mm2: is the unit N/mm2?"
[[nodiscard]] std::string likely_in_words(const Range& range, const Unit& unit);

}  // namespace deadshore::solver
