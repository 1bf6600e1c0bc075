#pragma once

#include "solver/spread/spread.h"
#include "viz/page/labels.h"
#include "viz/spread/spread_parts.h"
#include "viz/wall/wall_view.h"

#include <string>
#include <vector>

/// The parts of a needle's hand sum as a picture.
namespace deadshore::viz {

/// Arrows of a load, and rows of them on each other, points.
inline constexpr double spread_arrow = 9.0;
inline constexpr double spread_row_pitch = spread_arrow + 11.0;

/// Radius of a numbered disc, points.
inline constexpr double disc_radius = 5.0;

void draw_disc(Canvas& canvas, PagePoint at, int number);

/// What comes straight down, and what stands over openings.
inline constexpr double spread_shade = 0.22;
[[nodiscard]] Hatch over_opening_hatch();

/// Of what lies under the 45-degree lines.
[[nodiscard]] Hatch wedge_hatch();
void fill_patches(Canvas& canvas, const WallView& view, const SpreadParts& parts);

/// The loads that come to the needle; those over an opening with a dashed bar.
void draw_spread_loads(Canvas& canvas, const WallView& view, const solver::Job& job,
                       const SpreadParts& parts, LabelRoom& room);

/// Puts the number of each line of the sum at every place that it stands for.
void number_spread(Canvas& canvas, const WallView& view, const solver::Job& job,
                   const SpreadParts& parts, const solver::SpreadSum& sum, LabelRoom& room);

/// The sum line by line with its numbers, between two margins.
[[nodiscard]] double spread_table_height(const solver::SpreadSum& sum, const solver::Job& job,
                                         double width);
void draw_spread_table(Canvas& canvas, const solver::SpreadSum& sum, const solver::Job& job,
                       PagePoint corner, double width);

/// "23.67 kN"
[[nodiscard]] std::string exact_kilonewtons(double newtons);

}  // namespace deadshore::viz
