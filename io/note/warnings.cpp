#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// A needle that takes less than this carries nothing worth the name, N.
constexpr double idle_needle = 50.0;

/// From this category on damage is more than filling and painting puts right.
constexpr int worrying_damage = 3;

List patch_list(const std::vector<solver::LoosePatch>& patches) {
  std::vector<std::string> lines;
  lines.reserve(patches.size());
  for (const solver::LoosePatch& patch : patches) {
    lines.push_back(fmt::format("{} kN, x = {} to {} mm, {} to {} mm up, {}",
                                loose_kilonewtons(patch.weight), whole_millimetres(patch.x.from),
                                whole_millimetres(patch.x.to), whole_millimetres(patch.y.from),
                                whole_millimetres(patch.y.to), patch.where));
  }
  return bullets(lines);
}

Blocks no_equilibrium(const solver::JobResult& result, const solver::StageAnalysis& failed) {
  const solver::PanelResult& analysis = *failed.analysis;
  Blocks more = Paragraph{is_staged(result)
                              ? "No reactions are given for it, and no stage after it was "
                                "analysed. Do not begin on this order of work."
                              : "No reactions are given for it. Do not cut on this arrangement."};
  if (!analysis.loose.empty()) {
    more += Paragraph{"Masonry that would fall:"} + patch_list(analysis.loose);
  }
  return callout(
      Severity::alarm, "This wall does not stand.",
      fmt::format("With {}{} there is no equilibrium: {}", masonry_phrase(analysis.model),
                  in_stage(result, *failed.stage), *analysis.no_equilibrium),
      more);
}

/// The other stages in which masonry is loose, with how much.
std::string also_loose(const solver::JobResult& result, const solver::StageAnalysis& worst) {
  std::vector<std::string> others;
  for (const solver::StageResult& stage : result.stages) {
    const solver::PanelResult* analysis = find_analysis(stage, worst.analysis->model);
    if (&stage == worst.stage || analysis == nullptr || analysis->loose.empty()) continue;
    others.push_back(fmt::format("\u201c{}\u201d ({} kN)", stage.name,
                                 loose_kilonewtons(analysis->loose_weight())));
  }
  return others.empty() ? "" : " Loose too in stage " + listed(others) + ".";
}

Blocks loose_masonry(const solver::JobResult& result, const solver::StageAnalysis& worst) {
  const solver::PanelResult& analysis = *worst.analysis;
  return callout(
      Severity::alarm,
      fmt::format("Loose masonry: {} kN would fall.", loose_kilonewtons(analysis.loose_weight())),
      fmt::format("With {}{} these parts have no safe state. Hold them from below or take them "
                  "down before {}; the other figures hold only once that is done.{}",
                  masonry_phrase(analysis.model), in_stage(result, *worst.stage),
                  is_staged(result) ? "that stage" : "the cut", also_loose(result, worst)),
      patch_list(analysis.loose));
}

Blocks overstress(const solver::JobResult& result, const solver::StageAnalysis& worst) {
  return callout(Severity::warning, "Crushing.",
                 fmt::format("With {}{} the largest compression is {} N/mm\u00b2, more than the {} "
                             "N/mm\u00b2 the masonry is given. Peaks at corners grow with a finer "
                             "mesh: look at where it is before judging it.",
                             masonry_phrase(worst.analysis->model), in_stage(result, *worst.stage),
                             two_decimals(worst.analysis->max_compression),
                             significant(result.job.masonry.compressive_strength, 3)));
}

/// Needles on which nothing comes down in any stage of one model.
Blocks idle_needles(const solver::JobResult& result, solver::MasonryModel model) {
  std::vector<std::string> idle;
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const solver::StageAnalysis most = worst_analysis(
        result, model, [i](const solver::PanelResult& a) { return a.needles.at(i).force; });
    if (most.analysis == nullptr) continue;
    const solver::NeedleReaction& needle = most.analysis->needles[i];
    if (needle.force < idle_needle) idle.push_back(needle.name);
  }
  if (idle.empty()) return {};
  return callout(Severity::warning, "A needle carries nothing.",
                 fmt::format("With {} nothing comes down on {}{}.", masonry_phrase(model),
                             listed(idle), is_staged(result) ? " in any stage" : ""));
}

Blocks warnings_of(const solver::JobResult& result, solver::MasonryModel model) {
  Blocks warnings;
  if (const solver::StageAnalysis failed = first_failure(result, model);
      failed.analysis != nullptr) {
    warnings += no_equilibrium(result, failed);
  }
  const solver::StageAnalysis loosest =
      worst_analysis(result, model, &solver::PanelResult::loose_weight);
  if (loosest.analysis != nullptr && !loosest.analysis->loose.empty()) {
    warnings += loose_masonry(result, loosest);
  }
  const solver::StageAnalysis pressed =
      worst_analysis(result, model, [](const solver::PanelResult& a) { return a.max_compression; });
  if (pressed.analysis != nullptr &&
      pressed.analysis->max_compression > result.job.masonry.compressive_strength) {
    warnings += overstress(result, pressed);
  }
  return warnings + idle_needles(result, model);
}

/// What the limit analysis of the stages warns of.
Blocks without_tension(const solver::JobResult& result) {
  Blocks warnings;
  const solver::StageResult* least = stage_of_least_factor(result);
  const bool safe = least == nullptr || solver::is_safe_without_tension(least->safety->factor);
  const solver::StageResult* least_safe = safe ? nullptr : least;
  if (least_safe != nullptr) {
    const bool falls = least->safety->upper_factor < 1.0;
    warnings += callout(
        Severity::alarm,
        falls ? "The wall stands by tension alone." : "Not shown to stand without tension.",
        fmt::format("Without tension it bears no less than {} and no more than {} times its loads{}. "
                    "{}",
                    lower_factor_words(least->safety->factor),
                    upper_factor_words(least->safety->upper_factor), in_stage(result, *least),
                    with_raised_powers(least->safety->verdict)));
  }
  const solver::StageResult* loosest = stage_of_most_loose_without_tension(result);
  if (loosest != nullptr && loosest != least_safe) {
    const char* heading = solver::is_safe_without_tension(loosest->safety->factor)
                              ? "Loose without tension"
                              : "Held by tension alone";
    warnings +=
        callout(Severity::warning, fmt::format("{}{}.", heading, in_stage(result, *loosest)),
                with_raised_powers(loosest->safety->verdict));
  }
  return warnings;
}

Blocks damage_warning(const solver::JobResult& result) {
  const solver::WorstDamage worst = worst_damage(result);
  if (worst.damage == nullptr || category_of(*worst.damage) < worrying_damage) return {};
  return callout(Severity::warning, "The masonry that stays will be damaged.",
                 fmt::format("By a scale of 0 to 5, most{}: {}", in_stage(result, *worst.stage),
                             as_sentence(worst.damage->in_words)));
}

}  // namespace

Blocks warnings_of(const solver::JobResult& result) {
  Blocks warnings;
  const auto& models = result.job.analysis.masonry;
  for (const solver::MasonryModel model : models) warnings += warnings_of(result, model);
  warnings += without_tension(result) + damage_warning(result);
  if (std::ranges::find(models, solver::MasonryModel::cracked) == models.end()) {
    warnings += callout(Severity::warning, "Cracking was not analysed.",
                        "Uncracked masonry can underestimate the worst needle.");
  }
  return warnings;
}

}  // namespace deadshore::io
