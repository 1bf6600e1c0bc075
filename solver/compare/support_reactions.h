#pragma once

#include "solver/model/results.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// What one support carries, N, positive upwards on what it carries.
struct SupportReaction {
  std::string support;
  double force = 0.0;
  bool on_ground =
      true;  ///< one of those that add up to the load in all; false for the beam's ends
};

/// All supports of an analysis by their names: each needle's own; "left pier", "right pier", "base
/// under the cut"; "joists on SHORE"; "beam left end", "beam right end".
[[nodiscard]] std::vector<SupportReaction> reactions_of(const PanelResult& analysis);

}  // namespace deadshore::solver
