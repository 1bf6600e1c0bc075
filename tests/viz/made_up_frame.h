#pragma once

#include "solver/result/results.h"

#include <string>

namespace deadshore::viz {

/// A needle of steel UC 152x152x23 on an outer and an inner prop, 50 mm of packing above it and a
/// timber sole under each prop; the ground outside 150 mm below the wall's base.
[[nodiscard]] solver::NeedleFrame made_up_frame(const std::string& name);

/// The frame at a needle under `load` N by the lever rule, without the needle's own weight; the
/// deflection is a half sine with a tip of 1.5 mm. Invented, no solver takes part.
[[nodiscard]] solver::NeedleDesign made_up_design(const solver::NeedleFrame& frame,
                                                  const solver::Job& job, solver::NeedleId needle,
                                                  double load);

/// Puts every needle of a result on the frame, each under its load by hand.
void put_on_frame(solver::JobResult& result, const solver::NeedleFrame& frame);

}  // namespace deadshore::viz
