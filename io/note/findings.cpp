#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

/// The lines at the top of the summary, each with the chapter that says more.
namespace deadshore::io {
namespace {

/// Why a stage is the one to look at first.
std::string why_it_governs(const solver::JobResult& result, const solver::StageResult& stage) {
  const solver::StageFacts facts = facts_of(stage);
  if (!facts.stands) return "the wall does not stand in it";
  const auto worst = std::ranges::find_if(
      result.checks, [](const solver::Check& check) { return !check.not_verified; });
  if (worst != result.checks.end() && worst->stage == stage.name) {
    return fmt::format("it has the worst check, {}, {} ({})", worst->member, worst->check,
                       utilisation_words(*worst));
  }
  if (facts.needle.empty()) return "no needle carries anything in any";
  return fmt::format("it has the most loaded needle of the analyses, {}", facts.needle);
}

std::string method_phrase(const std::string& method) {
  return method == "hand" ? "by the hand method" : fmt::format("with {} masonry", method);
}

Text to_stages() {
  return link_to("#stages", "Stages of the work");
}

/// What an analysis found, and where its figures are.
Row analysed(const solver::JobResult& result, const char* what, const std::string& found) {
  return {{what, found,
           is_staged(result) ? to_stages() : link_to("#evidence", "Evidence for the analyses")}};
}

Row worst_utilisation(const solver::JobResult& result) {
  const char* const what = "Worst utilisation";
  const auto worst = std::ranges::find_if(
      result.checks, [](const solver::Check& check) { return !check.not_verified; });
  if (worst == result.checks.end()) {
    return {{what, "no member was checked", link_to("#not-checked", "What was not checked")}};
  }
  std::string found =
      fmt::format("{}: {}, {}", utilisation_words(*worst), worst->member, worst->check);
  if (const solver::StageResult* stage = find_stage(result, worst->stage)) {
    found += in_stage(result, *stage);
  }
  return {{what, found + fmt::format(" ({})", worst->clause),
           link_to("#member-checks", "Member checks")}};
}

Row loose_masonry(const solver::JobResult& result) {
  const solver::StageAnalysis worst =
      worst_analysis(result, solver::MasonryModel::cracked, &solver::PanelResult::loose_weight);
  std::string found = "not looked for: cracked masonry was not analysed";
  if (worst.analysis != nullptr) {
    const double weight = worst.analysis->loose_weight();
    found = weight > 0.0
                ? fmt::format("{} kN{}", loose_kilonewtons(weight), in_stage(result, *worst.stage))
                : "none by the cracked analysis";
  }
  return analysed(result, "Loose masonry", found);
}

/// "115.0 kN", at each end of the work where it is followed.
Row load_on_it(const solver::JobResult& result) {
  std::string found = kilonewtons(load_total_of(result)) + " kN";
  const solver::StageResult* compared = comparable_stage(result);
  if (is_staged(result) && compared != nullptr && !compared->analyses.empty()) {
    found += fmt::format(" before the work, {} kN in stage \u201c{}\u201d",
                         kilonewtons(compared->analyses.front().load_total), compared->name);
  }
  return {{"Wall and everything on it", found, link_to("#loads", "Loads")}};
}

/// The larger of both analyses' worst.
std::vector<Row> movements(const solver::JobResult& result) {
  solver::StageAnalysis worst;
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    const solver::StageAnalysis found =
        worst_analysis(result, model, [](const auto& a) { return a.max_settlement; });
    if (found.analysis == nullptr) continue;
    if (worst.analysis == nullptr ||
        found.analysis->max_settlement > worst.analysis->max_settlement) {
      worst = found;
    }
  }
  if (worst.analysis == nullptr) return {};
  return {
      analysed(result, "Largest settlement",
               fmt::format("{} mm{}, {}", fine_millimetres(worst.analysis->max_settlement),
                           in_stage(result, *worst.stage), masonry_phrase(worst.analysis->model)))};
}

/// What only following the stages tells.
std::vector<Row> of_the_stages(const solver::JobResult& result) {
  std::vector<Row> findings;
  const auto add = [&](const char* what, const std::string& found) {
    findings.push_back({{what, found, to_stages()}});
  };
  const solver::StageAnalysis cracked =
      worst_analysis(result, solver::MasonryModel::cracked,
                     [](const auto& a) { return a.cracks.empty() ? 0.0 : a.cracks.front().width; });
  if (cracked.analysis != nullptr && !cracked.analysis->cracks.empty()) {
    const solver::Crack& widest = cracked.analysis->cracks.front();
    add("Widest crack", fmt::format("{} mm{}, {}", fine_millimetres(widest.width),
                                    in_stage(result, *cracked.stage), widest.where));
  }
  if (const solver::WorstDamage worst = worst_damage(result); worst.damage != nullptr) {
    const std::string where =
        category_of(*worst.damage) > 0 ? ", most" + in_stage(result, *worst.stage) : "";
    add("Damage, 0 to 5", worst.damage->in_words + where);
  }
  if (const solver::StageResult* least = stage_of_least_factor(result)) {
    findings.push_back({{"Factor without tension",
                         fmt::format("no less than {} and no more than {} on all loads, least{}",
                                     lower_factor_words(least->safety->factor),
                                     upper_factor_words(least->safety->upper_factor),
                                     in_stage(result, *least)),
                         link_to("#safety", "Safety without tension")}});
  }
  return findings;
}

std::vector<Row> findings_of(const solver::JobResult& result,
                             const std::vector<solver::EnvelopedLoad>& envelope) {
  std::vector<Row> findings = {worst_utilisation(result)};
  const solver::StageResult* governing = is_staged(result) ? governing_stage(result) : nullptr;
  if (governing != nullptr) {
    findings.push_back(
        {{"Governing stage",
          fmt::format("\u201c{}\u201d, day {}: {}", governing->name, significant(governing->day, 4),
                      why_it_governs(result, *governing)),
          to_stages()}});
  }
  findings.push_back(loose_masonry(result));
  if (const solver::EnvelopedLoad* worst = worst_of(envelope)) {
    const bool by_hand = worst->method == "hand" || !worst->stage;
    findings.push_back(
        {{"Most loaded needle",
          fmt::format("{}, {} kN {}{}", result.job.needles.at(index_of(worst->needle)).name,
                      kilonewtons(worst->load), method_phrase(worst->method),
                      by_hand ? "" : in_stage(result, result.stages.at(index_of(*worst->stage)))),
          link_to("#methods", "Hand method against finite elements")}});
  }
  std::ranges::copy(movements(result), std::back_inserter(findings));
  if (is_staged(result)) std::ranges::copy(of_the_stages(result), std::back_inserter(findings));
  findings.push_back(load_on_it(result));
  return findings;
}

}  // namespace

Table findings_table(const solver::JobResult& result,
                     const std::vector<solver::EnvelopedLoad>& envelope) {
  return {"findings", "", {"What", "Found", "More in"}, findings_of(result, envelope)};
}

}  // namespace deadshore::io
