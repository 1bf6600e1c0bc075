#include "solver/job/quantity.h"

#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

bool Range::holds(double value) const {
  if (or_none && value == 0.0) return true;
  if (whole && value != std::floor(value)) return false;
  return (above_least ? value > least : value >= least) &&
         (below_most ? value < most : value <= most);
}

bool Range::is_likely(double value) const {
  const double size = std::abs(value);
  return size == 0.0 || (size >= likely_least && size <= likely_most);
}

std::string likely_in_words(const Range& range, const Unit& unit) {
  return fmt::format("{} to {}: is the unit {}?", in_words(range.likely_least, unit),
                     in_words(range.likely_most, unit), range.likely_unit);
}

std::string in_words(double value, const Unit& unit) {
  if (unit.dimension == Dimension::length) return in_words(value);
  const std::string number = fmt::format("{:.6g}", value / unit.size);
  return unit.symbol.empty() ? number : fmt::format("{} {}", number, unit.symbol);
}

std::string in_words(const Range& range, const Unit& unit) {
  // A bound of 0 is 0 in any unit.
  const auto bound = [&](double value) { return value == 0.0 ? "0" : in_words(value, unit); };
  const bool from_below = std::isfinite(range.least);
  if (!std::isfinite(range.most)) {
    if (!from_below) return "";
    return range.above_least ? "more than " + bound(range.least) : bound(range.least) + " or more";
  }
  if (!from_below) return (range.below_most ? "less than " : "up to ") + bound(range.most);
  if (range.whole && range.most == range.least + 1.0)
    return fmt::format("{} or {}", range.least, range.most);
  if (range.whole) return fmt::format("a whole number from {} to {}", range.least, range.most);
  if (range.above_least)
    return fmt::format("more than {}, up to {}", bound(range.least), bound(range.most));
  return fmt::format("{} {} {}", bound(range.least),
                     range.below_most ? "or more and less than" : "to", bound(range.most));
}

}  // namespace deadshore::solver
