#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"
#include "solver/needle/needle_analysis.h"

#include <limits>
#include <string>
#include <vector>

namespace deadshore::solver {

/// What a needle carries: the largest characteristic load found by any method, and how much of it
/// is permanent (from the hand sum).
struct NeedleDemand {
  std::string needle;       ///< its name
  std::string method;       ///< by which the load was found, as `EnvelopedLoad::method`
  std::string stage;        ///< in which it is that large
  double load = 0.0;        ///< N, dead + imposed
  double dead_share = 1.0;  ///< 0 to 1
};

/// The masonry above a needle, for EN 1996-1-1 6.1.3.
struct MasonryAbove {
  double f_k = 0.0;        ///< characteristic compressive strength, N/mm2
  double near_side = 0.0;  ///< from the bearing to the nearer end of the wall or half way to the
                           ///< next needle, mm
  double far_side = 0.0;   ///< the same to the other side, mm
  double height = 0.0;     ///< of masonry above the soffit at the needle, mm

  /// Along the wall, as the job gives it: the needle bears on no more, however wide it is, mm.
  double bearing_width = std::numeric_limits<double>::infinity();

  /// Part of the needle's load that is not the wall's own weight, 0 to 1: it may all stand on one
  /// leaf of a cavity wall.
  double share_of_loads = 0.0;
};

/// Length along the wall over which a needle and the masonry above it bear on each other, mm.
[[nodiscard]] double bearing_of(const NeedleFrame& frame, const MasonryAbove& masonry);

/// Every check of one needle, its props, their soles and the ground, and the masonry above, worst
/// first. Where the frame cannot stand under its load, a failing row names load and limit instead.
/// Members and stage are filled in: "N1", "N1 inner prop", "N1 outer sole".
[[nodiscard]] std::vector<Check> check_needle(const NeedleFrame& frame, const NeedleSite& site,
                                              const NeedleDemand& demand,
                                              const MasonryAbove& masonry, const CheckRules& rules);

}  // namespace deadshore::solver
