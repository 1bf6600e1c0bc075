#pragma once

#include <vector>

namespace deadshore::mesh {

/// Two places on an axis that are nearer than this are one place, mm: far below what anyone
/// measures on a wall, and far above the round-off of sums of lengths in mm or inches. The mesher,
/// the hand sums and the frames share this one tolerance.
inline constexpr double same_place = 1e-6;

/// Places in ascending order; of those that are nearer than `same_place` the first alone.
[[nodiscard]] std::vector<double> distinct_places(std::vector<double> places);

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
