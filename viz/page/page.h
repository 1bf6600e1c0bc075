#pragma once

#include <algorithm>
#include <vector>

/// Geometry on the page: points (1/72 inch), x to the right, y down.
namespace deadshore::viz {

struct PagePoint {
  double x = 0.0;
  double y = 0.0;
};

struct Size {
  double width = 0.0;
  double height = 0.0;
};

struct Rect {
  double left = 0.0;
  double top = 0.0;
  double right = 0.0;
  double bottom = 0.0;

  [[nodiscard]] constexpr double width() const { return right - left; }
  [[nodiscard]] constexpr double height() const { return bottom - top; }
  [[nodiscard]] constexpr PagePoint middle() const {
    return {0.5 * (left + right), 0.5 * (top + bottom)};
  }
  [[nodiscard]] constexpr bool overlaps(const Rect& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
  [[nodiscard]] constexpr bool holds(const Rect& other) const {
    return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
  }
};

/// Where a box hangs on a point: part of its width to the left of the point and of its height
/// above.
struct Anchor {
  double across = 0.5;
  double down = 0.5;
};

/// The box of this size that hangs on `at` by `anchor`.
[[nodiscard]] constexpr Rect box_at(PagePoint at, Size size, Anchor anchor) {
  const double left = at.x - anchor.across * size.width;
  const double top = at.y - anchor.down * size.height;
  return {left, top, left + size.width, top + size.height};
}

/// A closed line; the last point joins the first.
using Loop = std::vector<PagePoint>;

/// Figures are drawn at the width they are printed: 180 mm, the text width of an A4 page.
inline constexpr double page_width = 180.0 / 25.4 * 72.0;

/// A circle as a closed line of short sides.
[[nodiscard]] Loop circle_at(PagePoint middle, double radius);

}  // namespace deadshore::viz
