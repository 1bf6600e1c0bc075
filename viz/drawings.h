#pragma once

#include "solver/result/results.h"
#include "viz/page/canvas.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/bands.h"

#include <span>
#include <vector>

namespace deadshore::viz {

/// The wall as cut, as a builder draws it: openings, needles, the permanent beam, loads, dimensions
/// in mm.
[[nodiscard]] Drawing elevation(const solver::JobResult& result);

/// Needles, props, soles and dead shores from above, with the wall cut through below the soffit,
/// outside at the top; the permanent beam and its way in, where the job says how it goes up. What
/// is not given is not drawn and named in the legend.
[[nodiscard]] Drawing plan(const solver::JobResult& result);

/// One scale for all stages and analyses of a job that stand: it reaches the principal compression
/// that one part in a hundred of the wall exceeds, so that peaks at the needles' edges do not wash
/// out the rest.
[[nodiscard]] BandScale compression_scale(const solver::JobResult& result);

/// Bands of principal compression, what needles and piers give, and loose masonry.
[[nodiscard]] Drawing compression_bands(const solver::JobResult& result,
                                        const solver::PanelResult& panel, const ShownStage& stage,
                                        const BandScale& scale);

/// Sizes of stress by which the lines of load flow differ, N/mm2, round numbers.
struct FlowScale {
  double heavy = 0.0;    ///< compression from here on is drawn thickest
  double medium = 0.0;   ///< from here on in the middle thickness
  double least = 0.0;    ///< smaller compression is not drawn
  double tension = 0.0;  ///< nor is tension smaller than this
};

/// One for all analyses that stand: heavy is the round number under the principal compression that
/// 85 parts in a hundred of the wall stay below.
[[nodiscard]] FlowScale flow_scale(const solver::JobResult& result);

/// Lines along the principal stresses, evenly spaced: compression in three thicknesses, tension
/// dashed; over them the dashed spreads of the hand method.
[[nodiscard]] Drawing load_flow(const solver::JobResult& result, const solver::PanelResult& panel,
                                const ShownStage& stage, const FlowScale& scale);

/// The shape in which a wall without equilibrium runs away, and why: no stresses, no reactions.
[[nodiscard]] Drawing runaway(const solver::JobResult& result, const solver::PanelResult& panel,
                              const ShownStage& stage);

/// All stages as small pictures on a landscape page: compression (with cracked masonry where it is
/// analysed), works in place, cracks, loose masonry and the key figures of each.
[[nodiscard]] Drawing stage_strip(const solver::JobResult& result, const BandScale& scale);

/// What each support carries, stage by stage: piers and the masonry of the cut above; needles, beam
/// ends and joists below; the analyses side by side.
[[nodiscard]] Drawing stage_reactions(const solver::JobResult& result);

/// Movement of each node (2 per node, mm) since the work began, where it is followed stage by
/// stage; else since the wall had no load.
[[nodiscard]] std::vector<double> movement_shown(const solver::JobResult& result,
                                                 const solver::PanelResult& panel);

/// Marks the quadrilaterals whose movement that is: there, not loose, and there ever since (a
/// padstone was put where masonry came out).
[[nodiscard]] std::vector<char> masonry_that_moved(const solver::JobResult& result,
                                                   const solver::PanelResult& panel);

/// Largest settlement in that movement of that masonry, mm; 0 for none.
[[nodiscard]] double largest_settlement(const solver::JobResult& result,
                                        const solver::PanelResult& panel);

/// How many times movements at these stages are drawn larger, all alike: 1, 2 or 5 times a power of
/// ten, so that the largest is drawn as no more than a twentieth of the wall.
[[nodiscard]] double movement_factor(const solver::JobResult& result,
                                     std::span<const std::size_t> stages);

/// The shape that the wall has moved to over the one before, with the largest settlement and how
/// far the needles went down.
[[nodiscard]] Drawing deformed_wall(const solver::JobResult& result,
                                    const solver::PanelResult& panel, const ShownStage& stage,
                                    double factor);

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

/// The sum of the hand method for one needle as a picture, small (86 mm wide, so that two stand
/// side by side): its 45-degree spread in the wall, what comes round openings, each line of the sum
/// numbered where it acts, and under it the lines with their loads and the total.
/// \pre result.hand has a sum for each of the job's needles
[[nodiscard]] Drawing needle_spread(const solver::JobResult& result, std::size_t needle);

/// Loads on the needles as bars: hand, uncracked, cracked.
[[nodiscard]] Drawing needle_bars(const solver::JobResult& result);

/// The cross-section through the wall at a needle with a frame: wall, needle, props and ground to
/// scale, with the loads, and the needle's moment, shear and deflection under them.
/// \pre the design's needle is one of the job's and has a frame
[[nodiscard]] Drawing needle_frame(const solver::JobResult& result,
                                   const solver::NeedleDesign& design);

}  // namespace deadshore::viz
