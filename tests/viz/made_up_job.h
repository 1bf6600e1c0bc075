#pragma once

#include "solver/result/results.h"

namespace deadshore::viz {

/// An invented wall, 6 m by 5.2 m, cut 3.4 m wide under 2.2 m, with one window, three needles and
/// four loads; both analyses, with stresses by formula instead of an analysis: uniform gravity, and
/// under it the radial stresses of a point force at each needle (A. Flamant 1892, from memory,
/// unverified: only their shape matters here). No solver takes part.
[[nodiscard]] solver::JobResult made_up_result();

/// Squares of `size` mm on a rectangle of `columns` by `rows`, without those whose middle lies
/// in `hole`.
struct Hole {
  mesh::Interval x;
  mesh::Interval y;
};
[[nodiscard]] mesh::QuadMesh squares(int columns, int rows, double size,
                                     const std::vector<Hole>& holes = {});

}  // namespace deadshore::viz
