#pragma once

#include "mesh/plane.h"

#include <span>

namespace deadshore::solver {

/// A stretch of the line across a crack inside one element, mm from a point of the crack, with the
/// crack strain along the line.
struct Piece {
  mesh::Interval s;
  double strain = 0.0;
};

/// What opens inside a window, mm.
[[nodiscard]] double opened_in(std::span<const Piece> pieces, mesh::Interval window);

/// The place of a window of this length that holds s = 0 and in which most opens.
[[nodiscard]] mesh::Interval best_window(std::span<const Piece> pieces, double length);

}  // namespace deadshore::solver
