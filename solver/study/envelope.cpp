#include "solver/study/envelope.h"

#include <algorithm>

namespace deadshore::solver {
namespace {

void raise(std::vector<EnvelopedLoad>& envelope, const PanelResult& analysis,
           const std::string& stage) {
  for (const NeedleReaction& needle : analysis.needles) {
    const auto entry = std::ranges::find(envelope, needle.name, &EnvelopedLoad::needle);
    if (entry != envelope.end() && needle.force > entry->load) {
      entry->load = needle.force;
      entry->method = to_string(analysis.model);
      entry->stage = stage;
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
    if (stage.name == cut_region) return &stage;
    const bool beam_placed = std::ranges::any_of(
        stage.analyses, [](const PanelResult& analysis) { return analysis.beam.has_value(); });
    if (last == nullptr || !beam_placed) last = &stage;
  }
  return last;
}

std::vector<EnvelopedLoad> envelope_of(const JobResult& result) {
  if (!stands(result)) return {};
  const StageResult* compared = compared_stage(result);
  const std::string stage_of_hand = compared == nullptr ? "" : compared->name;
  std::vector<EnvelopedLoad> envelope;
  for (const SpreadSum& sum : result.hand.needles) {
    envelope.push_back({sum.support, sum.total, "hand", stage_of_hand});
  }
  for (const StageResult& stage : result.stages) {
    for (const PanelResult& analysis : stage.analyses) {
      raise(envelope, analysis, stage.name);
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
