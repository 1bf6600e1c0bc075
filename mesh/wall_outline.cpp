#include "mesh/wall_outline.h"

#include <algorithm>
#include <cmath>

namespace deadshore::mesh {

double TopStretch::level() const {
  return std::ranges::max_element(points, {}, &Point::y)->y;
}

double TopStretch::y_at(double at) const {
  const auto right = std::ranges::lower_bound(points, at, {}, &Point::x);
  if (right == points.begin()) return points.front().y;
  if (right == points.end()) return points.back().y;
  const Point a = *(right - 1);
  const Point b = *right;
  return std::lerp(a.y, b.y, (at - a.x) / (b.x - a.x));
}

std::vector<TopStretch> split_at_steps(std::span<const Point> top) {
  std::vector<TopStretch> stretches;
  TopStretch now;
  const auto finish = [&] {
    // A single point is the middle of a step and bounds nothing.
    if (now.points.size() > 1) stretches.push_back(now);
    now.points.clear();
  };
  for (const Point& p : top) {
    if (!now.points.empty() && p.x - now.points.back().x <= same_place) {
      if (std::abs(p.y - now.points.back().y) <= same_place) continue;
      finish();
    }
    now.points.push_back(p);
  }
  finish();
  return stretches;
}

}  // namespace deadshore::mesh
