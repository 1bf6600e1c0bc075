#pragma once

#include "solver/job/job.h"
#include "solver/panel/support_reactions.h"
#include "solver/result/sensitivity.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace deadshore::solver {

/// One thing changed.
struct Change {
  Unsure what = Unsure::masonry_stiffness;
  std::optional<NeedleId> needle;  ///< of the packing
  std::string words;               ///< "E of the masonry x 0.5", "1 mm lost in the packing of N2"
  Job job;                         ///< with it changed

  [[nodiscard]] bool touches(MasonryModel model) const {
    return what != Unsure::tensile_strength || model == MasonryModel::cracked;
  }
};

/// Everything that is unsure of a job, one thing at a time.
[[nodiscard]] std::vector<Change> changes_of(const Job& job);

/// What one model's reactions come to in one stage.
struct ChangedReactions {
  MasonryModel model = MasonryModel::uncracked;
  StageId stage = {};
  std::vector<SupportReaction> found;      ///< the run's own
  std::vector<SupportReaction> unchanged;  ///< as the job is given, found as `changed` is; empty
                                           ///< where it has no answer
  std::vector<std::vector<SupportReaction>> changed;  ///< for each change; empty where it has no
                                                      ///< answer or does not touch the model
};

/// The bracket of every support that carries something: what was found, and that with each change
/// of `changed` from `unchanged` added; never less than nothing. No supports without `unchanged`.
[[nodiscard]] Sensitivity brackets_of(const ChangedReactions& reactions,
                                      std::span<const Change> changes);

}  // namespace deadshore::solver
