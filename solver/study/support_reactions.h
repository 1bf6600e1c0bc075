#pragma once

#include "solver/panel/panel_result.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Supports among which a load is shared: those under the wall's soffit and its joists, the bases
/// of piers and of the masonry to be cut, and the ends of the permanent beam.
enum class SupportGroup { under_wall, bases, beam_ends };

/// What one support carries, N, positive upwards on what it carries.
struct SupportReaction {
  std::string support;
  double force = 0.0;
  SupportGroup group = SupportGroup::under_wall;
};

/// All supports of an analysis by their names: each needle's own; "left pier", "right pier", "base
/// under the cut"; "joists on SHORE"; "beam left end", "beam right end".
[[nodiscard]] std::vector<SupportReaction> reactions_of(const PanelResult& analysis);

}  // namespace deadshore::solver
