#pragma once

#include "viz/page/labels.h"
#include "viz/page/legend.h"
#include "viz/plan/plan_view.h"

#include <vector>

/// The parts of the plan of needles and props.
namespace deadshore::viz {

/// The wall cut through half way up to the soffit, its faces dashed where it is open.
void draw_wall_band(Canvas& canvas, const PlanPage& page, const solver::Job& job);

/// Soles under all props, head plates of dead shores.
void draw_soles(Canvas& canvas, const PlanPage& page, const PlanParts& parts, LabelRoom& room);

/// Needles from above, then props and uprights, which show through them.
void draw_needles_from_above(Canvas& canvas, const PlanPage& page, const PlanParts& parts,
                             LabelRoom& room);

/// The permanent beam in its place, and the pockets that it goes into where the job has their
/// depth. \pre job.beam
void draw_beam_from_above(Canvas& canvas, const PlanPage& page, const solver::Job& job);

/// The strip along which the beam comes.
void draw_lane(Canvas& canvas, const PlanPage& page, const PlanWay& way);

/// Which way it comes, and stands and lifters. \pre job.beam, job.lifting
void draw_lifting(Canvas& canvas, const PlanPage& page, const PlanWay& way, const solver::Job& job,
                  LabelRoom& room);

/// An entry for each mark that is there, and a sentence for what is not given.
[[nodiscard]] std::vector<LegendEntry> plan_legend(const solver::Job& job, const PlanParts& parts);

/// Signs that marks and legend share. A prop without a tube is a timber.
void draw_prop_sign(Canvas& canvas, const Rect& box, double radius, bool holds_down);
void draw_sole_sign(Canvas& canvas, const Rect& box);
void draw_stand_sign(Canvas& canvas, const Rect& box);
/// The mast at one side of the box, the forks towards the other.
void draw_lifter_sign(Canvas& canvas, const Rect& box, bool mast_on_top);
void draw_wall_sign(Canvas& canvas, const Rect& box);

[[nodiscard]] Pen needle_pen();
[[nodiscard]] Pen head_plate_pen();
[[nodiscard]] Pen beam_place_pen();
[[nodiscard]] Pen way_pen();
inline const Pen plan_edge_pen{.colour = ink, .width = 0.6};
inline constexpr double lane_shade = 0.13;  ///< of the colour of tension

}  // namespace deadshore::viz
