#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/result/sensitivity_words.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::io {
namespace {

using solver::ReactionBracket;
using solver::SupportSensitivity;
using solver::Unsure;

constexpr std::array all_unsure = {Unsure::masonry_stiffness, Unsure::tensile_strength,
                                   Unsure::needle_stiffness, Unsure::packing};

std::string heading_of(Unsure what) {
  const std::string range =
      fmt::format(" \u00d7 {} to {}", solver::least_factor, solver::greatest_factor);
  switch (what) {
    case Unsure::masonry_stiffness:
      return "E of the masonry" + range;
    case Unsure::tensile_strength:
      return "Tensile strength" + range;
    case Unsure::needle_stiffness:
      return "Stiffness of all needles" + range;
    case Unsure::packing:
      return fmt::format("{} mm lost in the packing of one needle", solver::packing_loss);
  }
  return "";
}

/// "5.1 to 7.9", with a star where it is the worst of its row.
std::string words_of(const solver::Job& job, const SupportSensitivity& support, Unsure what) {
  const auto bracket = std::ranges::find(support.brackets, what, &ReactionBracket::what);
  if (bracket == support.brackets.end()) return "\u2013";
  std::string words = kilonewtons(bracket->least) + " to " + kilonewtons(bracket->most);
  const ReactionBracket* worst = support.worst();
  if (worst != nullptr && bracket->needle) {
    words += fmt::format(" ({})", job.needles.at(index_of(*bracket->needle)).name);
  }
  return worst == &*bracket ? "* " + words : words;
}

bool has_any(const solver::Sensitivity& sensitivity, Unsure what) {
  return std::ranges::any_of(sensitivity.supports, [what](const SupportSensitivity& support) {
    return std::ranges::count(support.brackets, what, &ReactionBracket::what) > 0;
  });
}

/// ", stage \u201ccut\u201d": all supports are looked at in the same one.
std::string stage_of(const solver::JobResult& result, const solver::Sensitivity& sensitivity) {
  if (!is_staged(result) || sensitivity.supports.empty()) return "";
  return fmt::format(", stage \u201c{}\u201d",
                     result.stages.at(index_of(sensitivity.supports.front().stage)).name);
}

Table brackets_table(const solver::JobResult& result, const solver::Sensitivity& sensitivity) {
  Table content{fmt::format("what-if-{}", solver::to_string(sensitivity.model)),
                fmt::format("What if: reactions with {}{}, least to most, kN; * moves it most",
                            masonry_phrase(sensitivity.model), stage_of(result, sensitivity)),
                {Column{"Support"}}};
  content.columns.push_back(numeric("As given"));
  std::vector<Unsure> columns;
  for (const Unsure what : all_unsure) {
    if (has_any(sensitivity, what)) columns.push_back(what);
  }
  for (const Unsure what : columns) content.columns.push_back(numeric(heading_of(what)));
  for (const SupportSensitivity& support : sensitivity.supports) {
    std::vector<Text> cells = {label_of(result.job, support.support)};
    cells.push_back(kilonewtons(support.reaction));
    for (const Unsure what : columns) cells.push_back(words_of(result.job, support, what));
    content.add(std::move(cells));
  }
  return content;
}

std::string how_found(const solver::Sensitivity& sensitivity) {
  const std::string size = millimetres(sensitivity.mesh_size);
  const char* model = solver::to_string(sensitivity.model);
  return sensitivity.by_differences
             ? fmt::format("{}: changes found on elements of {} mm, added to the reactions above. ",
                           model, size)
             : fmt::format("{}: found on elements of {} mm, the analysis\u2019s own. ", model,
                           size);
}

Blocks without_answer(const solver::Sensitivity& sensitivity) {
  if (sensitivity.falls.empty()) return {};
  return callout(
      Severity::warning, "No answer.",
      fmt::format("With {} for: {}. The wall may not stand then; nothing of it is in the brackets.",
                  masonry_phrase(sensitivity.model), listed(sensitivity.falls)));
}

}  // namespace

Blocks what_if(const solver::JobResult& result) {
  if (result.sensitivities.empty()) return {};
  Blocks body = Heading{"What if"};
  std::string found;
  for (const solver::Sensitivity& sensitivity : result.sensitivities) {
    body += brackets_table(result, sensitivity) + without_answer(sensitivity);
    found += how_found(sensitivity);
  }
  found[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(found[0])));
  return body +
         Paragraph{found +
                       "One thing is changed at a time, all else stays as given: several at once "
                       "may do more. Needles keep the stiffness found for them, whatever they "
                       "carry then. Of stages the one is looked at in which the needles together "
                       "carry most. The ranges are common practice, no source. In brackets the "
                       "needle whose packing does most; a preload is lost with it.",
                   Tone::small};
}

}  // namespace deadshore::io
