#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"
#include "viz/wall/region.h"

#include <vector>

/// What the 45-degree rule books onto one needle, as shapes to draw: the same strips and landings
/// as the sum itself (solver/spread), so that the picture can be checked beside it.
namespace deadshore::viz {

/// A piece of the wall's face.
struct SpreadPatch {
  Ring outline;     ///< of a trapezium with upright sides, mm
  int lintel = -1;  ///< number in the job's lintels; -1 for masonry
  int over = -1;    ///< number (of `openings_left_by_cut`) of the opening it stands over, of which
                    ///< the needle takes a part; -1: all of it comes straight down
  bool wedge = false;  ///< under the 45-degree lines: by the lever a part comes to the needle
};

/// A stretch of a line load, or a point load's bearing.
struct SpreadStretch {
  int load = 0;  ///< number in the job's line loads or point loads
  mesh::Interval x;
  int over = -1;       ///< as for a patch
  bool wedge = false;  ///< as for a patch
};

struct SpreadParts {
  std::vector<SpreadPatch> patches;
  std::vector<SpreadStretch> line_loads;
  std::vector<SpreadStretch> point_loads;
};

/// \pre `needle` is one of the job's by number
[[nodiscard]] SpreadParts spread_parts(const solver::Job& job, int needle);

}  // namespace deadshore::viz
