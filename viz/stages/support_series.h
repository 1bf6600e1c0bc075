#pragma once

#include "solver/result/results.h"

#include <string>
#include <vector>

namespace deadshore::viz {

/// What one support carries at each stage of one analysis, kN; NaN where it is not there or the
/// wall does not stand.
struct SupportSeries {
  solver::SupportId support;
  std::string name;  ///< for printing
  std::vector<double> values;
};

/// All supports that are there at some stage: bases, needles, the ends of the beam, joists.
[[nodiscard]] std::vector<SupportSeries> support_series(const solver::JobResult& result,
                                                        solver::MasonryModel model);

}  // namespace deadshore::viz
