#include "io/note/sections.h"
#include "io/note/wording.h"
#include "solver/compare/envelope.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// A needle that takes less than this carries nothing worth the name, N.
constexpr double idle_needle = 50.0;

constexpr double not_known = std::numeric_limits<double>::quiet_NaN();
const solver::NeedleComparison not_compared = {"", not_known, not_known, not_known, ""};

double weight_of(const std::vector<solver::LoosePatch>& patches) {
  double weight = 0.0;
  for (const solver::LoosePatch& patch : patches) weight += patch.weight;
  return weight;
}

Html patch_list(const std::vector<solver::LoosePatch>& patches) {
  std::vector<std::string> lines;
  lines.reserve(patches.size());
  for (const solver::LoosePatch& patch : patches) {
    lines.push_back(fmt::format("{} kN, x = {} to {} mm, {} to {} mm up, {}",
                                fine_kilonewtons(patch.weight), whole_millimetres(patch.x.from),
                                whole_millimetres(patch.x.to), whole_millimetres(patch.y.from),
                                whole_millimetres(patch.y.to), patch.where));
  }
  return bullets(lines);
}

Html no_equilibrium(const solver::PanelResult& analysis) {
  const Html reason =
      paragraph("This wall does not stand.",
                fmt::format("With {} there is no equilibrium: {}", masonry_phrase(analysis.model),
                            analysis.no_equilibrium),
                "");
  const Html consequence =
      paragraph("No reactions are given for it. Do not cut on this arrangement.");
  const Html patches = analysis.loose.empty()
                           ? Html()
                           : paragraph("Masonry that would fall:") + patch_list(analysis.loose);
  return element("div", reason + consequence + patches, "alarm");
}

Html loose_masonry(const solver::PanelResult& analysis) {
  const Html headline = paragraph(
      fmt::format("Loose masonry: {} kN would fall.", fine_kilonewtons(weight_of(analysis.loose))),
      fmt::format("With {} these parts have no safe state. Hold them from below or take them down "
                  "before the cut; the other figures hold only once that is done.",
                  masonry_phrase(analysis.model)),
      "");
  return element("div", headline + patch_list(analysis.loose), "alarm");
}

Html overstress(const solver::Job& job, const solver::PanelResult& analysis) {
  return paragraph(
      "Crushing.",
      fmt::format("With {} the largest compression is {} N/mm\u00b2, more than the {} N/mm\u00b2 "
                  "the masonry is given. Peaks at corners grow with a finer mesh: look at where it "
                  "is before judging it.",
                  masonry_phrase(analysis.model), two_decimals(analysis.max_compression),
                  significant(job.masonry.compressive_strength, 3)),
      "warning");
}

Html idle_needles(const solver::PanelResult& analysis) {
  std::vector<std::string> idle;
  for (const solver::NeedleReaction& needle : analysis.needles) {
    if (needle.force < idle_needle) idle.push_back(needle.name);
  }
  if (idle.empty()) return {};
  return paragraph("A needle carries nothing.",
                   fmt::format("With {} nothing comes down on {}.", masonry_phrase(analysis.model),
                               listed(idle)),
                   "warning");
}

Html warnings_of(const solver::JobResult& result) {
  Html warnings;
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) {
        warnings += no_equilibrium(analysis);
        continue;
      }
      if (!analysis.loose.empty()) warnings += loose_masonry(analysis);
      if (analysis.max_compression > result.job.masonry.compressive_strength) {
        warnings += overstress(result.job, analysis);
      }
      warnings += idle_needles(analysis);
    }
  }
  const auto& models = result.job.analysis.masonry;
  if (std::ranges::find(models, solver::MasonryModel::cracked) == models.end()) {
    warnings += paragraph("Cracking was not analysed.",
                          "Uncracked masonry can underestimate the worst needle.", "warning");
  }
  return warnings;
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
  Table content{
      "design-loads",
      "Load on each needle, kN, characteristic; design it, its props and what they stand "
      "on for the largest found by any method",
      {{"Needle"}, {"Hand", true}, {"Uncracked", true}, {"Cracked", true}, {"Design for", true}},
      {}};
  for (const solver::EnvelopedLoad& entry : envelope) {
    const auto found =
        std::ranges::find(result.comparison, entry.needle, &solver::NeedleComparison::needle);
    const bool compared = found != result.comparison.end();
    const solver::NeedleComparison loads = compared ? *found : not_compared;
    content.add({entry.needle, kilonewtons(loads.hand), kilonewtons(loads.uncracked),
                 kilonewtons(loads.cracked), kilonewtons(entry.load)});
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

Html key_figures(const solver::JobResult& result,
                 const std::vector<solver::EnvelopedLoad>& envelope) {
  std::vector<std::string> figures = {
      fmt::format("Wall and everything on it: {} kN.", kilonewtons(load_total_of(result)))};
  if (const solver::EnvelopedLoad* worst = worst_of(envelope)) {
    figures.push_back(fmt::format("Most loaded needle: {}, {} kN {}.", worst->needle,
                                  kilonewtons(worst->load), method_phrase(worst->method)));
  }
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) continue;
      figures.push_back(fmt::format("Largest downward movement with {}: {} mm.",
                                    masonry_phrase(analysis.model),
                                    fine_millimetres(analysis.max_settlement)));
    }
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
  body += paragraph(
      "People can be hurt. Nothing is cut on the strength of this note alone: see "
      "what was not checked, and the cautions, at its end.");
  return section("summary", "Summary", body);
}

}  // namespace deadshore::io
