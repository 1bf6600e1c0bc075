#pragma once

#include "solver/result/results.h"

#include <string>

namespace deadshore::io {

/// The sheet that goes on the wall on site: a self-contained XHTML page without script, made to be
/// printed on A4 upright. Elevation with marks, numbered steps with hold points and boxes to tick,
/// needles and props, curing times, marks to watch with stop values, weights to lift, cautions and
/// blanks for who answers for it. A job whose wall does not stand gets no steps to work by.
[[nodiscard]] std::string sheet_html(const solver::JobResult& result);

}  // namespace deadshore::io
