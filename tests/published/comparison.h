#pragma once

#include <source_location>
#include <string>
#include <string_view>
#include <vector>

namespace testing {
class UnitTest;
}

/// Comparisons with outside sources: each is expected to hold, and is a row of README.md.
namespace deadshore::published {

/// What a comparison is about: a chapter of the page, in this order.
enum class Field {
  plane_stress,
  no_tension,
  limit_analysis,
  whole_walls,
  beams,
  second_order,
  buckling,
  portals,
  steel_sections,
  steel_members,
  timber,
  masonry_members,
  props,
  permanent_beam,
  dead_shores,
  loads,
  damage,
};
inline constexpr int field_count = static_cast<int>(Field::damage) + 1;
[[nodiscard]] std::string_view title_of(Field field);

/// How sure the outside value is.
enum class Certainty {
  derived,   ///< exact, and derived in the test or any text: statics, closed forms
  read,      ///< read in a public copy of the source
  by_hand,   ///< worked by hand from the source's formulas
  memory,    ///< from memory, unverified
  library,   ///< a general-purpose library, run by us
  own_code,  ///< older code of our own kin: weak
  practice,  ///< common practice, no source
};
[[nodiscard]] std::string_view words_for(Certainty certainty);

/// Where values come from. The citation must outlive the comparisons.
struct Source {
  Field field = Field::plane_stress;
  Certainty certainty = Certainty::memory;
  std::string_view citation;
};

/// How far ours may lie below and above theirs, in the unit of both; both >= 0.
struct Tolerance {
  double below = 0.0;
  double above = 0.0;

  constexpr Tolerance(double both) : below(both), above(both) {}  // NOLINT: a number will do
  constexpr Tolerance(double under, double over) : below(under), above(over) {}
};

struct Comparison {
  Source source;
  std::string what;  ///< in words; no other comparison of the field may have the same
  double theirs = 0.0;
  double ours = 0.0;
  Tolerance tolerance = 0.0;
  std::string unit;  ///< "-" for a ratio, "order" for a rate of convergence
};

/// Fails the running test at `where` unless ours is as near to theirs as accepted; notes the
/// comparison among the test's properties, from which the page is made.
void verify(const Comparison& comparison,
            std::source_location where = std::source_location::current());

/// A comparison as noted: its source's texts are its own.
struct Row {
  Field field = Field::plane_stress;
  Certainty certainty = Certainty::memory;
  std::string citation;
  std::string what;
  double theirs = 0.0;
  double ours = 0.0;
  double below = 0.0;
  double above = 0.0;
  std::string unit;
};

/// What all tests that ran have compared, in the order in which they are listed.
[[nodiscard]] std::vector<Row> rows_of(const ::testing::UnitTest& tests);

}  // namespace deadshore::published
