#pragma once

#include "solver/cracks/damage_scale.h"

#include <span>
#include <vector>

namespace deadshore::solver {

/// Settlement of a place on the soffit's level.
struct SettledPoint {
  double x = 0.0;     ///< along the wall, mm
  double down = 0.0;  ///< settlement, mm, down positive
};

/// A stretch of the profile that bends one way.
struct BentStretch {
  double from = 0.0;        ///< x, mm
  double to = 0.0;          ///< x, mm
  double deflection = 0.0;  ///< greatest distance from the chord between its ends, mm
  Bending bending = Bending::sagging;

  [[nodiscard]] double length() const { return to - from; }
};

/// Cuts a profile (x rising) at its inflections. Which way it bends is judged over stations about
/// one brick's length apart, finer waves belong to the bedding; a stretch shorter than two bricks
/// joins its neighbour. Straight profiles have no stretches.
[[nodiscard]] std::vector<BentStretch> bent_stretches(std::span<const SettledPoint> profile);

}  // namespace deadshore::solver
