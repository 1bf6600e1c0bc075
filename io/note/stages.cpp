#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "io/results/work_words.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::PanelResult;
using solver::StageResult;

constexpr std::size_t most_cracks = 12;

std::string needle_words(const solver::StageFacts& facts) {
  if (facts.needle.empty()) return "\u2013";
  return fmt::format("{} {}", facts.needle, kilonewtons(facts.needle_load));
}

std::string damage_words(const solver::Damage* damage) {
  return damage == nullptr ? "\u2013" : std::to_string(category_of(*damage));
}

RowKind kind_of(const solver::StageFacts& facts) {
  const bool worrying = facts.loose_weight > 0.0 || facts.factor < 1.0;
  return worrying ? RowKind::unverified : RowKind::plain;
}

Blocks work_table(const solver::JobResult& result) {
  Table content{
      "stages-of-work",
      "The worst of all analyses of each stage; loads in kN, characteristic",
      {"Stage", numeric("Day"), "What is done", numeric("Worst needle"), numeric("Settles mm"),
       numeric("Widest crack mm"), numeric("Damage"), numeric("Loose kN"), numeric("Factor")}};
  for (const StageResult& stage : result.stages) {
    const solver::StageFacts facts = facts_of(stage);
    const std::string done = done_in_words(result.job, stage.operations);
    if (!facts.stands) {
      content.add({stage.name, significant(stage.day, 4), done, "DOES NOT STAND: see the summary"},
                  RowKind::fails);
      continue;
    }
    content.add({stage.name, significant(stage.day, 4), done, needle_words(facts),
                 fine_millimetres(facts.settlement), fine_millimetres(facts.widest_crack),
                 damage_words(facts.damage), loose_kilonewtons(facts.loose_weight),
                 lower_factor_words(facts.factor)},
                kind_of(facts));
  }
  return content +
         Paragraph{
             "Damage: category 0 (negligible) to 5 (very severe) of the masonry above the soffit, "
             "since the first stage. Loose: masonry that would fall, by the cracked analysis. "
             "Factor: on all loads, if masonry bears no tension; the true one is no less. A dash: not known.",
             Tone::small};
}

std::string end_words(const mesh::Point& end) {
  return fmt::format("{}, {}", whole_millimetres(end.x), whole_millimetres(end.y));
}

bool is_cracking_analysed(const solver::Job& job) {
  return std::ranges::count(job.analysis.masonry, solver::MasonryModel::cracked) > 0;
}

Blocks cracks(const solver::JobResult& result) {
  if (!is_cracking_analysed(result.job)) return {};
  const Blocks heading = Heading{"Cracks"};
  const solver::StageAnalysis widest = worst_analysis(
      result, solver::MasonryModel::cracked,
      [](const PanelResult& a) { return a.cracks.empty() ? 0.0 : a.cracks.front().width; });
  if (widest.analysis == nullptr || widest.analysis->cracks.empty()) {
    return heading + Paragraph{"No crack wider than a hair in any stage."};
  }
  const std::vector<solver::Crack>& found = widest.analysis->cracks;
  Table content{"cracks",
                fmt::format("Widest first, in stage \u201c{}\u201d, which has the widest; places "
                            "are x and height in mm",
                            widest.stage->name),
                {"Where", numeric("Width mm"), numeric("Length mm"), numeric("From"), numeric("To"),
                 numeric("From level \u00b0")}};
  for (std::size_t i = 0; i < std::min(found.size(), most_cracks); ++i) {
    const solver::Crack& crack = found[i];
    content.add({crack.where, fine_millimetres(crack.width), whole_millimetres(crack.length),
                 end_words(crack.from), end_words(crack.to), whole_millimetres(crack.angle)});
  }
  const std::string more =
      found.size() > most_cracks
          ? fmt::format("There are {} more, none wider. ", found.size() - most_cracks)
          : "";
  return heading + content +
         Paragraph{more +
                       "Widths come from the strain over elements of a continuous material: they "
                       "tell where and about how wide, not each crack by itself.",
                   Tone::small};
}

Blocks damage(const solver::JobResult& result) {
  const auto [stage, worst] = worst_damage(result);
  if (worst == nullptr) return {};
  return Heading{"Damage to the masonry that stays"} +
         Paragraph{fmt::format(
             "Worst in stage \u201c{}\u201d: category {} by strain (largest tensile strain {} %, "
             "deflection ratio {} %) and {} by crack width (widest {} mm). {}",
             stage->name, worst->by_strain, significant(100.0 * worst->tensile_strain, 2),
             significant(100.0 * worst->deflection_ratio, 2), worst->by_width,
             fine_millimetres(worst->widest_crack), as_sentence(worst->in_words))} +
         Paragraph{
             "Categories by limiting tensile strain: Burland, Broms and de Mello 1977; Boscardin "
             "and Cording 1989.",
             Tone::small};
}

/// Says where the work ends, if a stage does not stand.
Blocks end_of_work(const solver::JobResult& result) {
  if (result.stages.empty() || facts_of(result.stages.back()).stands) return {};
  const std::string failed = result.stages.back().name;
  const std::size_t count = result.stages.size();
  const std::string safe = count < 2
                               ? "No stage before it was analysed."
                               : fmt::format("The last stage in which it stands is \u201c{}\u201d.",
                                             result.stages[count - 2].name);
  return callout(Severity::alarm,
                 fmt::format("The wall does not stand in stage \u201c{}\u201d.", failed),
                 safe + " Nothing after it was analysed: the stages that follow are not here.");
}

}  // namespace

Blocks stress_figures(FigureShelf& figures) {
  Blocks drawn;
  for (const char* beginning : {"compression-", "load-flow-", "deformed-"}) {
    drawn += figures.take_all(beginning);
  }
  return drawn;
}

Chapter stages_chapter(const solver::JobResult& result, FigureShelf& figures) {
  if (!is_staged(result)) return {};
  const Blocks opening =
      Paragraph{
          "The work in its order. Each stage starts from the state the one before left: what is "
          "added comes in stress-free, what is taken out gives its load to what is left."} +
      end_of_work(result);
  Blocks body = work_table(result) + stage_reactions(result) + figures.take("reactions-by-stage") +
                cracks(result);
  body += figures.take_all("cracks-");
  body += damage(result);
  body += stress_figures(figures);
  body += figures.take("stages");
  return {"stages", "Stages of the work", opening, body};
}

}  // namespace deadshore::io
