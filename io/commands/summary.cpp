#include "io/commands/summary.h"

#include "io/commands/terminal.h"
#include "io/error.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/panel/support_reactions.h"
#include "solver/result/sensitivity_words.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"
#include "solver/study/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string_view>
#include <vector>

namespace deadshore::io {

namespace {

constexpr std::size_t name_width = 15;
constexpr std::size_t cell_width = 9;
constexpr std::size_t wide_cell = 19;  // holds a reaction with its error
constexpr double absent = std::numeric_limits<double>::quiet_NaN();

/// Right-aligned; a dash where there is no answer.
std::string cell(double value, std::size_t width = cell_width) {
  return std::isfinite(value) ? fmt::format("{:{}.2f}", value, width)
                              : fmt::format("{:>{}}", "-", width);
}

double kilonewtons(double newtons) {
  return newtons / 1000.0;
}

/// The analysis of the stage compared with the hand method.
const solver::PanelResult* analysis_compared(const solver::JobResult& result,
                                             solver::MasonryModel model) {
  const solver::StageResult* stage = comparable_stage(result);
  return stage == nullptr ? nullptr : find_analysis(*stage, model);
}

/// What an analysis gives a support, N, with what the mesh may be wrong by.
struct Answer {
  double force = absent;
  double error = absent;
};

Answer answer_of(const solver::Job& job, const solver::PanelResult& analysis,
                 solver::SupportId support) {
  const std::vector<solver::SupportReaction> reactions = reactions_of(job, analysis);
  const solver::SupportReaction* reaction = find_reaction(reactions, support);
  return reaction == nullptr ? Answer{}
                             : Answer{reaction->force, reaction->mesh_error.value_or(absent)};
}

/// What an analysis says; nothing where it was not made or does not stand.
template <class Value>
Answer answer(const solver::PanelResult* analysis, Value value) {
  return analysis != nullptr && analysis->stands() ? value(*analysis) : Answer{};
}

bool has_mesh_error(const solver::PanelResult* analysis) {
  return analysis != nullptr && !analysis->mesh_error.empty();
}

/// "9.63 +- 0.02" in kN, the error rounded up.
std::string cell(const Answer& answer) {
  const std::string force = fmt::format("{:.2f}", kilonewtons(answer.force));
  if (!std::isfinite(answer.force)) return cell(absent, wide_cell);
  if (!std::isfinite(answer.error)) return fmt::format("{:>{}}", force, wide_cell);
  const double error = std::ceil(100.0 * kilonewtons(answer.error)) / 100.0;
  return fmt::format("{:>{}}", fmt::format("{} +- {:.2f}", force, error), wide_cell);
}

/// The ratio to the hand sum that is furthest from 1, either way.
double worst_ratio(double hand, double uncracked, double cracked) {
  double worst = absent;
  double distance = -1.0;
  for (const double force : {uncracked, cracked}) {
    if (!std::isfinite(force) || hand <= 0.0) continue;
    const double ratio = force / hand;
    const double off = ratio > 0.0 ? std::abs(std::log(ratio)) : std::numeric_limits<double>::max();
    if (off > distance) {
      distance = off;
      worst = ratio;
    }
  }
  return worst;
}

std::string row(std::string_view name, double x, double hand, const Answer& uncracked,
                const Answer& cracked) {
  const double metres = x / 1000.0;
  return fitted(name, name_width) + cell(metres) + cell(kilonewtons(hand)) + cell(uncracked) +
         cell(cracked) + cell(worst_ratio(hand, uncracked.force, cracked.force)) + "\n";
}

/// The heading of `row`, line by line.
std::string heading(std::string_view name, std::string_view x, std::string_view hand,
                    std::string_view uncracked, std::string_view cracked, std::string_view worst) {
  return fmt::format("{:{}}{:>{}}{:>{}}{:>{}}{:>{}}{:>{}}\n", name, name_width, x, cell_width, hand,
                     cell_width, uncracked, wide_cell, cracked, wide_cell, worst, cell_width);
}

std::string table(const solver::JobResult& result) {
  const auto* uncracked = analysis_compared(result, solver::MasonryModel::uncracked);
  const auto* cracked = analysis_compared(result, solver::MasonryModel::cracked);
  std::string text = heading("needle", "x", "hand", "uncracked", "cracked", "worst") +
                     heading("", "m", "kN", "kN", "kN", "FE/hand");
  const auto add = [&](solver::SupportId support, double x, double hand) {
    const auto force = [&](const solver::PanelResult& analysis) {
      return answer_of(result.job, analysis, support);
    };
    text += row(label_of(result.job, support), x, hand, answer(uncracked, force),
                answer(cracked, force));
  };
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    add(support_of(solver::NeedleId{i}), result.job.needles[i].x, result.hand.needles.at(i).total);
  }
  add(solver::supports::left_pier, absent, result.hand.left_pier.total);
  add(solver::supports::right_pier, absent, result.hand.right_pier.total);
  const auto total = [](const solver::PanelResult& a) { return Answer{a.load_total, absent}; };
  text += row("load in all", absent, result.hand.load_total, answer(uncracked, total),
              answer(cracked, total));
  return has_mesh_error(uncracked) || has_mesh_error(cracked)
             ? text + wrapped("+-: for the size of the elements alone")
             : text;
}

std::string settlements(const solver::StageResult& stage) {
  std::string text;
  for (const solver::PanelResult& analysis : stage.analyses) {
    if (!analysis.stands()) continue;
    text += fmt::format("largest settlement, {}: {:.2f} mm\n", to_string(analysis.model),
                        analysis.max_settlement);
  }
  return text;
}

constexpr std::size_t stage_width = 22;
constexpr std::size_t needle_width = 10;

std::string stage_row(const solver::StageResult& stage) {
  const solver::StageFacts facts = facts_of(stage);
  const std::string name = fitted(stage.name, stage_width) + " ";
  if (!facts.stands) return name + "!! DOES NOT STAND\n";
  const auto narrow = [](double value, int decimals) {
    return std::isfinite(value) ? fmt::format("{:9.{}f}", value, decimals)
                                : fmt::format("{:>9}", "-");
  };
  const std::string factor =
      facts.factor > 100.0 ? fmt::format("{:>9}", "> 100") : narrow(facts.factor, 2);
  return name + fitted(facts.needle, needle_width) + narrow(kilonewtons(facts.needle_load), 2) +
         narrow(facts.settlement, 2) + narrow(facts.widest_crack, 2) +
         narrow(kilonewtons(facts.loose_weight), 2) + factor + "\n";
}

/// A row for each stage: the worst of its analyses.
std::string stage_table(const solver::JobResult& result) {
  const auto line = [](const auto&... cells) {
    return fmt::format("{:{}} {:{}}{:>9}{:>9}{:>9}{:>9}{:>9}\n", cells...);
  };
  std::string text = line("stage", stage_width, "worst", needle_width, "load", "settles", "crack",
                          "loose", "factor");
  text += line("", stage_width, "needle", needle_width, "kN", "mm", "mm", "kN", "");
  for (const solver::StageResult& stage : result.stages) text += stage_row(stage);
  return text +
         wrapped(
             "crack: the widest; loose: masonry that would fall, cracked; factor: on all loads, "
             "without tension");
}

/// ", stage cut" where there are stages.
std::string at(const solver::JobResult& result, const solver::StageResult& stage) {
  return is_staged(result) ? ", stage " + printable(stage.name) : "";
}

std::string failure_of(const solver::JobResult& result, solver::MasonryModel model) {
  const solver::StageAnalysis failed = first_failure(result, model);
  if (failed.analysis == nullptr) return "";
  std::string text =
      fmt::format("!! NO EQUILIBRIUM, {}{}: {}", to_string(model), at(result, *failed.stage),
                  one_line(*failed.analysis->no_equilibrium));
  if (is_staged(result)) {
    if (!text.ends_with('.')) text += '.';
    text += " No stage after it was analysed.";
  }
  return wrapped(text);
}

std::string place_of(const solver::LoosePatch& patch) {
  return fmt::format("between x = {:.2f} m and {:.2f} m: {}", patch.x.from / 1000.0,
                     patch.x.to / 1000.0, patch.where);
}

/// All patches of one analysis: each where there are one or two, else their sum and the largest.
std::string patches_of(const solver::JobResult& result, const solver::StageAnalysis& loosest) {
  const std::vector<solver::LoosePatch>& patches = loosest.analysis->loose;
  const std::string head = fmt::format(
      "!! LOOSE MASONRY, {}{}: ", to_string(loosest.analysis->model), at(result, *loosest.stage));
  if (patches.size() > 2) {
    const auto largest = std::ranges::max_element(patches, {}, &solver::LoosePatch::weight);
    return wrapped(fmt::format(
        "{}{:.2f} kN would fall, in {} places. The largest, {:.2f} kN, {}. All are in the note.",
        head, kilonewtons(loosest.analysis->loose_weight()), patches.size(),
        kilonewtons(largest->weight), place_of(*largest)));
  }
  std::string text;
  for (const solver::LoosePatch& patch : patches) {
    text += wrapped(fmt::format("{}{:.2f} kN would fall, {}", head, kilonewtons(patch.weight),
                                place_of(patch)));
  }
  return text;
}

/// Of the failed stage, where there is one, and of the stage in which most is loose.
std::string looseness_of(const solver::JobResult& result, solver::MasonryModel model) {
  std::string text;
  const solver::StageAnalysis failed = first_failure(result, model);
  if (failed.analysis != nullptr) text += patches_of(result, failed);
  const solver::StageAnalysis loosest =
      worst_analysis(result, model, &solver::PanelResult::loose_weight);
  return loosest.analysis == nullptr ? text : text + patches_of(result, loosest);
}

std::string stands_by_tension(const solver::JobResult& result) {
  const solver::StageResult* least = stage_of_least_factor(result);
  if (least == nullptr || solver::is_safe_without_tension(least->safety->factor)) return "";
  return wrapped(
      fmt::format("!! STANDS BY TENSION ALONE{}: without it the wall bears {:.2f} "
                  "times its loads. {}",
                  at(result, *least), least->safety->factor, one_line(least->safety->verdict)));
}

/// No alarm: the wall stands. Empty where there is one.
std::string loose_without_tension(const solver::JobResult& result) {
  const solver::StageResult* loosest = stage_of_most_loose_without_tension(result);
  if (loosest == nullptr || !stands_by_tension(result).empty()) return "";
  return wrapped(fmt::format("! LOOSE WITHOUT TENSION{}: {}", at(result, *loosest),
                             one_line(loosest->safety->verdict)));
}

/// Alarms of the wall, worst first.
std::string warnings(const solver::JobResult& result) {
  std::string text;
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    text += failure_of(result, model);
  }
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    text += looseness_of(result, model);
  }
  return text + stands_by_tension(result);
}

std::string by_hand_unassigned(const solver::JobResult& result) {
  if (!(result.hand.on_nothing() > 0.0)) return "";
  return fmt::format("by hand, {:.2f} kN of it reaches no needle or pier\n",
                     kilonewtons(result.hand.on_nothing()));
}

/// What the most sensitive needle may take instead; empty where that was not found.
std::string what_if(const solver::JobResult& result) {
  std::string text;
  double furthest = 0.0;
  for (const solver::Sensitivity& sensitivity : result.sensitivities) {
    for (const solver::SupportSensitivity& support : sensitivity.supports) {
      const solver::ReactionBracket* bracket = support.worst();
      if (bracket == nullptr || support.support.kind != solver::SupportKind::needle) continue;
      const double swing =
          std::max(bracket->most - support.reaction, support.reaction - bracket->least);
      if (swing <= furthest) continue;
      furthest = swing;
      text = fmt::format("what if: {} {:.2f} to {:.2f} kN for {:.2f} ({}{}), for {}",
                         printable(label_of(result.job, support.support)),
                         kilonewtons(bracket->least), kilonewtons(bracket->most),
                         kilonewtons(support.reaction), to_string(sensitivity.model),
                         is_staged(result) ? ", " + printable(name_of(result, support.stage)) : "",
                         solver::range_in_words(result.job, *bracket));
    }
  }
  return text.empty() ? "" : wrapped(text + "; one thing changed at a time");
}

/// Hand against elements, and where the work is followed every stage before it.
std::string tables(const solver::JobResult& result) {
  const std::string compared = table(result) + by_hand_unassigned(result) + what_if(result);
  if (!is_staged(result)) {
    return result.stages.empty()
               ? compared
               : fmt::format("{}\n{}", compared, settlements(result.stages.back()));
  }
  const solver::StageResult* stage = comparable_stage(result);
  const std::string heading =
      stage == nullptr ? "hand method; no stage was reached in which the wall is cut:"
                       : fmt::format("hand method beside stage {}:", printable(stage->name));
  return fmt::format("{}\n{}{}", stage_table(result), wrapped(heading), compared);
}

/// What may be said of it, in a line or two.
std::string verdict_line(const solver::Verdict& verdict) {
  if (const std::vector<std::string> found = objections(verdict); !found.empty())
    return wrapped(fmt::format("!! NOT TO BE BUILT: {}", fmt::join(found, "; ")));
  if (const std::size_t open = verdict.not_verified.size(); open > 0)
    return wrapped(
        fmt::format("!! NOT VERIFIED: {} {}; nobody may build it before", open,
                    open == 1 ? "check has to be settled" : "checks have to be settled"));
  return wrapped(verdict.made > 0 ? solver::at_most : "No check was made.");
}

}  // namespace

std::string summary_of(const solver::JobResult& result) {
  std::string text = fmt::format("{}\n{}", wrapped(result.job.title), tables(result));
  const std::string checks = check_table(result.checks);
  if (!checks.empty()) text += fmt::format("\n{}", checks);
  const std::string loud =
      warnings(result) + check_alarms(result.checks) + loose_without_tension(result);
  if (!loud.empty()) text += fmt::format("\n{}", loud);
  text += "\n" + verdict_line(verdict_of(result));
  return fmt::format(
      "{}\n{}", text,
      wrapped("Caution: an aid to judgement. Have a structural engineer check it and building "
              "control agree to the works before anything is cut."));
}

std::string timings_of(std::span<const solver::PhaseTime> times, double peak_memory_in_mib) {
  std::string text;
  double total = 0.0;
  for (const solver::PhaseTime& time : times) {
    text += fmt::format("{} {:8.2f} s\n", fitted(time.phase, 40), time.seconds);
    total += time.seconds;
  }
  text += fmt::format("{:40} {:8.2f} s\n", "in all", total);
  return text + fmt::format("{:40} {:8.0f} MiB\n", "peak memory", peak_memory_in_mib) +
         wrapped("linear algebra on " + solver::blas_description());
}

}  // namespace deadshore::io
