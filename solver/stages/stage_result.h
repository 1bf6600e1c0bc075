#pragma once

#include "solver/job/stage.h"
#include "solver/job/stage_state.h"
#include "solver/limit/stage_safety.h"
#include "solver/panel/panel_result.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// One stage of the work and what every analysis of it answers.
struct StageResult {
  std::string name;  ///< "cut" for an at-once analysis
  std::vector<PanelResult> analyses;
  double day = 0.0;
  std::vector<Operation> operations = {};  ///< what was done to come to it
  StageState state = {};                   ///< what is there and what acts after it
  std::optional<StageSafety> safety = {};  ///< staged analyses alone

  /// Whether every analysis finds equilibrium.
  [[nodiscard]] bool stands() const { return std::ranges::all_of(analyses, &PanelResult::stands); }
};

}  // namespace deadshore::solver
