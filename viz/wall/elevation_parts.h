#pragma once

#include "solver/job/stage_state.h"
#include "viz/page/legend.h"
#include "viz/wall/wall_view.h"

#include <vector>

/// What the elevations of the note and of the site sheet have in common.
///
/// The needles' props as the wall's elevation shows them.
namespace deadshore::viz {

/// A hint of courses (75 mm) and of stretchers (225 mm) in half bond, coarser on a small page.
void draw_coursing(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                   const std::vector<Loop>& outline);

/// The cut's jambs and soffit, dashed.
void draw_cut(Canvas& canvas, const WallView& view, const solver::Job& job);
[[nodiscard]] Pen cut_pen();

/// What there is in the end: the cut out, all needles still in, the permanent beam packed.
[[nodiscard]] solver::StageState works_in_the_end(const solver::Job& job);

/// Deepest level that an upright prop stands at, mm above the base: 0 or less.
[[nodiscard]] double deepest_foot(const solver::Job& job);

/// Under each needle with a frame its props that act up, with head, tubes, base and sole, at their
/// levels; those outside and inside stand behind each other.
void draw_needle_props(Canvas& canvas, const WallView& view, const solver::Job& job);

/// One entry where there are any.
[[nodiscard]] std::vector<LegendEntry> prop_legend(const solver::Job& job);

}  // namespace deadshore::viz
