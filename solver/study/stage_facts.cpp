#include "solver/study/stage_facts.h"

#include "solver/study/envelope.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {
namespace {

double larger(double known, double value) {
  return std::isnan(known) ? value : std::max(known, value);
}

void take_in(StageFacts& facts, const PanelResult& analysis) {
  for (const NeedleReaction& needle : analysis.needles) {
    if (needle.force > 0.0 && !(needle.force <= facts.needle_load)) {
      facts.needle = needle.name;
      facts.needle_load = needle.force;
    }
  }
  facts.settlement = larger(facts.settlement, analysis.max_settlement);
  if (analysis.model == MasonryModel::cracked) {
    facts.loose_weight = larger(facts.loose_weight, analysis.loose_weight());
    const double width = analysis.cracks.empty() ? 0.0 : analysis.cracks.front().width;
    facts.widest_crack = larger(facts.widest_crack, width);
  }
  if (analysis.damage &&
      (facts.damage == nullptr || category_of(*analysis.damage) > category_of(*facts.damage))) {
    facts.damage = &*analysis.damage;
  }
}

/// The stage of the worst check that could be made.
const StageResult* stage_of_worst_check(const JobResult& result) {
  const auto worst =
      std::ranges::find_if(result.checks, [](const Check& check) { return !check.not_verified; });
  return worst == result.checks.end() ? nullptr : find_stage(result, worst->stage);
}

const StageResult* stage_of_heaviest_needle(const JobResult& result) {
  const StageResult* heaviest = nullptr;
  double load = -1.0;
  for (const StageResult& stage : result.stages) {
    const StageFacts facts = facts_of(stage);
    if (facts.needle_load > load) {
      load = facts.needle_load;
      heaviest = &stage;
    }
  }
  return heaviest;
}

}  // namespace

StageFacts facts_of(const StageResult& stage) {
  StageFacts facts;
  if (stage.safety) facts.factor = stage.safety->factor;
  for (const PanelResult& analysis : stage.analyses) {
    if (analysis.stands()) {
      take_in(facts, analysis);
    } else {
      facts.stands = false;
    }
  }
  return facts;
}

int category_of(const Damage& damage) {
  return std::max(damage.by_strain, damage.by_width);
}

const PanelResult* find_analysis(const StageResult& stage, MasonryModel model) {
  const auto found = std::ranges::find(stage.analyses, model, &PanelResult::model);
  return found == stage.analyses.end() ? nullptr : &*found;
}

StageAnalysis first_failure(const JobResult& result, MasonryModel model) {
  for (const StageResult& stage : result.stages) {
    const PanelResult* analysis = find_analysis(stage, model);
    if (analysis != nullptr && !analysis->stands()) return {&stage, analysis};
  }
  return {};
}

WorstDamage worst_damage(const JobResult& result) {
  WorstDamage worst;
  for (const StageResult& stage : result.stages) {
    const Damage* damage = facts_of(stage).damage;
    if (damage == nullptr) continue;
    if (worst.damage == nullptr || category_of(*damage) > category_of(*worst.damage)) {
      worst = {&stage, damage};
    }
  }
  return worst;
}

const StageResult* stage_of_least_factor(const JobResult& result) {
  const StageResult* least = nullptr;
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) continue;
    if (least == nullptr || stage.safety->factor < least->safety->factor) least = &stage;
  }
  return least;
}

const StageResult* stage_of_most_loose_without_tension(const JobResult& result) {
  constexpr double one_brick = 30.0;  // N; less is not worth a warning
  const StageResult* most = nullptr;
  double weight = one_brick;
  for (const StageResult& stage : result.stages) {
    if (stage.safety && stage.safety->loose_weight > weight) {
      weight = stage.safety->loose_weight;
      most = &stage;
    }
  }
  return most;
}

const StageResult* comparable_stage(const JobResult& result) {
  const StageResult* stage = compared_stage(result);
  return stage != nullptr && stage->state.cut_out ? stage : nullptr;
}

const StageResult* governing_stage(const JobResult& result) {
  for (const StageResult& stage : result.stages) {
    if (!stage.stands()) return &stage;
  }
  if (const StageResult* stage = stage_of_worst_check(result)) return stage;
  if (const StageResult* stage = stage_of_heaviest_needle(result)) return stage;
  return result.stages.empty() ? nullptr : &result.stages.back();
}

const StageResult* find_stage(const JobResult& result, const std::string& name) {
  const auto found = std::ranges::find(result.stages, name, &StageResult::name);
  return found == result.stages.end() ? nullptr : &*found;
}

}  // namespace deadshore::solver
