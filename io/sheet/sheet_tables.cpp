#include "io/sheet/sheet_tables.h"

#include "io/note/wording.h"
#include "solver/study/envelope.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string_view>
#include <variant>

namespace deadshore::io {
namespace {

const std::string none = "\u2013";

std::string tenths(double mm) {
  constexpr double nothing = 0.05;  // would print as "-0.0"
  return std::isfinite(mm) ? fmt::format("{:.1f}", std::abs(mm) < nothing ? 0.0 : mm) : none;
}

/// A box to tick, and what it is for.
Html ticked(const std::string& hold) {
  return element("li", Html::trusted("<span class=\"box\"></span>") + text(hold));
}

Html cell(const std::string& words, std::string_view css_class = {}) {
  return element("td", text(words), css_class);
}

std::string stop_words(const SiteStep& step) {
  return step.movement.past_stop ? "ask" : tenths(step.movement.stop_at);
}

std::string needle_words(const SiteStep& step) {
  return step.needle.empty() ? none
                             : fmt::format("{} {}", step.needle, kilonewtons(step.needle_load));
}

Html falling_row(const SiteStep& step) {
  const Html words = element("strong", text("STOP: the wall does not stand in this step.")) +
                     text(
                         " No figures are given. Do not begin: change the order of work or the "
                         "supports, and run it again.");
  return element("tr",
                 cell(std::to_string(step.number), "fig") + cell(significant(step.day, 4), "fig") +
                     Html::trusted("<td colspan=\"6\">") + element("b", text(step.title + ". ")) +
                     words + Html::trusted("</td>"),
                 "fails");
}

Html step_row(const SiteStep& step) {
  if (!step.stands) return falling_row(step);
  Html work = element("b", text(step.title + ". "));
  for (const std::string& sentence : step.work) work += text(sentence + " ");
  Html holds;
  for (const std::string& hold : step.hold_points) holds += ticked(hold);
  return element("tr",
                 cell(std::to_string(step.number), "fig") + cell(significant(step.day, 4), "fig") +
                     element("td", work) + element("td", element("ul", holds, "holds")) +
                     cell(needle_words(step), "fig") + cell(tenths(step.movement.expected), "fig") +
                     cell(stop_words(step), "fig stop") + cell(""));
}

/// "UC 203x203x46", "timber 100 x 225 C24".
std::string section_words(const solver::NeedleMember& member) {
  if (const auto* steel = std::get_if<solver::SteelMember>(&member)) return steel->section.name;
  const auto& timber = std::get<solver::TimberMember>(member);
  return fmt::format("timber {} \u00d7 {} {}", millimetres(timber.section.b),
                     millimetres(timber.section.h), timber.strength_class.name);
}

std::string section_of(const solver::Job& job, const solver::Needle& needle) {
  return needle.frame ? section_words(job.needle_frames.at(*needle.frame).member) : none;
}

/// "inner B35 at 2197, 12.3 kN" of each prop; without load where none was worked out.
std::string prop_words(const solver::JobResult& result, solver::NeedleId id) {
  const solver::Needle& needle = result.job.needles.at(index_of(id));
  if (!needle.frame) return "as designed by others";
  const solver::NeedleFrame& frame = result.job.needle_frames.at(*needle.frame);
  const auto design = std::ranges::find(result.needle_designs, id, &solver::NeedleDesign::needle);
  std::vector<std::string> props;
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    const solver::NeedleProp& prop = frame.props[i];
    std::string words =
        fmt::format("{} {} at {}", prop.mark, prop.prop.name,
                    whole_millimetres(extension_of(frame, prop, result.job.wall.cut.soffit)));
    if (design != result.needle_designs.end() && i < design->answer.props.size()) {
      words += fmt::format(", {} kN", kilonewtons(design->answer.props[i].load));
    }
    props.push_back(std::move(words));
  }
  return fmt::format("{}", fmt::join(props, "; "));
}

std::string expected_load(const std::vector<solver::EnvelopedLoad>& envelope,
                          solver::NeedleId needle) {
  const auto found = std::ranges::find(envelope, needle, &solver::EnvelopedLoad::needle);
  return found == envelope.end() ? none : kilonewtons(found->load);
}

std::string most_of(const solver::MonitoringMark& mark) {
  double most = solver::not_known;
  for (const double movement : mark.movement) {
    if (!(movement <= most) && std::isfinite(movement)) most = movement;
  }
  return tenths(most);
}

std::string kilograms(double newtons) {
  constexpr double g = 9.81;  // m/s2
  return fmt::format("{:.0f} kg", newtons / g);
}

std::string lintel_sentence(const solver::RemovedLintel& lintel) {
  const std::string pieces = lintel.pieces == 1 ? "one piece"
                                                : fmt::format("{} pieces of {}", lintel.pieces,
                                                              kilograms(lintel.piece_weight));
  return fmt::format("{} {}: {}, {}", lintel.name, kilograms(lintel.weight), pieces,
                     lintel.one_person ? "one person" : "two people");
}

std::vector<std::string> weight_sentences(const solver::RemovedMasonry& removed) {
  if (!(removed.weight > 0.0)) return {};
  std::vector<std::string> sentences = {fmt::format("Comes out: {} in all, {:.1f} m\u00b3 loose.",
                                                    kilograms(removed.weight),
                                                    removed.loose_volume / 1e9)};
  if (!removed.courses.empty()) {
    const auto heaviest =
        std::ranges::max_element(removed.courses, {}, &solver::RemovedCourse::weight);
    sentences.push_back(fmt::format("Heaviest course {}.", kilograms(heaviest->weight)));
  }
  std::vector<std::string> lintels;
  for (const auto& lintel : removed.lintels) lintels.push_back(lintel_sentence(lintel));
  if (!lintels.empty()) sentences.push_back(fmt::format("{}.", fmt::join(lintels, "; ")));
  return sentences;
}

std::vector<std::string> beam_sentences(const solver::PermanentBeam& beam) {
  const auto share_at = [&](double age) {
    return 100.0 * solver::hardened_strength_share(beam.packing, age);
  };
  return {fmt::format("Beam: {} a metre, {}.", kilograms(beam.weight() * 1e3),
                      beam.count == 1 ? "one section" : "both sections together"),
          fmt::format("Dry packing has {:.0f} % of its strength after 1 day, {:.0f} % after 3, "
                      "{:.0f} % after 7, all after 28, if it is kept damp and warm.",
                      share_at(1.0), share_at(3.0), share_at(7.0))};
}

}  // namespace

Html sheet_steps(std::span<const SiteStep> steps) {
  constexpr std::array<std::string_view, 8> headings = {
      "",         "Day",        "Step",    "Hold: tick before the next step", "Needle, most kN",
      "Moves mm", "Stop at mm", "Initials"};
  Html head;
  for (const std::string_view heading : headings) head += element("th", text(heading));
  Html rows;
  for (const SiteStep& step : steps) rows += step_row(step);
  return Html::trusted("<table id=\"steps\">\n") + element("thead", element("tr", head)) +
         element("tbody", rows) + Html::trusted("</table>\n");
}

Html sheet_schedule(const solver::JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = solver::envelope_of(result);
  std::set<std::string> sections;
  for (const solver::Needle& needle : result.job.needles) {
    sections.insert(section_of(result.job, needle));
  }
  const bool alike = sections.size() == 1;
  Table content{"schedule",
                fmt::format("Needles{} and props, props set to mm; most load of each, unfactored",
                            alike && *sections.begin() != none ? " " + *sections.begin() : ""),
                {{"Needle"}, {"x mm", true}, {"Preload kN", true}, {"Most kN", true}, {"Props"}},
                {}};
  if (!alike) content.columns.push_back({"Section"});
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const solver::Needle& needle = result.job.needles[i];
    std::vector<std::string> cells = {needle.name, whole_millimetres(needle.x),
                                      needle.preload > 0.0 ? kilonewtons(needle.preload) : none,
                                      expected_load(envelope, solver::NeedleId{i}),
                                      prop_words(result, solver::NeedleId{i})};
    if (!alike) cells.push_back(section_of(result.job, needle));
    content.add(std::move(cells));
  }
  return table(content);
}

Html sheet_marks(const solver::JobResult& result) {
  Table content{"marks",
                "Marks to watch, on sound masonry just above the soffit",
                {{"Mark"}, {"Where"}, {"x mm", true}, {"Sinks mm", true}, {"Zero reading"}},
                {}};
  std::size_t place = 0;
  for (const solver::MonitoringMark& mark : result.monitoring.marks) {
    content.add({mark_name(place++), mark_place(result.job, mark), whole_millimetres(mark.at.x),
                 most_of(mark), ""});
  }
  return table(content);
}

Html sheet_facts(const solver::JobResult& result) {
  std::vector<std::string> facts = weight_sentences(result.removed);
  if (result.job.beam) {
    const std::vector<std::string> beam = beam_sentences(*result.job.beam);
    facts.insert(facts.end(), beam.begin(), beam.end());
  }
  for (const solver::ShoreDesign& shore : result.shores) {
    facts.push_back(fmt::format("{}: {} uprights of {} mm.", shore.name, shore.uprights.size(),
                                whole_millimetres(shore.length)));
  }
  facts.emplace_back(
      "Over 25 kg: two people; over 50 kg: break it or use a machine (common "
      "practice, no source; local rules and the person decide).");
  return bullets(facts);
}

Html sheet_signatures() {
  Table content{"signatures", "", {{""}, {"Name"}, {"Date"}, {"Signature"}}, {}};
  for (const char* const who : {"Designed", "Checked", "Permit to load (before masonry comes out)",
                                "Permit to strike (before a needle is eased)"}) {
    content.add({who, "", "", ""});
  }
  return table(content);
}

}  // namespace deadshore::io
