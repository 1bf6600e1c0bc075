#pragma once

#include "mesh/plane.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// The outline's top between two vertical steps: a line of points with x rising.
struct TopStretch {
  std::vector<Point> points;

  [[nodiscard]] Interval x() const { return {points.front().x, points.back().x}; }

  /// Its highest point, mm: the level of the grid that slides onto this stretch.
  [[nodiscard]] double level() const;

  /// Height at `at`, which lies within `x()`.
  [[nodiscard]] double y_at(double at) const;
};

/// Cuts the outline's top at its vertical steps, left to right. Equal points count once.
[[nodiscard]] std::vector<TopStretch> split_at_steps(std::span<const Point> top);

}  // namespace deadshore::mesh
