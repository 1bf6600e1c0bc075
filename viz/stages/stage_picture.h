#pragma once

#include "solver/result/results.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/bands.h"
#include "viz/wall/wall_view.h"

#include <vector>

/// The wall at one stage without a word in it: for many pictures side by side or one over another.
namespace deadshore::viz {

/// All that it takes to draw one.
struct StagePicture {
  solver::StageState works;
  bool stands = false;
  Region outline;
  std::vector<Region> bands;  ///< of principal compression; none where it does not stand
  Region loose;
  std::vector<solver::Crack> cracks;
};

/// `panel` may be null: the stage was not analysed.
[[nodiscard]] StagePicture stage_picture(const solver::JobResult& result,
                                         const solver::PanelResult* panel, const ShownStage& shown,
                                         const BandScale& scale);

/// Compression, loose masonry, cracks, what is in place and what was taken out.
void draw_stage_picture(Canvas& canvas, const WallView& view, const StagePicture& picture,
                        const solver::Job& job, const BandScale& scale);

}  // namespace deadshore::viz
