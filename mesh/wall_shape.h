#pragma once

#include "mesh/plane.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>
namespace deadshore::mesh {

/// A hole through the wall. `height` is from the sill to the highest point of the head; a segmental
/// arch rises by `rise` above its springings, and `rise == 0` is a flat head. All in mm.
struct Opening {
  std::string name;     ///< for messages
  double left = 0.0;    ///< x of its left jamb
  double sill = 0.0;    ///< above the base
  double width = 0.0;   ///< between its jambs
  double height = 0.0;  ///< from sill to crown
  double rise = 0.0;    ///< of its arch; 0: a flat head

  [[nodiscard]] double right() const { return left + width; }
  /// Level of the highest point of the head.
  [[nodiscard]] double crown() const { return sill + height; }
  /// Level at which the jambs end and the arch begins; the crown's under a flat head.
  [[nodiscard]] double springing() const { return sill + height - rise; }
  /// From jamb to jamb along x.
  [[nodiscard]] Interval span() const { return {left, left + width}; }

  /// Height of the head at `x`, mm: a circular arc through both springings and the crown.
  [[nodiscard]] double head(double x) const;
};

/// A lintel over a flat-headed opening: a rectangle of another material from the head upwards,
/// running `bearing` into the wall on each side of the opening. All in mm.
struct LintelShape {
  std::string name;         ///< for messages
  std::size_t opening = 0;  ///< that it spans: place in `WallShape::openings`
  double depth = 0.0;       ///< upwards from the opening's head
  double bearing = 0.0;     ///< beyond each jamb
};

/// The cut: masonry below `soffit` between `left` and `right` comes out. All in mm.
struct Cut {
  double left = 0.0;    ///< x of its left jamb
  double right = 0.0;   ///< x of its right jamb
  double soffit = 0.0;  ///< level of what stays over it

  /// From jamb to jamb along x.
  [[nodiscard]] Interval span() const { return {left, right}; }
};

/// A rectangle of masonry that is taken out, or becomes something else, as the work goes on: the
/// pocket for a beam's end, a padstone. Outside the cut. All in mm.
struct WallBlock {
  std::size_t group = 0;  ///< those of one group share a region; from 0 on, as they appear
  std::string name;       ///< for messages
  Interval x;             ///< from its left side to its right
  Interval y;             ///< from its underside to its top
};

/// A wall and what is to be cut out of it, in its own plane, mm.
///
/// `top` is the outline's upper edge from the left end to the right: points with x never falling,
/// the first at x = 0 and the last at x = `length`; two points with the same x are a vertical step.
/// A rectangular wall has two points. A gable has three, a stepped parapet four or more.
struct WallShape {
  double length = 0.0;     ///< from end to end
  std::vector<Point> top;  ///< two points or more
  std::vector<Opening> openings;
  std::vector<LintelShape> lintels;
  Cut cut;

  /// Height of the highest point of the outline, mm.
  [[nodiscard]] double height() const;

  /// Height of the outline at `x`, mm; at a vertical step, the lower of the two sides.
  [[nodiscard]] double top_at(double x) const;
};

/// Whether there is masonry or lintel at a point once the cut is made: inside the outline, in no
/// opening and not cut out. Points on an edge count as solid.
[[nodiscard]] bool is_solid(const WallShape& shape, Point p);

/// Whether there was masonry or lintel at a point before the cut.
[[nodiscard]] bool was_solid(const WallShape& shape, Point p);

/// The opening that a lintel spans; null where the wall has no opening of that number.
[[nodiscard]] const Opening* spanned_opening(const LintelShape& lintel, const WallShape& shape);

/// The rectangle of a lintel, mm.
struct LintelExtent {
  Interval x;
  Interval y;
};

/// Where a lintel lies in the wall.
/// \pre the wall has the lintel's opening
[[nodiscard]] LintelExtent extent_of(const LintelShape& lintel, const WallShape& shape);

/// The outline's top between two vertical steps: a polyline with x rising, mm.
struct TopStretch {
  std::vector<Point> points;

  /// The stretch of the wall under it, mm.
  [[nodiscard]] Interval x() const { return {points.front().x, points.back().x}; }

  /// Its highest point, mm: the level of the grid that slides onto this stretch.
  [[nodiscard]] double level() const;

  /// Height at `at`, which lies within `x()`.
  [[nodiscard]] double y_at(double at) const;
};

/// Cuts the outline's top, as `WallShape::top`, at its vertical steps, left to right. Repeated
/// points count once.
[[nodiscard]] std::vector<TopStretch> split_at_steps(std::span<const Point> top);

}  // namespace deadshore::mesh
