#pragma once

#include "solver/job/job.h"
#include "viz/wall/wall_view.h"

#include <vector>

namespace deadshore::viz {

/// Height above the wall's top that the loads and their labels need, points.
[[nodiscard]] double room_for_loads(const solver::Job& job);

/// How far each of the job's line loads stands above its level, so that those at one level stand on
/// each other, in rows `pitch` apart.
[[nodiscard]] std::vector<double> row_lifts(const solver::Job& job, double pitch);

/// Rows of arrows for line loads, single arrows for point loads, each with name and values
/// (dead + imposed). Loads at one level stand on each other; labels go where there is room.
void draw_loads(Canvas& canvas, const WallView& view, const solver::Job& job, LabelRoom& room);

/// The pens of the arrows, for a legend.
/// Where a line load bears at `x`, mm above the base.
[[nodiscard]] double level_at(const solver::Job& job, const solver::LineLoad& load, double x);

[[nodiscard]] Pen line_load_pen();
[[nodiscard]] Pen point_load_pen();

}  // namespace deadshore::viz
