#include "io/job/schema_pages.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <sstream>
#include <string_view>

namespace deadshore::io {

namespace {

using solver::Act;

constexpr std::size_t line_width = 100;

std::string as_toml(const std::string& text) {
  const toml::value<std::string> value(text);
  std::ostringstream out;
  out << toml::toml_formatter(value, toml::format_flags::none);
  return out.str();
}

std::string_view remark_on_removal(const solver::Target& target) {
  if (target == solver::Target{solver::WorkPart::cut}) return "The masonry of the cut comes out.";
  if (target == solver::Target{solver::WorkPart::pockets}) {
    return "Pockets for the beam's ends and padstones are cut into the piers.";
  }
  return "Lintels in the cut come out.";
}

std::string_view remark_on(const solver::Operation& operation) {
  switch (operation.act) {
    case Act::fit:
      return "Needles go in, packed under the soffit.";
    case Act::preload:
      return "Needles are jacked up to their preload.";
    case Act::release:
      return "Needles are eased and taken out.";
    case Act::remove:
      return remark_on_removal(operation.target);
    case Act::place:
      return operation.target == solver::Target{solver::WorkPart::beam}
                 ? "The beam goes in on its padstones."
                 : "Padstones go in.";
    case Act::pack:
      return "The gap over the beam is packed; the packing hardens from this day.";
    case Act::tighten:
      return "Dead shores take floors off the wall.";
    case Act::slacken:
      return "Dead shores give the floors back.";
    case Act::load_on:
      return "Loads come on.";
    case Act::load_off:
      return "Loads are taken off.";
  }
  return "";
}

/// Lines of comment: each remark once, in the order of the work.
std::string remarks_on(const solver::Stage& stage) {
  if (stage.operations.empty()) return "# Nothing is done.\n";
  std::string text;
  for (const solver::Operation& operation : stage.operations) {
    const std::string line = fmt::format("# {}\n", remark_on(operation));
    if (text.find(line) == std::string::npos) text += line;
  }
  return text;
}

/// A list of texts, over several lines where it is long.
std::string list_of(const solver::Job& job, const std::vector<solver::Operation>& operations) {
  constexpr std::string_view indent = "        ";
  std::string text;
  std::size_t line = indent.size();
  for (std::size_t i = 0; i < operations.size(); ++i) {
    const std::string entry = as_toml(in_words(job, operations[i]));
    const bool last = i + 1 == operations.size();
    const std::size_t needed = entry.size() + (last ? 1 : 2);
    if (i > 0 && line + needed > line_width) {
      text += fmt::format("\n{}", indent);
      line = indent.size();
    } else if (i > 0) {
      text += ' ';
      ++line;
    }
    text += entry + (last ? "" : ",");
    line += needed;
  }
  return "[" + text + "]";
}

}  // namespace

std::string stage_text(const solver::Job& job, const std::vector<solver::Stage>& stages) {
  std::string text;
  std::string before;
  for (const solver::Stage& stage : stages) {
    const std::string remarks = remarks_on(stage);
    text += fmt::format("{}{}[[stage]]\nname = {}\nday  = {}\ndo   = {}\n",
                        text.empty() ? "" : "\n", remarks == before ? "" : remarks,
                        as_toml(stage.name), stage.day, list_of(job, stage.operations));
    before = remarks;
  }
  return text;
}

}  // namespace deadshore::io
