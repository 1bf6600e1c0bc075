#include "viz/stages/support_series.h"

#include "solver/panel/support_reactions.h"
#include "viz/stages/stage_works.h"

#include <cmath>
#include <map>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using solver::PanelResult;

const PanelResult* standing(const solver::StageResult& stage, solver::MasonryModel model) {
  for (const PanelResult& panel : stage.analyses)
    if (panel.model == model && panel.stands()) return &panel;
  return nullptr;
}

/// Whether a support is in the wall at a stage, carrying something or not.
bool is_there(const solver::Job& job, const solver::StageState& works, solver::SupportId support) {
  switch (support.kind) {
    case solver::SupportKind::needle:
      return solver::is_in(works.needles.at(support.index));
    case solver::SupportKind::left_pier:
      return job.wall.cut.left > 0.0;
    case solver::SupportKind::right_pier:
      return job.wall.cut.right < job.wall.length;
    case solver::SupportKind::base_under_cut:
      return !works.cut_out;
    default:
      return true;
  }
}

}  // namespace

std::vector<SupportSeries> support_series(const JobResult& result, solver::MasonryModel model) {
  const std::vector<ShownStage> shown = shown_stages(result);
  std::map<solver::SupportId, std::vector<double>> values;
  for (std::size_t i = 0; i < result.stages.size(); ++i) {
    const PanelResult* panel = standing(result.stages[i], model);
    if (panel == nullptr) continue;
    for (const solver::SupportReaction& reaction : reactions_of(result.job, *panel)) {
      if (!is_there(result.job, shown[i].works, reaction.support)) continue;
      std::vector<double>& series = values[reaction.support];
      series.resize(result.stages.size(), std::nan(""));
      series[i] = reaction.force / 1000.0;
    }
  }
  using enum solver::SupportKind;
  std::vector<SupportSeries> all;
  for (const solver::SupportKind kind :
       {left_pier, right_pier, base_under_cut, needle, beam_left_end, beam_right_end, joists})
    for (const auto& [id, series] : values)
      if (id.kind == kind) all.push_back({id, label_of(result.job, id), series});
  return all;
}

}  // namespace deadshore::viz
