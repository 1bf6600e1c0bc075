#pragma once

#include "mesh/plane.h"

#include <span>

namespace deadshore::solver {

/// A stretch of the line across a crack inside one element.
struct Piece {
  mesh::Interval s;     ///< along the line from a point of the crack, mm
  double strain = 0.0;  ///< crack strain along the line
};

/// Opening within a window, mm: the integral of the crack strain over it.
[[nodiscard]] double opened_in(std::span<const Piece> pieces, mesh::Interval window);

/// The window of this length, among those that hold s = 0, with the largest opening.
/// \param length mm
[[nodiscard]] mesh::Interval best_window(std::span<const Piece> pieces, double length);

}  // namespace deadshore::solver
