#pragma once

#include "solver/result/results.h"

#include <string>
#include <vector>

namespace deadshore::viz {

enum class SupportKind { base, needle, beam_end, joists };

/// What one support carries at each stage of one analysis, kN; NaN where it is not there or the
/// wall does not stand.
struct SupportSeries {
  SupportKind kind = SupportKind::base;
  std::string name;  ///< "left pier", "N1", "beam, left end", "joists, SHORE"
  std::vector<double> values;
};

/// All supports that are there at some stage, in the order of the kinds.
[[nodiscard]] std::vector<SupportSeries> support_series(const solver::JobResult& result,
                                                        solver::MasonryModel model);

}  // namespace deadshore::viz
