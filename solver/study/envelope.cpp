#include "solver/study/envelope.h"

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
    envelope.push_back({NeedleId{i}, result.hand.needles[i].total, "hand", stage_of_hand});
  }
  for (std::size_t k = 0; k < result.stages.size(); ++k) {
    for (const PanelResult& analysis : result.stages[k].analyses) {
      raise(envelope, analysis, StageId{k});
    }
  }
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
