#pragma once

#include "viz/page/legend.h"
#include "viz/wall/wall_view.h"

#include <vector>

/// The needles' props as the wall's elevation shows them.
namespace deadshore::viz {

/// Deepest level that an upright prop stands at, mm above the base: 0 or less.
[[nodiscard]] double deepest_foot(const solver::Job& job);

/// Under each needle with a frame its props that act up, with head, tubes, base and sole, at their
/// levels; those outside and inside stand behind each other.
void draw_needle_props(Canvas& canvas, const WallView& view, const solver::Job& job);

/// One entry where there are any.
[[nodiscard]] std::vector<LegendEntry> prop_legend(const solver::Job& job);

}  // namespace deadshore::viz
