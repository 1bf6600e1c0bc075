#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

std::string counted(std::ptrdiff_t count, const char* one, const char* many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

bool any_loose(const solver::JobResult& result) {
  return std::ranges::any_of(result.stages, [](const solver::StageResult& stage) {
    return facts_of(stage).loose_weight > 0.0;
  });
}

/// What speaks against building it so.
std::vector<std::string> objections(const solver::JobResult& result) {
  std::vector<std::string> found;
  if (!stands(result)) found.emplace_back("the wall does not stand");
  const auto failing = std::ranges::count_if(result.checks, [](const solver::Check& check) {
    return !check.not_verified && !check.passes();
  });
  if (failing > 0) found.push_back(counted(failing, "check fails", "checks fail"));
  if (any_loose(result)) found.emplace_back("masonry is loose");
  const solver::StageResult* least = stage_of_least_factor(result);
  if (least != nullptr && !solver::is_safe_without_tension(least->safety->factor)) {
    found.emplace_back("the wall stands by tension alone");
  }
  return found;
}

Blocks verdict_of(const solver::JobResult& result) {
  if (const std::vector<std::string> found = objections(result); !found.empty()) {
    return callout(Severity::alarm, "Not as it is:", listed(found) + ".");
  }
  const auto open = std::ranges::count_if(result.checks, &solver::Check::not_verified);
  const auto made = static_cast<std::ptrdiff_t>(result.checks.size()) - open;
  if (made == 0) {
    return callout(Severity::warning, "It stands, but no member was checked.",
                   "Needles whose stiffness is given outright, their props and the ground are for "
                   "somebody else to check.");
  }
  const std::string passing =
      fmt::format("The wall stands in every analysis and {}.",
                  made == 1 ? "the one check that could be made passes"
                            : fmt::format("all {} checks that could be made pass", made));
  if (open > 0) {
    return callout(Severity::warning,
                   fmt::format("It holds as far as it could be checked; {} not verified.",
                               counted(open, "check is", "checks are")),
                   passing);
  }
  return callout(Severity::good, "It holds by every check made here.", passing);
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
  return {"summary", "Summary", verdict_of(result), body};
}

}  // namespace deadshore::io
