#pragma once

#include "solver/job/stage_state.h"
#include "viz/wall/wall_view.h"

#include <vector>

/// What the elevations of the note and of the site sheet have in common.
namespace deadshore::viz {

/// A hint of courses (75 mm) and of stretchers (225 mm) in half bond, coarser on a small page.
void draw_coursing(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                   const std::vector<Loop>& outline);

/// The cut's jambs and soffit, dashed.
void draw_cut(Canvas& canvas, const WallView& view, const solver::Job& job);
[[nodiscard]] Pen cut_pen();

/// What there is in the end: the cut out, all needles still in, the permanent beam packed.
[[nodiscard]] solver::StageState works_in_the_end(const solver::Job& job);

}  // namespace deadshore::viz
