#include "io/sheet/step_words.h"

#include "io/note/wording.h"
#include "io/results/work_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <optional>
#include <set>
#include <variant>

namespace deadshore::io {
namespace {

using solver::Act;
using solver::Operation;
using solver::Stage;
using solver::Target;
using solver::WorkPart;

bool is_needle_in(const Operation& operation) {
  return operation.act == Act::fit || operation.act == Act::preload;
}

/// "N1 jacked to 6.0 kN", "N2 with a gap of 2 mm left".
std::string needle_words(const solver::Job& job, const Target& target,
                         std::span<const Operation> operations) {
  const solver::Needle& needle = job.needles.at(index_of(std::get<solver::NeedleId>(target)));
  if (std::ranges::count(operations, Operation{Act::preload, target}) > 0) {
    return fmt::format("{} to {} kN", needle.name, kilonewtons(needle.preload));
  }
  return needle.slack > 0.0
             ? fmt::format("{} with a gap of {} mm left", needle.name, millimetres(needle.slack))
             : needle.name;
}

/// A run of needles fitted and jacked, as one sentence.
std::string needles_sentence(const solver::Job& job, std::span<const Operation> operations) {
  const bool fitted = std::ranges::count(operations, Act::fit, &Operation::act) > 0;
  const bool jacked = std::ranges::count(operations, Act::preload, &Operation::act) > 0;
  std::vector<std::string> needles;
  std::set<Target> told;
  for (const Operation& operation : operations) {
    if (told.insert(operation.target).second) {
      needles.push_back(needle_words(job, operation.target, operations));
    }
  }
  const char* const how = fitted && jacked ? "Needle in on its props and packed, then jacked"
                          : fitted         ? "Needle in on its props and packed"
                                           : "Jack";
  return fmt::format("{}{}: {}.", how, needles.size() > 1 ? ", one after the other" : "",
                     listed(needles));
}

std::string beam_words(const solver::JobResult& result, const solver::PermanentBeam& beam) {
  return fmt::format("Set {} ({}{}) on the padstones, {} mm bearing at each end{}.", beam.name,
                     beam.count > 1 ? fmt::format("{} \u00d7 ", beam.count) : "",
                     beam.member.section.name, millimetres(beam.bearing),
                     result.lift ? ", lifted as the note says" : "");
}

std::string padstone_words(const solver::PermanentBeam& beam) {
  return fmt::format("Bed both padstones, {} mm long, {} mm deep, full thickness of the wall.",
                     millimetres(beam.padstone.length), millimetres(beam.padstone.depth));
}

std::string cut_words(const solver::JobResult& result) {
  const mesh::Cut& cut = result.job.wall.cut;
  return fmt::format("Take out the masonry from x = {} to {} mm up to {} mm, from the top down.",
                     millimetres(cut.left), millimetres(cut.right), millimetres(cut.soffit));
}

std::string lintel_words(const solver::JobResult& result, solver::LintelId lintel) {
  const auto& lintels = result.removed.lintels;
  const std::string& name = result.job.lintels.at(index_of(lintel)).shape.name;
  const auto found = std::ranges::find(lintels, lintel, &solver::RemovedLintel::lintel);
  if (found == lintels.end()) return fmt::format("Take out {}.", name);
  return fmt::format("Take out {} ({} kN).", name, fine_kilonewtons(found->weight));
}

std::string removal_words(const solver::JobResult& result, const Target& target) {
  if (const auto* lintel = std::get_if<solver::LintelId>(&target)) {
    return lintel_words(result, *lintel);
  }
  if (target == Target{WorkPart::cut}) return cut_words(result);
  return "Cut pockets for beam ends and padstones, one pier after the other.";
}

/// Operations that say more on site than in the note; empty for the rest.
std::string detailed_words(const solver::JobResult& result, const Operation& operation) {
  const std::optional<solver::PermanentBeam>& beam = result.job.beam;
  switch (operation.act) {
    case Act::remove:
      return removal_words(result, operation.target);
    case Act::place:
      if (!beam) return "";
      return operation.target == Target{WorkPart::beam} ? beam_words(result, *beam)
                                                        : padstone_words(*beam);
    case Act::pack:
      if (!beam) return "";
      return fmt::format("Ram dry packing, {} mm, over the whole beam.",
                         millimetres(beam->packing.thickness));
    case Act::release:
      return fmt::format("Ease {} down slowly and take it out.",
                         name_of(result.job, operation.target));
    default:
      return "";
  }
}

std::string sentence_of(const solver::JobResult& result, const Operation& operation) {
  std::string words = detailed_words(result, operation);
  if (!words.empty()) return words;
  return with_capital(done_in_words(result.job, std::span(&operation, 1))) + ".";
}

bool does(const Stage& stage, Act act) {
  return std::ranges::count(stage.operations, act, &Operation::act) > 0;
}

/// The first of the stages after `index` for which `is_it` holds; null where there is none.
template <class IsIt>
const Stage* next_that(std::span<const Stage> stages, std::size_t index, const IsIt& is_it) {
  for (const Stage& stage : stages.subspan(index + 1)) {
    if (is_it(stage)) return &stage;
  }
  return nullptr;
}

/// Whether the stage after `index` is the first of all that does this.
bool is_first_next(std::span<const Stage> stages, std::size_t index, Act act) {
  return index + 1 < stages.size() && does(stages[index + 1], act) &&
         std::ranges::none_of(stages.first(index + 1),
                              [&](const Stage& stage) { return does(stage, act); });
}

/// Work that ends with needles in the wall is not over.
std::string last_hold(std::span<const Stage> stages) {
  std::set<Target> in;
  for (const Stage& stage : stages) {
    for (const Operation& operation : stage.operations) {
      if (operation.act == Act::fit) in.insert(operation.target);
      if (operation.act == Act::release) in.erase(operation.target);
    }
  }
  return in.empty() ? "Marks read for the last time."
                    : "The wall hangs on needles: marks read every day until a beam carries it.";
}

std::string days_words(double days) {
  return fmt::format("{} day{}", significant(days, 3), days == 1.0 ? "" : "s");
}

std::string padstone_hold(std::span<const Stage> stages, std::size_t index) {
  const Stage* const beam = next_that(stages, index, [](const Stage& stage) {
    return does(stage, {Act::place, WorkPart::beam});
  });
  if (beam == nullptr) return "Padstones level.";
  return fmt::format("Padstones level; {} old before the beam goes on.",
                     days_words(beam->day - stages[index].day));
}

std::string packing_hold(const solver::Job& job, std::span<const Stage> stages, std::size_t index) {
  const Stage* const eased =
      next_that(stages, index, [](const Stage& stage) { return does(stage, Act::release); });
  if (eased == nullptr || !job.beam) return "Packing full depth, all along.";
  const double age = eased->day - stages[index].day;
  const solver::DryPacking& packing = job.beam->packing;
  return fmt::format(
      "Packing full depth, all along; {} old before a needle is eased (then {} of {} "
      "N/mm\u00b2).",
      days_words(age), three_figures(solver::strength_at(packing, age)),
      three_figures(packing.strength));
}

/// What is looked at after each kind of work, in the order of the work.
void add_holds_of(const solver::Job& job, std::span<const Stage> stages, std::size_t index,
                  std::vector<std::string>& holds) {
  const Stage& stage = stages[index];
  if (does(stage, Act::tighten)) {
    holds.emplace_back("Dead shores tight before any masonry comes out.");
  }
  if (does(stage, Act::fit) || does(stage, Act::preload)) {
    holds.emplace_back("Needles tight, props plumb and set as scheduled.");
  }
  if (does(stage, Act::preload))
    holds.emplace_back("Jacks read as given, and again after the last.");
  if (does(stage, Act::remove)) {
    holds.emplace_back(does(stage, {Act::remove, WorkPart::pockets})
                           ? "Pockets clean and to size; nothing loose over them."
                           : "Nothing loose, no new crack, needles still tight.");
  }
  if (does(stage, {Act::place, WorkPart::padstones})) holds.push_back(padstone_hold(stages, index));
  if (does(stage, {Act::place, WorkPart::beam}) && job.beam) {
    holds.push_back(fmt::format("Beam level, {} mm on each padstone, {} mm gap over it.",
                                millimetres(job.beam->bearing),
                                millimetres(job.beam->packing.thickness)));
  }
  if (does(stage, Act::pack)) holds.push_back(packing_hold(job, stages, index));
  if (does(stage, Act::release)) {
    holds.emplace_back("Packing, beam and bearings sound, no gap.");
  }
  if (does(stage, Act::slacken)) holds.emplace_back("Joists bear on the wall; no new crack.");
}

}  // namespace

std::string with_capital(std::string words) {
  if (!words.empty()) {
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  }
  return words;
}

std::vector<std::string> work_of_step(const solver::JobResult& result, const Stage& stage) {
  std::vector<std::string> work;
  const std::span<const Operation> operations = stage.operations;
  for (std::size_t first = 0; first < operations.size();) {
    std::size_t next = first;
    while (next < operations.size() && is_needle_in(operations[next])) ++next;
    if (next > first) {
      work.push_back(needles_sentence(result.job, operations.subspan(first, next - first)));
      first = next;
    } else {
      work.push_back(sentence_of(result, operations[first]));
      ++first;
    }
  }
  if (work.empty()) work.emplace_back("Nothing is done to the wall: fix the marks and read them.");
  return work;
}

std::vector<std::string> hold_points_of(const solver::Job& job, std::span<const Stage> stages,
                                        std::size_t index) {
  std::vector<std::string> holds;
  if (index == 0) holds.emplace_back("Marks read twice, alike: that is zero. Services dead.");
  add_holds_of(job, stages, index, holds);
  if (is_first_next(stages, index, Act::remove)) holds.emplace_back("Permit to load signed.");
  if (is_first_next(stages, index, Act::release)) holds.emplace_back("Permit to strike signed.");
  if (index + 1 == stages.size()) {
    holds.push_back(last_hold(stages));
  } else if (stages[index + 1].day > stages[index].day && !does(stages[index], Act::pack) &&
             !does(stages[index], {Act::place, WorkPart::padstones})) {
    holds.push_back(
        fmt::format("Next step not before day {}.", significant(stages[index + 1].day, 4)));
  }
  return holds;
}

}  // namespace deadshore::io
