#pragma once

namespace deadshore::mesh {

/// A point in the plane of the wall, mm: x along the wall from its left end, y up from the base.
struct Point {
  double x = 0.0;
  double y = 0.0;
};

/// A closed stretch of an axis, mm, `from <= to`.
struct Interval {
  double from = 0.0;
  double to = 0.0;

  [[nodiscard]] constexpr double length() const { return to - from; }
  [[nodiscard]] constexpr double middle() const { return 0.5 * (from + to); }
  [[nodiscard]] constexpr bool contains(double value) const { return from <= value && value <= to; }
};

/// An upright rectangle, mm.
struct Box {
  Interval x;
  Interval y;
};

}  // namespace deadshore::mesh
