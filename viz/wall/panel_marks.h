#pragma once

#include "solver/result/results.h"
#include "viz/page/canvas.h"
#include "viz/page/labels.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/wall_view.h"

#include <string>
#include <vector>

/// Marks that several figures of one analysis share.
namespace deadshore::viz {

/// "cracked masonry" or "uncracked masonry".
[[nodiscard]] std::string masonry_words(solver::MasonryModel model);

/// The heading with the stage's name after it, if there is an order of work.
[[nodiscard]] std::string heading_with(const std::string& heading, const ShownStage& stage);

/// Margins round the wall that leave room for reactions below and thrusts at held ends.
[[nodiscard]] Margins reaction_margins(const solver::Job& job);

/// What needles, beam, piers and the masonry of the cut give to the wall, kN, with arrows; thrusts
/// at held ends.
void draw_reactions(Canvas& canvas, const WallView& view, const solver::Job& job,
                    const solver::PanelResult& panel, const solver::StageState& works,
                    LabelRoom& room);

/// Needles that are in, with their names alone.
void draw_named_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                        const solver::StageState& works, LabelRoom& room);

/// The needles' texts clear of the permanent beam, and on plates while the cut is not out.
[[nodiscard]] NeedleSetting setting_of(const WallView& view, const solver::Job& job,
                                       const solver::StageState& works);

/// Hatches loose masonry.
void draw_loose(Canvas& canvas, const WallView& view, const mesh::QuadMesh& mesh,
                const solver::PanelResult& panel);
/// Labels each loose patch with its weight, where there is room.
void label_loose(Canvas& canvas, const WallView& view, const solver::PanelResult& panel,
                 LabelRoom& room);

[[nodiscard]] Hatch loose_hatch();
[[nodiscard]] Pen reaction_pen();

}  // namespace deadshore::viz
