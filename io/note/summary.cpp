#include "io/note/sections.h"
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

const solver::NeedleComparison not_compared = {"", solver::not_known, solver::not_known,
                                               solver::not_known, ""};

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
    const std::size_t place = index_of(entry.needle);
    const bool compared = place < result.comparison.size();
    const solver::NeedleComparison loads = compared ? result.comparison[place] : not_compared;
    std::vector<std::string> cells = {result.job.needles.at(place).name, kilonewtons(loads.hand),
                                      kilonewtons(loads.uncracked), kilonewtons(loads.cracked),
                                      kilonewtons(entry.load)};
    if (staged) {
      cells.push_back(entry.method == "hand" ? "by hand" : name_of(result, entry.stage));
    }
    content.add(std::move(cells));
  }
  return table(content);
}

/// The first few, and where the others are.
Html advice_lines(const std::vector<std::string>& lines, std::string_view chapter,
                  std::string_view heading) {
  constexpr std::size_t most = 3;
  Html items;
  for (std::size_t i = 0; i < std::min(lines.size(), most); ++i) {
    items += element("li", text(lines[i] + " ") + link_to(chapter, heading));
  }
  if (lines.size() > most) {
    items += element(
        "li", text(fmt::format("and {} more: ", lines.size() - most)) + link_to(chapter, heading));
  }
  return items;
}

/// What fails, what nobody has looked at, and what the designs say would do better.
Html what_to_change(const solver::JobResult& result) {
  const Html to_mend = checks_to_mend(result);
  const Html advice =
      advice_lines(needle_advice(result), "needle-frames", "Needles, props and ground") +
      advice_lines(shore_advice(result), "dead-shore-frames", "Dead shores");
  Html body = to_mend;
  if (!advice.empty()) body += element("ul", advice);
  if (body.empty()) body = paragraph("Nothing that was looked at asks for a change.");
  return element("h3", text("What to change")) + body;
}

}  // namespace

Chapter summary_section(const solver::JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = envelope_of(result);
  Html body = warnings_of(result) + findings(result, envelope);
  body += what_to_change(result);
  body += stands(result)
              ? design_loads(result, envelope)
              : paragraph(
                    "No load to design for is given, because the wall does not stand. Change "
                    "the arrangement and run it again.");
  body += element(
      "p", text("For the wall on site, on one page: ") +
               Html::trusted("<a href=\"sheet.html\">the site sheet</a>") +
               text(", the steps with their hold points and the movements at which to stop."));
  body += element("p", Html::trusted("<strong>People can be hurt.</strong> ") +
                           text("Nothing is cut on the strength of this note alone: see ") +
                           link_to("not-checked", "what was not checked") + text(" and the ") +
                           link_to("cautions", "cautions") + text("."));
  return section("summary", "Summary", verdict_of(result), body);
}

}  // namespace deadshore::io
