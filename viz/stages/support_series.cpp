#include "viz/stages/support_series.h"

#include "viz/stages/stage_works.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using solver::PanelResult;

/// What a support carries in an analysis, N; none where it is not there.
using Force = std::function<std::optional<double>(const PanelResult&, const solver::StageState&)>;

const PanelResult* standing(const solver::StageResult& stage, solver::MasonryModel model) {
  for (const PanelResult& panel : stage.analyses)
    if (panel.model == model && panel.stands()) return &panel;
  return nullptr;
}

}  // namespace

std::vector<SupportSeries> support_series(const JobResult& result, solver::MasonryModel model) {
  const solver::Job& job = result.job;
  const std::vector<ShownStage> shown = shown_stages(result);
  std::vector<SupportSeries> all;
  const auto add = [&](SupportKind kind, const std::string& name, const Force& force) {
    SupportSeries series{kind, name, {}};
    for (std::size_t i = 0; i < result.stages.size(); ++i) {
      const PanelResult* panel = standing(result.stages[i], model);
      const auto newtons = panel != nullptr ? force(*panel, shown[i].works) : std::nullopt;
      series.values.push_back(newtons ? *newtons / 1000.0 : std::nan(""));
    }
    if (std::any_of(series.values.begin(), series.values.end(),
                    [](double value) { return std::isfinite(value); }))
      all.push_back(std::move(series));
  };
  using Works = solver::StageState;
  using Maybe = std::optional<double>;
  const auto base = [&](const std::string& name, double PanelResult::*force) {
    add(SupportKind::base, name, [force](const PanelResult& p, const Works&) { return p.*force; });
  };
  if (job.wall.cut.left > 0.0) base("left pier", &PanelResult::base_left);
  if (job.wall.cut.right < job.wall.length) base("right pier", &PanelResult::base_right);
  add(SupportKind::base, "masonry in the cut", [](const PanelResult& p, const Works& works) {
    return works.is_out(solver::cut_region) ? Maybe{} : Maybe{p.base_cut};
  });
  for (std::size_t i = 0; i < job.needles.size(); ++i)
    add(SupportKind::needle, job.needles[i].name, [i](const PanelResult& p, const Works& works) {
      const bool there = i < works.needles.size() && solver::is_in(works.needles[i]);
      return there && i < p.needles.size() ? Maybe{p.needles[i].force} : Maybe{};
    });
  const auto end = [&](const std::string& name, double solver::BeamResult::*force) {
    add(SupportKind::beam_end, name, [force](const PanelResult& p, const Works&) {
      return p.beam ? Maybe{(*p.beam).*force} : Maybe{};
    });
  };
  end("beam, left end", &solver::BeamResult::reaction_left);
  end("beam, right end", &solver::BeamResult::reaction_right);
  for (const solver::DeadShore& shore : job.dead_shores)
    add(SupportKind::joists, "joists, " + shore.name, [&](const PanelResult& p, const Works&) {
      for (const solver::JoistReaction& joists : p.joists)
        if (joists.shore == shore.name) return Maybe{joists.force};
      return Maybe{};
    });
  return all;
}

}  // namespace deadshore::viz
