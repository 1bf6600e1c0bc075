#pragma once

#include <numbers>

namespace deadshore::solver {

/// What lies between the two sides of a square corner and the quarter circle of radius `r` that
/// touches both: a root fillet, or what a rounded corner lacks. mm.
struct Fillet {
  double r = 0.0;

  [[nodiscard]] double area() const { return (1.0 - std::numbers::pi / 4.0) * r * r; }
  /// From either side to the centroid.
  [[nodiscard]] double centroid() const {
    return (10.0 - 3.0 * std::numbers::pi) / (12.0 - 3.0 * std::numbers::pi) * r;
  }
  /// Second moment of area about its own centroid.
  [[nodiscard]] double inertia() const {
    const double pi = std::numbers::pi;
    return (1.0 / 3.0 - pi / 16.0 - 1.0 / (9.0 * (4.0 - pi))) * r * r * r * r;
  }
  /// Second moment about an axis `distance` from its centroid.
  [[nodiscard]] double inertia_about(double distance) const {
    return inertia() + area() * distance * distance;
  }
};

}  // namespace deadshore::solver
