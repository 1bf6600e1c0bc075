#include "io/note/sections.h"
#include "io/note/wording.h"
#include "io/stage_facts.h"
#include "solver/compare/envelope.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

const solver::NeedleComparison not_compared = {"", not_known, not_known, not_known, ""};

/// Why a stage is the one to look at first.
std::string why_it_governs(const solver::JobResult& result, const solver::StageResult& stage) {
  const StageFacts facts = facts_of(stage);
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

std::string factors_sentence(const solver::Job& job) {
  const bool all_framed =
      std::ranges::all_of(job.needles, [](const auto& needle) { return needle.frame.has_value(); });
  return all_framed ? "The member checks apply the load factors."
                    : "Apply the load factors of the code you work to.";
}

Html design_loads(const solver::JobResult& result,
                  const std::vector<solver::EnvelopedLoad>& envelope) {
  if (envelope.empty()) return paragraph("There are no needles.");
  const bool staged = is_staged(result);
  Table content{
      "design-loads",
      "Load on each needle, kN, characteristic; design it, its props and what they stand "
      "on for the largest found by any method",
      {{"Needle"}, {"Hand", true}, {"Uncracked", true}, {"Cracked", true}, {"Design for", true}},
      {}};
  if (staged) content.columns.push_back({"In stage"});
  for (const solver::EnvelopedLoad& entry : envelope) {
    const auto found =
        std::ranges::find(result.comparison, entry.needle, &solver::NeedleComparison::needle);
    const bool compared = found != result.comparison.end();
    const solver::NeedleComparison loads = compared ? *found : not_compared;
    std::vector<std::string> cells = {entry.needle, kilonewtons(loads.hand),
                                      kilonewtons(loads.uncracked), kilonewtons(loads.cracked),
                                      kilonewtons(entry.load)};
    if (staged) cells.push_back(entry.method == "hand" ? "by hand" : entry.stage);
    content.add(std::move(cells));
  }
  const Html advice = paragraph(std::string("Neither method is right alone: the hand method knows "
                                            "nothing of arching and of how much the "
                                            "supports give, the analyses depend on stiffnesses "
                                            "that nobody knows well. A needle stiffer "
                                            "than its neighbours draws more: where \u201cwhy they "
                                            "differ\u201d gives more for needles "
                                            "that do not give, allow for it. ") +
                                    factors_sentence(result.job),
                                "small");
  return table(content) + advice;
}

/// "Wall and everything on it", at each end of the work where it is followed.
std::string load_figure(const solver::JobResult& result) {
  const std::string first = kilonewtons(load_total_of(result));
  const solver::StageResult* compared = comparable_stage(result);
  if (!is_staged(result) || compared == nullptr || compared->analyses.empty()) {
    return fmt::format("Wall and everything on it: {} kN.", first);
  }
  return fmt::format(
      "Wall and everything on it: {} kN before the work, {} kN in stage \u201c{}\u201d.", first,
      kilonewtons(compared->analyses.front().load_total), compared->name);
}

std::vector<std::string> movement_figures(const solver::JobResult& result) {
  std::vector<std::string> figures;
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    const StageAnalysis worst =
        worst_analysis(result, model, [](const auto& a) { return a.max_settlement; });
    if (worst.analysis == nullptr) continue;
    figures.push_back(fmt::format(
        "Largest downward movement with {}: {} mm{}.", masonry_phrase(model),
        fine_millimetres(worst.analysis->max_settlement), in_stage(result, *worst.stage)));
  }
  return figures;
}

/// What only following the stages tells.
std::vector<std::string> staged_figures(const solver::JobResult& result) {
  std::vector<std::string> figures;
  if (const solver::StageResult* governing = governing_stage(result)) {
    figures.push_back(fmt::format("Look first at stage \u201c{}\u201d, day {}: {}.",
                                  governing->name, significant(governing->day, 4),
                                  why_it_governs(result, *governing)));
  }
  const StageAnalysis cracked =
      worst_analysis(result, solver::MasonryModel::cracked,
                     [](const auto& a) { return a.cracks.empty() ? 0.0 : a.cracks.front().width; });
  if (cracked.analysis != nullptr && !cracked.analysis->cracks.empty()) {
    const solver::Crack& widest = cracked.analysis->cracks.front();
    figures.push_back(fmt::format("Widest crack: {} mm{}, {}.", fine_millimetres(widest.width),
                                  in_stage(result, *cracked.stage), widest.where));
  }
  if (const WorstDamage worst = worst_damage(result); worst.damage != nullptr) {
    const std::string where =
        category_of(*worst.damage) > 0 ? " most" + in_stage(result, *worst.stage) : "";
    figures.push_back(fmt::format("Damage to the masonry that stays,{} by a scale of 0 to 5: {}",
                                  where, as_sentence(worst.damage->in_words)));
  }
  if (const solver::StageResult* least = stage_of_least_factor(result)) {
    figures.push_back(fmt::format("Least factor on all loads without tension: {}{}.",
                                  factor_words(least->safety->factor), in_stage(result, *least)));
  }
  return figures;
}

Html key_figures(const solver::JobResult& result,
                 const std::vector<solver::EnvelopedLoad>& envelope) {
  std::vector<std::string> figures = {load_figure(result)};
  if (const solver::EnvelopedLoad* worst = worst_of(envelope)) {
    const solver::StageResult* stage =
        worst->method == "hand" ? nullptr : find_stage(result, worst->stage);
    figures.push_back(fmt::format("Most loaded needle: {}, {} kN {}{}.", worst->needle,
                                  kilonewtons(worst->load), method_phrase(worst->method),
                                  stage == nullptr ? "" : in_stage(result, *stage)));
  }
  std::ranges::copy(movement_figures(result), std::back_inserter(figures));
  if (is_staged(result)) {
    std::ranges::copy(staged_figures(result), std::back_inserter(figures));
  }
  return bullets(figures);
}

}  // namespace

Html summary_section(const solver::JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = envelope_of(result);
  Html body = warnings_of(result) + checks_verdict(result) + key_figures(result, envelope);
  body += stands(result)
              ? design_loads(result, envelope)
              : paragraph(
                    "No load to design for is given, because the wall does not stand. Change "
                    "the arrangement and run it again.");
  body += element(
      "p", text("For the wall on site, on one page: ") +
               Html::trusted("<a href=\"sheet.html\">the site sheet</a>") +
               text(", the steps with their hold points and the movements at which to stop."));
  body += paragraph(
      "People can be hurt. Nothing is cut on the strength of this note alone: see "
      "what was not checked, and the cautions, at its end.");
  return section("summary", "Summary", body);
}

}  // namespace deadshore::io
