#include "solver/study/envelope.h"

#include "solver/result/sensitivity_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {
namespace {

void raise(std::vector<EnvelopedLoad>& envelope, const PanelResult& analysis, StageId stage) {
  const std::size_t count = std::min(envelope.size(), analysis.needles.size());
  for (std::size_t i = 0; i < count; ++i) {
    const double force = analysis.needles[i].force;
    if (force > envelope[i].load)
      envelope[i] = {NeedleId{i}, force, to_string(analysis.model), stage};
  }
}

void raise(EnvelopedLoad& entry, double load, const std::string& method,
           std::optional<StageId> stage) {
  if (load > entry.load) entry = {entry.needle, load, method, stage};
}

/// What the needles carry if none of them gives, and what they may carry for what nobody knows.
void raise_by_what_is_not_known(const JobResult& result, std::optional<StageId> compared,
                                std::vector<EnvelopedLoad>& envelope) {
  for (std::size_t i = 0; i < std::min(envelope.size(), result.comparison.size()); ++i)
    raise(envelope[i], result.comparison[i].unyielding, "uncracked, if no needle gave", compared);
  for (const Sensitivity& sensitivity : result.sensitivities) {
    for (const SupportSensitivity& support : sensitivity.supports) {
      if (support.support.kind != SupportKind::needle) continue;
      for (const ReactionBracket& bracket : support.brackets)
        raise(envelope.at(support.support.index), bracket.most,
              fmt::format("{}, {}", to_string(sensitivity.model),
                          range_in_words(result.job, bracket)),
              support.stage);
    }
  }
}

}  // namespace

bool stands(const JobResult& result) {
  return std::ranges::all_of(result.stages, &StageResult::stands);
}

const StageResult* compared_stage(const JobResult& result) {
  const StageResult* last = nullptr;
  for (const StageResult& stage : result.stages) {
    if (stage.state.cut_out && !stage.state.beam) return &stage;
    if (last == nullptr || !stage.state.beam) last = &stage;
  }
  return last;
}

std::string name_of(const JobResult& result, std::optional<StageId> stage) {
  return stage ? result.stages.at(index_of(*stage)).name : "";
}

std::vector<EnvelopedLoad> envelope_of(const JobResult& result) {
  if (!stands(result)) return {};
  std::optional<StageId> stage_of_hand;
  if (const StageResult* compared = compared_stage(result)) {
    stage_of_hand = StageId(compared - result.stages.data());
  }
  std::vector<EnvelopedLoad> envelope;
  for (std::size_t i = 0; i < result.hand.needles.size(); ++i) {
    envelope.push_back({NeedleId{i}, result.hand.needles[i].largest(), "hand", stage_of_hand});
  }
  for (std::size_t k = 0; k < result.stages.size(); ++k) {
    for (const PanelResult& analysis : result.stages[k].analyses) {
      raise(envelope, analysis, StageId{k});
    }
  }
  raise_by_what_is_not_known(result, stage_of_hand, envelope);
  return envelope;
}

const EnvelopedLoad* worst_of(const std::vector<EnvelopedLoad>& envelope) {
  const auto worst = std::ranges::max_element(envelope, {}, &EnvelopedLoad::load);
  return worst == envelope.end() ? nullptr : &*worst;
}

double load_total_of(const JobResult& result) {
  for (const StageResult& stage : result.stages) {
    if (!stage.analyses.empty()) return stage.analyses.front().load_total;
  }
  return result.hand.load_total;
}

}  // namespace deadshore::solver
