#pragma once

#include <algorithm>
#include <vector>

/// Geometry on the page: points (1/72 inch), x to the right, y down.
namespace deadshore::viz {

/// A place on the page.
struct PagePoint {
  double x = 0.0;
  double y = 0.0;
};

/// Size of a page or a box.
struct Size {
  double width = 0.0;
  double height = 0.0;
};

/// A box with level and upright sides; `top < bottom`, since y goes down.
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

/// The place in a box that is put on a point.
struct Anchor {
  double across = 0.5;  ///< part of its width to the left of the point, 0 to 1
  double down = 0.5;    ///< part of its height above the point, 0 to 1
};

/// The box of this size whose `anchor` is put on `at`.
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
