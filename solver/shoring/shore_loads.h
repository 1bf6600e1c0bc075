#pragma once

#include "solver/job/permanent_works.h"
#include "solver/shoring/shore_design.h"

#include <vector>

/// What comes down on a dead shore's head plate. N, mm; x along the wall.
namespace deadshore::solver {

/// What the shore takes over what the wall loses, by moments about the joists' far bearing:
/// joist_span / (joist_span - distance).
[[nodiscard]] double lever_of(const ShoreFrame& frame);

/// An even load on a stretch of the row, at the head plate.
struct RowStretch {
  mesh::Interval x;      ///< mm
  double dead = 0.0;     ///< N/mm
  double imposed = 0.0;  ///< N/mm
};

/// Loads as far as they stand over the row: at the head plate, so times `lever_of`, and whole, as
/// if the shore's share of them were 1.
struct RowLoads {
  std::vector<RowStretch> stretches;  ///< of the line loads
  std::vector<HeadLoad> points;       ///< of the point loads, at their middles, from left to right
  std::vector<std::string> beside;    ///< loads that reach beyond the row, or stand beside it
};

/// What comes down on a dead shore's head plate.
/// \pre the shore has a frame
[[nodiscard]] RowLoads loads_on_row(const Job& job, const DeadShore& shore);

/// The loads as joists bring them onto the plate, with one joist at x = `joist` and others at every
/// spacing from there: each takes half a spacing on either side; one that would stand beyond an end
/// of the plate stands at it. From left to right.
[[nodiscard]] std::vector<HeadLoad> head_loads(const RowLoads& loads, const ShoreFrame& frame,
                                               double joist);

/// All of it, dead and imposed, N.
[[nodiscard]] double sum_of(const std::vector<HeadLoad>& loads);

}  // namespace deadshore::solver
