#include "viz/stages/staged_figures.h"

#include "solver/study/envelope.h"
#include "viz/drawings.h"
#include "viz/wall/crack_map.h"
#include "viz/wall/panel_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using solver::PanelResult;
using solver::StageResult;

double needle_sum(const PanelResult& panel) {
  double sum = 0.0;
  for (const solver::NeedleReaction& needle : panel.needles) sum += needle.force;
  return panel.stands() && std::isfinite(sum) ? sum : 0.0;
}

/// The most that the needles carry together in an analysis of the stage.
double needles_carry(const StageResult& stage) {
  double most = 0.0;
  for (const PanelResult& panel : stage.analyses) most = std::max(most, needle_sum(panel));
  return most;
}

/// The stage in which the needles carry most; of those that differ by no more than a hundredth the
/// one that the hand method is set against, else the first.
std::size_t governing_stage(const JobResult& result) {
  const std::vector<StageResult>& stages = result.stages;
  const StageResult* compared = solver::compared_stage(result);
  double most = 0.0;
  for (const StageResult& stage : stages) most = std::max(most, needles_carry(stage));
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < stages.size(); ++i) {
    if (needles_carry(stages[i]) < 0.99 * most) continue;
    if (&stages[i] == compared) return i;
    if (!first) first = i;
  }
  return first.value_or(0);
}

bool falls(const StageResult& stage) {
  return std::any_of(stage.analyses.begin(), stage.analyses.end(),
                     [](const PanelResult& panel) { return !panel.stands(); });
}

std::string damage_words(const PanelResult& panel) {
  if (!panel.damage) return "";
  const solver::Damage& damage = *panel.damage;
  return fmt::format(" Damage by a scale of 0 to 5 ({} by strain, {} by crack width): {}.",
                     damage.by_strain, damage.by_width,
                     damage.in_words.substr(0, damage.in_words.find_last_not_of(". ") + 1));
}

std::string crack_caption(const PanelResult& panel, const StageResult& stage) {
  const solver::Crack& widest = panel.cracks.front();
  return fmt::format("Cracks with {} at stage \"{}\", where they are widest: {}{}.{}",
                     masonry_words(panel.model), stage.name, crack_width(widest.width),
                     widest.where.empty() ? "" : " " + widest.where, damage_words(panel));
}

std::string mechanism_caption(const StageResult& stage, const solver::Job& job) {
  const solver::StageSafety& safety = *stage.safety;
  std::string caption = fmt::format(
      "How the wall would give way at stage \"{}\" if its loads grew and its mortar bore no "
      "tension: at no less than {:.2f} times the loads by stresses in equilibrium and no more than "
      "{:.2f} by this mechanism. Its largest movement is drawn as {:.0f} mm of wall.",
      stage.name, std::floor(100.0 * safety.factor) / 100.0,
      std::ceil(100.0 * safety.upper_factor) / 100.0, mechanism_reach(job));
  if (safety.let_go > 0.0)
    caption += fmt::format(" Left out, as nothing holds it: {} of masonry.",
                           kilonewtons(safety.let_go));
  if (safety.loose_weight > 0.0)
    caption += fmt::format(" Masonry of at least {} has no way to a support without tension.",
                           kilonewtons(safety.loose_weight));
  return caption;
}

std::string beam_caption(const PanelResult& panel, const StageResult& stage) {
  return fmt::format(
      "The permanent beam at stage \"{}\" with {}, where its moment is largest: {} of the wall "
      "rests on it. Beside it the hand method, which brings everything over it onto the beam; it "
      "must pass under that too.",
      stage.name, masonry_words(panel.model), kilonewtons(panel.beam->from_wall));
}

}  // namespace

std::vector<std::size_t> stages_to_draw(const JobResult& result) {
  const auto& stages = result.stages;
  const std::size_t governing = governing_stage(result);
  std::vector<std::size_t> drawn;
  for (std::size_t i = 0; i < stages.size(); ++i)
    if (i == governing || i + 1 == stages.size() || falls(stages[i])) drawn.push_back(i);
  return drawn;
}

std::optional<std::size_t> weakest_stage(const JobResult& result) {
  std::optional<std::size_t> weakest;
  for (std::size_t i = 0; i < result.stages.size(); ++i) {
    const auto& safety = result.stages[i].safety;
    if (!safety || safety->mechanism.size() != 2 * result.mesh.quads.nodes.size()) continue;
    if (!weakest || safety->factor < result.stages[*weakest].safety->factor) weakest = i;
  }
  return weakest;
}

std::vector<PanelPlace> widest_cracks(const JobResult& result) {
  std::vector<PanelPlace> places;
  const auto panel_at = [&](const PanelPlace& place) -> const PanelResult& {
    return result.stages[place.stage].analyses[place.analysis];
  };
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    std::optional<PanelPlace> widest;
    for (std::size_t i = 0; i < result.stages.size(); ++i)
      for (std::size_t k = 0; k < result.stages[i].analyses.size(); ++k) {
        const PanelResult& panel = result.stages[i].analyses[k];
        if (panel.model != model || !panel.stands() || panel.cracks.empty()) continue;
        if (!widest || panel.cracks.front().width > panel_at(*widest).cracks.front().width)
          widest = PanelPlace{i, k};
      }
    if (widest) places.push_back(*widest);
  }
  return places;
}

std::optional<PanelPlace> largest_beam_moment(const JobResult& result) {
  std::optional<PanelPlace> largest;
  double moment = 0.0;
  for (std::size_t i = 0; i < result.stages.size(); ++i)
    for (std::size_t k = 0; k < result.stages[i].analyses.size(); ++k) {
      const PanelResult& panel = result.stages[i].analyses[k];
      if (!panel.stands() || !panel.beam || !(panel.beam->largest_moment > moment)) continue;
      largest = PanelPlace{i, k};
      moment = panel.beam->largest_moment;
    }
  return largest;
}

void add_strip(FigureList& figures, const JobResult& result, const BandScale& scale) {
  if (result.stages.size() < 2) return;
  figures.add(stage_strip(result, scale), "stages",
              "Every stage of the work, all to one scale: principal compression, what is in place "
              "and what was taken out, and the cracks.");
}

void add_staged_figures(FigureList& figures, const JobResult& result) {
  const std::vector<ShownStage> shown = shown_stages(result);
  const auto& stages = result.stages;
  if (stages.size() > 1)
    figures.add(stage_reactions(result), "reactions-by-stage",
                "What piers, needles, beam ends and joists carry at each stage, unfactored.");
  for (const auto& [stage, analysis] : widest_cracks(result)) {
    const PanelResult& panel = stages[stage].analyses[analysis];
    figures.add(crack_map(result, panel, shown[stage]), "cracks-" + file_word(stages[stage].name),
                crack_caption(panel, stages[stage]));
  }
  if (const auto weakest = weakest_stage(result))
    figures.add(mechanism(result, stages[*weakest], shown[*weakest]), "mechanism",
                mechanism_caption(stages[*weakest], result.job));
  const auto place = result.job.beam ? largest_beam_moment(result) : std::nullopt;
  if (place) {
    const PanelResult& panel = stages[place->stage].analyses[place->analysis];
    figures.add(beam_diagrams(result, panel, shown[place->stage]), "beam",
                beam_caption(panel, stages[place->stage]));
  }
}

}  // namespace deadshore::viz
