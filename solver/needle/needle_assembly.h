#pragma once

#include "solver/frame/frame.h"
#include "solver/needle/needle_analysis.h"

#include <vector>

/// A needle on its props, put together as a plane frame.
namespace deadshore::solver {

/// The plane frame of a needle, and which of its members are what.
struct NeedleAssembly {
  Frame frame;                      ///< x is the job's z, y up from the wall's base
  std::vector<int> needle_members;  ///< in order of z
  std::vector<int> prop_members;    ///< of each prop, the one at the needle
};

/// Puts a needle and its props together as a plane frame, as `analyse_needle` describes it.
/// \throws MemberError for a prop outside its range
[[nodiscard]] NeedleAssembly assemble(const NeedleFrame& needle, const NeedleSite& site,
                                      const NeedleLoad& load);

/// Stiffness of what a prop's foot presses on, N/mm: the sole across its grain, then the ground.
[[nodiscard]] double footing_stiffness(const Footing& footing);

/// Stiffness of two springs in series, in their unit.
[[nodiscard]] inline double in_series(double a, double b) {
  return 1.0 / (1.0 / a + 1.0 / b);
}

}  // namespace deadshore::solver
