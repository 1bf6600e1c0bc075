#pragma once

#include "solver/result/result_stages.h"
#include "solver/result/results.h"

#include <functional>
#include <string>

/// What to say first of each stage of the work.
namespace deadshore::solver {

/// The worst of one stage over those of its analyses that stand. N, mm; NaN where nothing is known.
struct StageFacts {
  bool stands = true;               ///< in every analysis
  std::string needle;               ///< the most loaded; empty where none carries anything
  double needle_load = not_known;   ///< what it carries
  double settlement = not_known;    ///< largest downward movement
  double widest_crack = not_known;  ///< 0 where cracked masonry has none
  double loose_weight = not_known;  ///< that would fall, by the cracked analysis
  double factor = not_known;        ///< on all loads, without tension
  const Damage* damage = nullptr;   ///< the worse; null where it is not known
};
[[nodiscard]] StageFacts facts_of(const StageResult& stage);

/// 0 (negligible) to 5 (very severe), the worse of strain and crack width.
[[nodiscard]] int category_of(const Damage& damage);

/// Whether a factor without tension leaves the wall standing on its compression alone.
[[nodiscard]] constexpr bool is_safe_without_tension(double factor) {
  return factor >= 1.0;
}

/// The analysis of a stage under one model; null where it was not made.
[[nodiscard]] const PanelResult* find_analysis(const StageResult& stage, MasonryModel model);

struct StageAnalysis {
  const StageResult* stage = nullptr;
  const PanelResult* analysis = nullptr;  ///< null where there is none
};

/// The first analysis of one model in which the wall does not stand.
[[nodiscard]] StageAnalysis first_failure(const JobResult& result, MasonryModel model);

/// Of all analyses of one model that stand, the first in which `measure` is largest.
template <class Measure>
[[nodiscard]] StageAnalysis worst_analysis(const JobResult& result, MasonryModel model,
                                           const Measure& measure) {
  StageAnalysis worst;
  for (const StageResult& stage : result.stages) {
    const PanelResult* analysis = find_analysis(stage, model);
    if (analysis == nullptr || !analysis->stands()) continue;
    if (worst.analysis == nullptr ||
        std::invoke(measure, *analysis) > std::invoke(measure, *worst.analysis)) {
      worst = {&stage, analysis};
    }
  }
  return worst;
}

struct WorstDamage {
  const StageResult* stage = nullptr;
  const Damage* damage = nullptr;  ///< null where it is not known
};
[[nodiscard]] WorstDamage worst_damage(const JobResult& result);

/// Null where no stage has a factor.
[[nodiscard]] const StageResult* stage_of_least_factor(const JobResult& result);

/// Null where nothing hangs on tension alone.
[[nodiscard]] const StageResult* stage_of_most_loose_without_tension(const JobResult& result);

/// The stage that someone must look at first: the one in which the wall does not stand; else that
/// of the worst check; else that of the most loaded needle. Null where there is no stage.
[[nodiscard]] const StageResult* governing_stage(const JobResult& result);

/// The stage that the hand method may be set against: the one the solver compares, if the wall is
/// cut in it. Null where the work did not come so far.
[[nodiscard]] const StageResult* comparable_stage(const JobResult& result);

/// Null where there is none with this name.
[[nodiscard]] const StageResult* find_stage(const JobResult& result, const std::string& name);

}  // namespace deadshore::solver
