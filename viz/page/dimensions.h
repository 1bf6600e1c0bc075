#pragma once

#include "viz/page/canvas.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::viz {

/// A place that a dimension line stops at.
struct DimensionStop {
  double page = 0.0;  ///< on the page, along the line's direction, points
  double wall = 0.0;  ///< on the wall, mm
};

/// The figure between two stops. `row` 0 stands on the line; 1 and more hang under it because it is
/// too wide for its stretch; a figure with room in no row is left out.
struct DimensionLabel {
  std::string text;   ///< whole mm
  double from = 0.0;  ///< where its text begins along the line, points
  double to = 0.0;    ///< where it ends, points
  int row = 0;
};

/// Stops in rising order of `wall`, without those within 1 mm of the one before.
[[nodiscard]] std::vector<DimensionStop> sorted_stops(std::vector<DimensionStop> stops);

/// Lays out the figures (whole mm) of a line through `stops`, whose `page` rises. No two in a row
/// come nearer than a gap, and none leaves `room`. Up to `hanging` rows under the line.
[[nodiscard]] std::vector<DimensionLabel> lay_out_dimensions(std::span<const DimensionStop> stops,
                                                             double room_from, double room_to,
                                                             int hanging = 1);

/// Distance between neighbouring dimension lines, points: a row of figures on the line and one
/// under it.
inline constexpr double dimension_pitch = 19.0;

/// Rows that may hang under a line where stops can be tight.
inline constexpr int tight_rows = 3;

/// Distance to the next dimension line that a level line needs, with up to `tight_rows` rows:
/// `dimension_pitch` and more.
[[nodiscard]] double level_pitch(std::span<const DimensionStop> stops);

/// Draws a level line at page height `y` with its figures, and thin lines up to `reach` at each
/// stop.
void draw_level_dimensions(Canvas& canvas, std::span<const DimensionStop> stops, double y,
                           double reach, int hanging = 1);

/// A dimension line without a figure across the box, for a legend.
void draw_dimension_sign(Canvas& canvas, const Rect& box);

/// Draws an upright line at `x` for stops whose `page` is a height; the figures read upwards, on
/// its left.
void draw_upright_dimensions(Canvas& canvas, std::span<const DimensionStop> stops, double x);

}  // namespace deadshore::viz
