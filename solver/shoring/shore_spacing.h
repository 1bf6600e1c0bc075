#pragma once

#include "solver/shoring/shore_checks.h"

#include <optional>

/// How far apart a dead shore's props may stand where that is left open.
namespace deadshore::solver {

/// A dead shore, what it carries, and by which rules it is checked.
struct ShoreCase {
  const DeadShore& shore;
  const RowLoads& loads;
  const CheckRules& rules;
};

/// Works the shore out with its props at most `most_apart` mm from each other, with extra ones
/// under loads at points.
[[nodiscard]] ShoreAnswer answer_at(const ShoreCase& asked, double most_apart);

/// What was found of the props' spacing.
struct SpacingFound {
  double used = 0.0;              ///< as given, or the largest that passes, or the least bad; mm
  std::optional<double> largest;  ///< at which every check that a number covers passes
  double failing = 0.0;           ///< the next wider that was tried, if any
  Check fails;                    ///< its worst check
};

/// Finds the largest spacing of props that passes: tries from 1.2 m (common practice, no source) in
/// steps of 100 mm down to 300 mm or the width of the props' plates.
/// \pre proposes_places
[[nodiscard]] SpacingFound find_spacing(const ShoreCase& asked);

}  // namespace deadshore::solver
