#include "io/commands/summary.h"

#include "io/commands/check_summary.h"
#include "io/commands/terminal.h"
#include "io/error.h"
#include "solver/panel/sparse_cholesky.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string_view>
#include <vector>

namespace deadshore::io {

namespace {

constexpr std::size_t name_width = 24;
constexpr double absent = std::numeric_limits<double>::quiet_NaN();

/// Right-aligned in 11 columns; a dash where there is no answer.
std::string cell(double value, const char* format = "{:11.2f}") {
  return std::isfinite(value) ? fmt::format(fmt::runtime(format), value)
                              : fmt::format("{:>11}", "-");
}

double kilonewtons(double newtons) {
  return newtons / 1000.0;
}

const solver::PanelResult* find_analysis(const solver::JobResult& result,
                                         solver::MasonryModel model) {
  if (result.stages.empty()) return nullptr;
  const std::vector<solver::PanelResult>& analyses = result.stages.back().analyses;
  const auto found = std::find_if(analyses.begin(), analyses.end(),
                                  [&](const auto& analysis) { return analysis.model == model; });
  return found == analyses.end() ? nullptr : &*found;
}

/// What an analysis says, or NaN where it was not made or does not stand.
template <class Value>
double answer(const solver::PanelResult* analysis, Value value) {
  return analysis != nullptr && analysis->stands() ? value(*analysis) : absent;
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

std::string row(std::string_view name, double x, double hand, double uncracked, double cracked) {
  const double metres = x / 1000.0;
  return fitted(name, name_width) + cell(metres) + cell(kilonewtons(hand)) +
         cell(kilonewtons(uncracked)) + cell(kilonewtons(cracked)) +
         cell(worst_ratio(hand, uncracked, cracked)) + "\n";
}

std::string table(const solver::JobResult& result) {
  const auto* uncracked = find_analysis(result, solver::MasonryModel::uncracked);
  const auto* cracked = find_analysis(result, solver::MasonryModel::cracked);
  std::string text = fmt::format("{:{}}{:>11}{:>11}{:>11}{:>11}{:>11}\n", "needle", name_width, "x",
                                 "hand", "uncracked", "cracked", "worst");
  text += fmt::format("{:{}}{:>11}{:>11}{:>11}{:>11}{:>11}\n", "", name_width, "m", "kN", "kN",
                      "kN", "FE/hand");
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const auto force = [i](const solver::PanelResult& a) { return a.needles.at(i).force; };
    text += row(result.job.needles[i].name, result.job.needles[i].x,
                result.hand.needles.at(i).total, answer(uncracked, force), answer(cracked, force));
  }
  const auto left = [](const solver::PanelResult& a) { return a.base_left; };
  const auto right = [](const solver::PanelResult& a) { return a.base_right; };
  text += row("base left", absent, result.hand.left_pier.total, answer(uncracked, left),
              answer(cracked, left));
  text += row("base right", absent, result.hand.right_pier.total, answer(uncracked, right),
              answer(cracked, right));
  const auto total = [](const solver::PanelResult& a) { return a.load_total; };
  text += row("load in all", absent, result.hand.load_total, answer(uncracked, total),
              answer(cracked, total));
  return text;
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

std::string warnings(const solver::StageResult& stage) {
  std::string text;
  for (const solver::PanelResult& analysis : stage.analyses) {
    const char* model = to_string(analysis.model);
    if (!analysis.stands()) {
      text += wrapped(
          fmt::format("!! NO EQUILIBRIUM, {}: {}", model, printable(analysis.no_equilibrium)));
    }
    for (const solver::LoosePatch& patch : analysis.loose) {
      text += wrapped(fmt::format(
          "!! LOOSE MASONRY, {}: {:.2f} kN would fall, between x = {:.2f} m and {:.2f} m: {}",
          model, kilonewtons(patch.weight), patch.x.from / 1000.0, patch.x.to / 1000.0,
          patch.where));
    }
  }
  return text;
}

}  // namespace

bool is_held_up(const solver::JobResult& result) {
  const auto holds = [](const solver::PanelResult& a) { return a.stands() && a.loose.empty(); };
  return std::all_of(result.stages.begin(), result.stages.end(), [&](const auto& stage) {
    return std::all_of(stage.analyses.begin(), stage.analyses.end(), holds);
  });
}

std::string summary_of(const solver::JobResult& result) {
  std::string text = fmt::format("{}\n{}", wrapped(result.job.title), table(result));
  if (result.hand.unassigned.total > 0.0) {
    text += fmt::format("by hand, {:.2f} kN of it reaches no needle or pier\n",
                        kilonewtons(result.hand.unassigned.total));
  }
  if (!result.stages.empty()) {
    const std::string loud = warnings(result.stages.back());
    text += fmt::format("\n{}", settlements(result.stages.back()));
    if (!loud.empty()) text += fmt::format("\n{}", loud);
  }
  const std::string checks = summary_of(result.checks);
  if (!checks.empty()) text += fmt::format("\n{}", checks);
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
