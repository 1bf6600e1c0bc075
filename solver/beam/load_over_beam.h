#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <vector>

/// What stands straight over the permanent beam, by hand: no arching, no spread. N, mm.
namespace deadshore::solver {

/// A characteristic load: N, or N per mm of the beam.
struct BeamLoad {
  double dead = 0.0;
  double imposed = 0.0;

  /// Dead and imposed load together.
  [[nodiscard]] double total() const { return dead + imposed; }
  BeamLoad& operator+=(const BeamLoad& other);
};
[[nodiscard]] BeamLoad operator+(BeamLoad a, const BeamLoad& b);
[[nodiscard]] BeamLoad operator*(double factor, const BeamLoad& load);

/// A stretch of the beam on which the load varies linearly.
struct LoadStretch {
  mesh::Interval x;  ///< mm
  BeamLoad at_from;  ///< N/mm
  BeamLoad at_to;    ///< N/mm

  /// All of it, N.
  [[nodiscard]] BeamLoad sum() const { return 0.5 * x.length() * (at_from + at_to); }
};

/// What an opening that reaches past the beam's end brings onto the beam at its inner jamb.
struct JambLoad {
  double x = 0.0;  ///< mm
  BeamLoad load;   ///< N
};

/// The loads on the permanent beam by hand.
struct LoadOverBeam {
  std::vector<LoadStretch> stretches;  ///< from the beam's left end to its right end, without gaps
  std::vector<JambLoad> jambs;         ///< at points

  /// All of it, N.
  [[nodiscard]] BeamLoad sum() const;
};

/// Everything straight over the beam from the soffit up: masonry less openings, lintels, line loads
/// and point loads; without the beam's own weight. What stands over an opening that reaches past an
/// end of the beam goes to its two jambs by the lever rule, the outer of which is the pier's.
/// Exact for straight outlines and flat heads; arched heads count as polygons of the same area.
/// \pre job.beam
[[nodiscard]] LoadOverBeam load_over_beam(const Job& job);

}  // namespace deadshore::solver
