#pragma once

#include "solver/model/results.h"
#include "viz/bands.h"
#include "viz/canvas.h"
#include "viz/stage_works.h"

namespace deadshore::viz {

/// The wall as cut, as a builder draws it: openings, needles, the permanent beam, loads, dimensions
/// in mm.
[[nodiscard]] Drawing elevation(const solver::JobResult& result);

/// One scale for all stages and analyses of a job that stand: it reaches the principal compression
/// that one part in a hundred of the wall exceeds, so that peaks at the needles' edges do not wash
/// out the rest.
[[nodiscard]] BandScale compression_scale(const solver::JobResult& result);

/// Bands of principal compression, what needles and piers give, and loose masonry.
[[nodiscard]] Drawing compression_bands(const solver::JobResult& result,
                                        const solver::PanelResult& panel, const ShownStage& stage,
                                        const BandScale& scale);

/// The principal compression that 85 parts in a hundred of the wall stay below, rounded up; over
/// all analyses that stand. Crosses are drawn to this scale.
[[nodiscard]] double full_length_stress(const solver::JobResult& result);

/// Crosses of principal stress on an even grid, under the dashed spreads of the hand method.
/// `full` N/mm2 is drawn at full length, and so is what is over it.
[[nodiscard]] Drawing load_flow(const solver::JobResult& result, const solver::PanelResult& panel,
                                const ShownStage& stage, double full);

/// The shape in which a wall without equilibrium runs away, and why: no stresses, no reactions.
[[nodiscard]] Drawing runaway(const solver::JobResult& result, const solver::PanelResult& panel,
                              const ShownStage& stage);

/// All stages as small pictures on a landscape page: compression (with cracked masonry where it is
/// analysed), works in place, cracks, loose masonry and the key figures of each.
[[nodiscard]] Drawing stage_strip(const solver::JobResult& result, const BandScale& scale);

/// What each support carries, stage by stage: piers and the masonry of the cut above; needles, beam
/// ends and joists below; the analyses side by side.
[[nodiscard]] Drawing stage_reactions(const solver::JobResult& result);

/// The cracks of one analysis at their places, the widest with their widths.
[[nodiscard]] Drawing crack_map(const solver::JobResult& result, const solver::PanelResult& panel,
                                const ShownStage& stage);

/// The wall moved along the mechanism that would end it, and the masonry that has no support.
/// \pre the stage has a safety with a mechanism
[[nodiscard]] Drawing mechanism(const solver::JobResult& result, const solver::StageResult& stage,
                                const ShownStage& shown);

/// How far the mechanism's largest movement is drawn, mm of the wall.
[[nodiscard]] double mechanism_reach(const solver::Job& job);

/// The permanent beam: load from the packing, bending moment, shear force and deflection at this
/// stage, beside those of the hand method.
/// \pre job.beam, panel.beam
[[nodiscard]] Drawing beam_diagrams(const solver::JobResult& result,
                                    const solver::PanelResult& panel, const ShownStage& stage);

/// Loads on the needles as bars: hand, uncracked, cracked.
[[nodiscard]] Drawing needle_bars(const solver::JobResult& result);

/// The cross-section through the wall at a needle with a frame: wall, needle, props and ground to
/// scale, with the loads, and the needle's moment, shear and deflection under them.
/// \pre the design's needle is one of the job's and has a frame
[[nodiscard]] Drawing needle_frame(const solver::JobResult& result,
                                   const solver::NeedleDesign& design);

}  // namespace deadshore::viz
