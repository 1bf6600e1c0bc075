#include "io/envelope.h"

#include <algorithm>

namespace deadshore::io {
namespace {

void raise(std::vector<EnvelopedLoad>& envelope, const solver::PanelResult& analysis) {
  for (const solver::NeedleReaction& needle : analysis.needles) {
    const auto entry = std::ranges::find(envelope, needle.name, &EnvelopedLoad::needle);
    if (entry != envelope.end() && needle.force > entry->load) {
      entry->load = needle.force;
      entry->method = solver::to_string(analysis.model);
    }
  }
}

}  // namespace

bool stands(const solver::JobResult& result) {
  return std::ranges::all_of(result.stages, [](const solver::StageResult& stage) {
    return std::ranges::all_of(stage.analyses, &solver::PanelResult::stands);
  });
}

std::vector<EnvelopedLoad> envelope_of(const solver::JobResult& result) {
  if (!stands(result)) return {};
  std::vector<EnvelopedLoad> envelope;
  for (const solver::SpreadSum& sum : result.hand.needles) {
    envelope.push_back({sum.support, sum.total, "hand"});
  }
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      raise(envelope, analysis);
    }
  }
  return envelope;
}

const EnvelopedLoad* worst_of(const std::vector<EnvelopedLoad>& envelope) {
  const auto worst = std::ranges::max_element(envelope, {}, &EnvelopedLoad::load);
  return worst == envelope.end() ? nullptr : &*worst;
}

double load_total_of(const solver::JobResult& result) {
  for (const solver::StageResult& stage : result.stages) {
    if (!stage.analyses.empty()) return stage.analyses.front().load_total;
  }
  return result.hand.load_total;
}

}  // namespace deadshore::io
