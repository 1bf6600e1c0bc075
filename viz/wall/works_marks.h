#pragma once

#include "solver/job/stage_state.h"
#include "solver/result/results.h"
#include "viz/page/legend.h"
#include "viz/wall/wall_view.h"

#include <vector>

/// What the work brings into the wall and takes out of it, in its elevation.
namespace deadshore::viz {

/// Padstones, beam and packing, as far as they are in place.
void draw_permanent_works(Canvas& canvas, const WallView& view, const solver::Job& job,
                          const solver::StageState& works);

/// Lintels that are there.
void draw_lintels_there(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                        const solver::StageState& works, LintelStyle style);

/// Openings and lintels that the cut takes out, as thin dashed lines.
void draw_taken_out(Canvas& canvas, const WallView& view, const mesh::WallShape& wall);
[[nodiscard]] Pen taken_out_pen();

/// A row of props at the level of each load that a tight dead shore carries; what their joists push
/// on the wall beside it, if an analysis is given.
void draw_dead_shores(Canvas& canvas, const WallView& view, const solver::Job& job,
                      const solver::StageState& works, const solver::PanelResult* panel,
                      LabelRoom& room);

/// Needles without their texts: those that are in, and as empty boxes those that were taken out.
void draw_bare_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                       const solver::StageState& works);

/// The outline of a needle that was taken out.
[[nodiscard]] Pen taken_away_pen();

/// Legend entries for what is there.
[[nodiscard]] std::vector<LegendEntry> works_legend(const solver::Job& job,
                                                    const solver::StageState& works);

inline constexpr double smallest_shown_force = 50.0;  ///< N: what one decimal in kN can show

}  // namespace deadshore::viz
