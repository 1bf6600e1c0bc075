#pragma once

#include "solver/shoring/shore_loads.h"

#include <string>
#include <vector>

/// Where a dead shore's props or studs stand. mm; x along the wall.
namespace deadshore::solver {

/// A prop or a stud in its place.
struct Upright {
  std::string mark;       ///< "floor shore P3", "floor shore stud 4"
  double x = 0.0;         ///< its middle
  std::string extra_for;  ///< the point load that it was put under; empty: one of the row
  int count = 1;          ///< 2: a stud that is doubled
};

/// Farthest apart that props are ever proposed, mm: common practice, no source.
inline constexpr double widest_spacing = 1200.0;
/// Steps in which spacings are tried, mm.
inline constexpr double spacing_step = 100.0;
/// Farthest from the row's end that the nearest prop is proposed, mm: common practice, no source.
inline constexpr double farthest_from_end = 150.0;

/// Uprights from left to right. Props: at their places; or, proposed, evenly and at most
/// `most_apart`, with one more under each point load that no prop stands within half a joist
/// spacing of. Studs: at their spacing and at the row's end, with one more under each point load; a
/// stud already within its own width of it is doubled.
[[nodiscard]] std::vector<Upright> uprights_of(const DeadShore& shore, const RowLoads& loads,
                                               double most_apart);

/// The same, with no regard to point loads: what the row would be without them.
[[nodiscard]] std::vector<Upright> plain_row(const DeadShore& shore, double most_apart);

}  // namespace deadshore::solver
