#include "mesh/wall_shape.h"

#include "mesh/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
namespace deadshore::mesh {

namespace {

struct TwoSides {
  double lower;
  double upper;
};

/// Heights of the outline at `x`: they differ only at a vertical step.
TwoSides top_range_at(const std::vector<Point>& top, double x) {
  TwoSides found{HUGE_VAL, -HUGE_VAL};
  const auto take = [&found](double y) {
    found.lower = std::min(found.lower, y);
    found.upper = std::max(found.upper, y);
  };
  for (std::size_t k = 0; k + 1 < top.size(); ++k) {
    const Point a = top[k];
    const Point b = top[k + 1];
    if (x < a.x || x > b.x) continue;
    if (a.x == b.x) {
      take(a.y);
      take(b.y);
    } else {
      take(std::lerp(a.y, b.y, (x - a.x) / (b.x - a.x)));
    }
  }
  return found;
}

bool inside_opening(const Opening& opening, Point p) {
  return opening.left < p.x && p.x < opening.right() && opening.sill < p.y &&
         p.y < opening.head(p.x);
}

bool inside_cut(const Cut& cut, Point p) {
  return cut.left < p.x && p.x < cut.right && p.y < cut.soffit;
}

}  // namespace

double Opening::head(double x) const {
  if (rise <= 0.0) return crown();
  const double half = 0.5 * width;
  const double radius = (half * half + rise * rise) / (2.0 * rise);
  const double from_middle = x - (left + half);
  const double square = std::max(0.0, radius * radius - from_middle * from_middle);
  return crown() - from_middle * from_middle / (radius + std::sqrt(square));
}

double WallShape::height() const {
  double highest = 0.0;
  for (const Point& p : top) highest = std::max(highest, p.y);
  return highest;
}

double WallShape::top_at(double x) const {
  return top_range_at(top, std::clamp(x, 0.0, length)).lower;
}

bool is_solid(const WallShape& shape, Point p) {
  return !inside_cut(shape.cut, p) && was_solid(shape, p);
}

bool was_solid(const WallShape& shape, Point p) {
  if (p.x < 0.0 || p.x > shape.length || p.y < 0.0) return false;
  if (p.y > top_range_at(shape.top, p.x).upper) return false;
  return std::ranges::none_of(shape.openings,
                              [p](const Opening& opening) { return inside_opening(opening, p); });
}

const Opening* spanned_opening(const LintelShape& lintel, const WallShape& shape) {
  return lintel.opening < shape.openings.size() ? &shape.openings[lintel.opening] : nullptr;
}

LintelExtent extent_of(const LintelShape& lintel, const WallShape& shape) {
  const Opening* opening = spanned_opening(lintel, shape);
  if (opening == nullptr) {
    throw GeometryError(fmt::format("lintel \"{}\": there is no opening number {} for it to span",
                                    lintel.name, lintel.opening + 1));
  }
  return {{opening->left - lintel.bearing, opening->right() + lintel.bearing},
          {opening->crown(), opening->crown() + lintel.depth}};
}

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
