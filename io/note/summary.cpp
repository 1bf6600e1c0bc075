#include "io/envelope.h"
#include "io/note/sections.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// A needle that takes less than this carries nothing worth the name, N.
constexpr double idle_needle = 50.0;

Html no_equilibrium(const solver::PanelResult& analysis) {
  return paragraph("This wall does not stand.",
                   fmt::format("With {} there is no equilibrium: {} No reactions are given. Do not "
                               "cut on this arrangement.",
                               masonry_phrase(analysis.model), analysis.no_equilibrium),
                   "alarm");
}

Html loose_masonry(const solver::PanelResult& analysis) {
  double weight = 0.0;
  std::vector<std::string> patches;
  for (const solver::LoosePatch& patch : analysis.loose) {
    weight += patch.weight;
    patches.push_back(fmt::format("{} kN, x = {} to {} mm, {} to {} mm up: {}",
                                  kilonewtons(patch.weight), millimetres(patch.x.from),
                                  millimetres(patch.x.to), millimetres(patch.y.from),
                                  millimetres(patch.y.to), patch.where));
  }
  const Html headline = paragraph(
      fmt::format("Loose masonry: {} kN would fall.", kilonewtons(weight)),
      fmt::format("With {} these parts have no safe state. Hold them from below or take them down "
                  "before the cut; the other figures hold only once that is done.",
                  masonry_phrase(analysis.model)),
      "");
  return element("div", headline + bullets(patches), "alarm");
}

Html overstress(const solver::Job& job, const solver::PanelResult& analysis) {
  return paragraph(
      "Crushing.",
      fmt::format("With {} the largest compression is {} N/mm\u00b2, more than the {} N/mm\u00b2 "
                  "the masonry is given. Peaks at corners grow with a finer mesh: look at where it "
                  "is before judging it.",
                  masonry_phrase(analysis.model), significant(analysis.max_compression, 3),
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

Html design_loads(const std::vector<EnvelopedLoad>& envelope) {
  if (envelope.empty()) return paragraph("There are no needles.");
  Table content{"design-loads",
                "Load to design each needle, its props and what they stand on for: the largest "
                "found by any method, kN, characteristic",
                {{"Needle"}, {"Load kN", true}, {"From"}},
                {}};
  for (const EnvelopedLoad& entry : envelope) {
    content.add({entry.needle, kilonewtons(entry.load),
                 entry.method == "hand" ? "hand method" : entry.method + " masonry"});
  }
  const Html advice = paragraph(
      "Neither method is right alone: the hand method leaves out arching and how much the supports "
      "give, the analyses depend on stiffnesses that nobody knows well. Apply the load factors of "
      "the code you work to.",
      "small");
  return table(content) + advice;
}

Html key_figures(const solver::JobResult& result, const std::vector<EnvelopedLoad>& envelope) {
  std::vector<std::string> figures = {
      fmt::format("Wall and everything on it: {} kN.", kilonewtons(load_total_of(result)))};
  if (const EnvelopedLoad* worst = worst_of(envelope)) {
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
  const std::vector<EnvelopedLoad> envelope = envelope_of(result);
  Html body = warnings_of(result) + key_figures(result, envelope);
  body += stands(result)
              ? design_loads(envelope)
              : paragraph(
                    "No load to design for is given, because the wall does not stand. Change "
                    "the arrangement and run it again.");
  body += paragraph(
      "People can be hurt. Nothing is cut on the strength of this note alone: see "
      "what was not checked, and the cautions, at its end.");
  return section("summary", "Summary", body);
}

}  // namespace deadshore::io
