#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"
#include "solver/study/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

/// How strongly it is used, how far it moves.
std::string figures_of(const solver::Verdict& verdict) {
  std::string text;
  if (verdict.governs) {
    text = fmt::format(" Of the strength checks {}, {} governs, used to {}.",
                       verdict.governs->member, verdict.governs->check,
                       std::isfinite(verdict.governs->utilisation())
                           ? fmt::format("{} %", percent(verdict.governs->utilisation()))
                           : "more than it has");
  }
  if (std::isfinite(verdict.movement_since_start)) {
    text += fmt::format(" Since work began the wall moves down {} mm.",
                        fine_millimetres(verdict.movement_since_start));
  }
  return text;
}

Blocks verdict_callout(const solver::JobResult& result) {
  const solver::Verdict verdict = verdict_of(result);
  if (const std::vector<std::string> found = objections(verdict); !found.empty()) {
    return callout(Severity::alarm,
                   "Not to be built as it is:", listed(found) + "." + figures_of(verdict));
  }
  const std::size_t open = verdict.not_verified.size();
  const std::size_t made = verdict.made;
  if (made == 0) {
    return callout(Severity::warning, "It stands, but no member was checked.",
                   "Needles whose stiffness is given outright, their props and the ground are for "
                   "somebody else to check.");
  }
  const std::string passing =
      fmt::format("The wall stands in every analysis and {}.{}",
                  made == 1 ? "the one check that could be made passes"
                            : fmt::format("all {} checks that could be made pass", made),
                  figures_of(verdict));
  if (open > 0) {
    return callout(Severity::warning,
                   open == 1 ? "1 check is not verified: nobody may build it before it is."
                             : fmt::format("{} checks are not verified: nobody may build it "
                                           "before they are.",
                                           open),
                   passing);
  }
  return callout(Severity::warning, solver::at_most, passing);
}

const solver::NeedleComparison not_compared = {"", solver::not_known, solver::not_known,
                                               solver::not_known, ""};

Blocks design_loads(const solver::JobResult& result,
                    const std::vector<solver::EnvelopedLoad>& envelope) {
  if (envelope.empty()) return Paragraph{"There are no needles."};
  const bool staged = is_staged(result);
  Table content{
      "design-loads",
      "Load on each needle, kN, characteristic; design it, its props and what they stand on for "
      "the largest found by any method",
      {"Needle", numeric("Hand"), numeric("Uncracked"), numeric("Cracked"), numeric("Design for")}};
  content.columns.back().strong = true;
  if (staged) content.columns.emplace_back("In stage");
  for (const solver::EnvelopedLoad& entry : envelope) {
    const std::size_t place = index_of(entry.needle);
    const bool compared = place < result.comparison.size();
    const solver::NeedleComparison loads = compared ? result.comparison[place] : not_compared;
    std::vector<Text> cells = {result.job.needles.at(place).name, kilonewtons(loads.hand),
                               kilonewtons(loads.uncracked), kilonewtons(loads.cracked),
                               kilonewtons(entry.load)};
    if (staged) {
      cells.push_back(entry.method == "hand" ? "by hand" : name_of(result, entry.stage));
    }
    content.add(std::move(cells));
  }
  return content;
}

/// The first few, and where the others are.
void add_advice(List& list, const std::vector<std::string>& lines, const Text& chapter) {
  constexpr std::size_t most = 3;
  for (std::size_t i = 0; i < std::min(lines.size(), most); ++i) {
    list.items.push_back(lines[i] + " " + chapter);
  }
  if (lines.size() > most) {
    list.items.push_back(fmt::format("and {} more: ", lines.size() - most) + chapter);
  }
}

/// What fails, what nobody has looked at, and what the designs say would do better.
Blocks what_to_change(const solver::JobResult& result) {
  List advice;
  add_advice(advice, needle_advice(result), link_to("#needle-frames", "Needles, props and ground"));
  add_advice(advice, shore_advice(result), link_to("#dead-shore-frames", "Dead shores"));
  Blocks body = checks_to_mend(result);
  if (!advice.items.empty()) body += advice;
  if (body.empty()) body = Paragraph{"Nothing that was looked at asks for a change."};
  return Heading{"What to change"} + body;
}

}  // namespace

Chapter summary_chapter(const solver::JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = envelope_of(result);
  Blocks body = warnings_of(result) + findings_table(result, envelope);
  body += what_to_change(result);
  body += stands(result) ? design_loads(result, envelope)
                         : Paragraph{
                               "No load to design for is given, because the wall does not stand. "
                               "Change the arrangement and run it again."};
  body +=
      Paragraph{"For the wall on site, on one page: " + link_to("sheet.html", "the site sheet") +
                ", the steps with their hold points and the movements at which to stop."};
  body += Paragraph{strong("People can be hurt.") +
                    " Nothing is cut on the strength of this note alone: see " +
                    link_to("#not-checked", "what was not checked") + " and the " +
                    link_to("#cautions", "cautions") + "."};
  return {"summary", "Summary", verdict_callout(result), body};
}

}  // namespace deadshore::io
