#include "io/sheet/sheet.h"

#include "io/document/built_in.h"
#include "io/document/html.h"
#include "io/note/wording.h"
#include "io/sheet/site_steps.h"
#include "solver/study/envelope.h"
#include "solver/study/verdict.h"
#include "viz/figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <variant>
#include <vector>

namespace deadshore::io {
namespace {

const std::string none = "\u2013";

std::string tenths(double mm) {
  constexpr double nothing = 0.05;  // would print as "-0.0"
  return std::isfinite(mm) ? fmt::format("{:.1f}", std::abs(mm) < nothing ? 0.0 : mm) : none;
}

std::string stop_words(const SiteStep& step) {
  return step.movement.past_stop ? "ask" : tenths(step.movement.stop_at);
}

std::string needle_words(const SiteStep& step) {
  return step.needle.empty() ? none
                             : fmt::format("{} {}", step.needle, kilonewtons(step.needle_load));
}

void add_step(Table& steps, const SiteStep& step) {
  const std::string number = std::to_string(step.number);
  const std::string day = significant(step.day, 4);
  const Text title = strong(step.title + ".");
  if (!step.stands) {
    steps.add({number, day,
               title + " " + strong("STOP: the wall does not stand in this step.") +
                   " No figures are given. Do not begin: change the order of work or the supports, "
                   "and run it again."},
              RowKind::fails);
    return;
  }
  Text holds;
  for (const std::string& hold : step.hold_points) holds.runs.push_back({hold, Mark::hold});
  steps.add({number, day, title + fmt::format(" {}", fmt::join(step.work, " ")), holds,
             needle_words(step), tenths(step.movement.expected), stop_words(step), ""});
}

/// The steps, each with its hold points to tick and its figures.
Table steps_table(const std::vector<SiteStep>& plan) {
  Table steps{"steps",
              "",
              {numeric(""), numeric("Day"), "Step", "Hold: tick before the next step",
               numeric("Needle, most kN"), numeric("Moves mm"), numeric("Stop at mm"), "Initials"}};
  steps.columns[6].strong = true;
  for (const SiteStep& step : plan) add_step(steps, step);
  return steps;
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
      const std::string member = fmt::format("{} {} prop", needle.name, prop.mark);
      const auto safe = std::ranges::find_if(result.checks, [&](const solver::Check& check) {
        return check.member == member && check.check == "prop strength";
      });
      if (safe != result.checks.end())
        words += fmt::format(" of {} safe", kilonewtons(safe->capacity * solver::kN));
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
    return 100.0 * solver::strength_at(beam.packing, age) / beam.packing.strength;
  };
  return {
      fmt::format("Beam: {} a metre, {}.", kilograms(beam.weight() * 1e3),
                  beam.count == 1 ? "one section" : "both sections together"),
      fmt::format("Dry packing has {:.0f} % of its strength after 1 day, {:.0f} % after 3, "
                  "{:.0f} % after 7, all after 28 at 20 \u00b0C, if it is kept damp and "
                  "at {:.0f} \u00b0C.",
                  share_at(1.0), share_at(3.0), share_at(7.0), beam.packing.curing_temperature())};
}

/// Each needle with its props, as far as they are known.
Table schedule(const solver::JobResult& result) {
  const std::vector<solver::EnvelopedLoad> envelope = solver::envelope_of(result);
  std::set<std::string> sections;
  for (const solver::Needle& needle : result.job.needles) {
    sections.insert(section_of(result.job, needle));
  }
  const bool alike = sections.size() == 1;
  Table content{"schedule",
                fmt::format("Needles{} and props, props set to mm; most load of each, unfactored",
                            alike && *sections.begin() != none ? " " + *sections.begin() : ""),
                {"Needle", numeric("x mm"), numeric("Preload kN"), numeric("Most kN"), "Props"}};
  if (!alike) content.columns.emplace_back("Section");
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const solver::Needle& needle = result.job.needles[i];
    const solver::NeedleId id{i};
    std::vector<Text> cells = {needle.name, whole_millimetres(needle.x),
                               needle.preload > 0.0 ? kilonewtons(needle.preload) : none,
                               expected_load(envelope, id), prop_words(result, id)};
    if (!alike) cells.push_back(section_of(result.job, needle));
    content.add(std::move(cells));
  }
  return content;
}

/// What is fixed where to be read, with the most expected of it.
Table marks_table(const solver::JobResult& result) {
  Table content{"marks",
                "Marks to watch, on sound masonry just above the soffit",
                {"Mark", "Where", numeric("x mm"), numeric("Sinks mm"), "Zero reading"}};
  std::size_t place = 0;
  for (const solver::MonitoringMark& mark : result.monitoring.marks) {
    content.add({mark_name(place++), mark_place(result.job, mark), whole_millimetres(mark.at.x),
                 most_of(mark), ""});
  }
  return content;
}

/// What comes out and what it weighs, and how the packing hardens.
List weights_and_times(const solver::JobResult& result) {
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
      "Over 25 kg: two people; over 50 kg: break it or use a machine (common practice, no source; "
      "local rules and the person decide).");
  return bullets(facts);
}

/// Who designed, checked, and permits to load and to strike: blanks.
Table signatures() {
  Table content{"signatures", "", {"", "Name", "Date", "Signature"}};
  for (const char* const who : {"Designed", "Checked", "Permit to load (before masonry comes out)",
                                "Permit to strike (before a needle is eased)"}) {
    content.add({who, "", "", ""});
  }
  return content;
}

/// Repeated at the top of every page.
Html running_head(const std::string& title) {
  const Html words =
      element("span", html_of("Site sheet \u00b7 " + title)) +
      element("span", html_of("deadshore " DEADSHORE_VERSION " \u00b7 goes with the design note"));
  return element("thead", element("tr", element("th", element("div", words, "running"))));
}

Html picture(const solver::JobResult& result) {
  std::vector<viz::SiteMark> marks;
  for (const solver::MonitoringMark& mark : result.monitoring.marks) {
    marks.push_back({mark_name(marks.size()), mark.at});
  }
  return element("div",
                 inline_svg(viz::site_elevation_svg(result, marks), "sheet-",
                            "The wall as cut, with its needles and the marks to watch. mm"),
                 "picture");
}

/// Across the top where anything fails: what, and by how much.
Html not_to_be_built(const solver::JobResult& result) {
  const solver::Verdict verdict = verdict_of(result);
  if (verdict.nothing_fails()) return {};
  constexpr std::size_t most = 5;
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < std::min(most, verdict.fails.size()); ++i) {
    const solver::Check& check = verdict.fails[i];
    lines.push_back(fmt::format("{}, {}: {:.3g} where {:.3g} {} is its limit", check.member,
                                check.check, check.demand, check.capacity, check.unit));
  }
  if (verdict.fails.size() > most)
    lines.push_back(fmt::format("and {} more", verdict.fails.size() - most));
  Blocks body = callout(Severity::alarm, "NOT TO BE BUILT.", listed(objections(verdict)) + ".");
  if (!lines.empty()) body += bullets(lines);
  return element("div", html_of(body), "stop");
}

/// What nobody has looked at: it stops the work as much as what fails.
Blocks not_looked_at(const solver::JobResult& result) {
  const std::size_t open = verdict_of(result).not_verified.size();
  if (open == 0) return {};
  return callout(Severity::warning, "Not verified:",
                 fmt::format("{} in the design note that the engineer has to settle before work "
                             "begins.",
                             open == 1 ? "1 check" : fmt::format("{} checks", open)));
}

Blocks alarm(const std::vector<SiteStep>& steps) {
  if (!std::ranges::all_of(steps, &SiteStep::stands)) {
    return callout(Severity::alarm, "DO NOT BEGIN.",
                   "In this order of work the wall comes to a step in which it does not stand.");
  }
  const auto past_stop = [](const SiteStep& step) { return step.movement.past_stop; };
  if (std::ranges::any_of(steps, past_stop)) {
    return callout(
        Severity::alarm, "Ask the engineer first.",
        "Where the stop value says \u201cask\u201d, the movement expected is itself past what the "
        "rule below allows. Nobody begins that step before the engineer has set a value.");
  }
  return {};
}

List monitoring_rules(const solver::Monitoring& monitoring) {
  const auto is_known = [](const solver::StageMovement& stage) { return stage.stop_at > 0.0; };
  std::vector<std::string> rules;
  if (std::ranges::any_of(monitoring.stages, is_known)) {
    rules.push_back(stop_rule(monitoring.slight_damage));
    rules.emplace_back(
        "Movement counts from the reading before step 2. Up by more than 1 mm when jacking: stop "
        "too.");
  } else {
    rules.emplace_back(
        "No movement is known for this order of work: the engineer sets the stop values before it "
        "begins.");
  }
  rules.emplace_back("Read every mark before and after each step, and each morning.");
  return bullets(rules);
}

List cautions() {
  return bullets(
      {"Walls fall without warning and kill. Nobody works to this sheet before a structural "
       "engineer has checked it and both permits are signed.",
       "At a stop value, a new crack, a noise, a loose needle: everyone out, tighten nothing under "
       "the wall, ring the engineer.",
       "Nobody in the rooms above, beside or under; a fence on both sides; gas, water and "
       "electricity in the wall proved dead; asbestos looked for.",
       "Local rules, building control and the engineer come before this sheet."});
}

/// Kept on one page.
Html titled(const char* heading, const Blocks& body) {
  return element("div", html_of(Heading{heading, 2} + body), "keep");
}

}  // namespace

std::string sheet_html(const solver::JobResult& result) {
  const std::vector<SiteStep> steps = site_steps(result);
  const std::string& title = result.job.title;
  const Html beside_picture = html_of(schedule(result)) +
                              titled("Weights and times", weights_and_times(result)) +
                              html_of(marks_table(result));
  const Html watching = titled("When to stop", monitoring_rules(result.monitoring)) +
                        titled("People can be hurt", cautions());
  const Html content = not_to_be_built(result) +
                       html_of(Heading{title, 1} + alarm(steps) + not_looked_at(result)) +
                       element("div", picture(result) + element("div", beside_picture), "columns") +
                       titled("Order of work", {}) + html_of(steps_table(steps)) +
                       element("div", watching, "columns even") + html_of(signatures());
  const Html page = running_head(title) + element("tbody", element("tr", element("td", content)));
  return html_page("Site sheet: " + title, sheet_css(), element("table", page, "sheet"));
}

}  // namespace deadshore::io
