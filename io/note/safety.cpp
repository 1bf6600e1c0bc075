#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/limit/stage_safety.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::StageResult;
using solver::StageSafety;

RowKind kind_of(const StageSafety& safety) {
  if (!solver::is_safe_without_tension(safety.factor)) return RowKind::fails;
  return safety.loose_weight > 0.0 ? RowKind::unverified : RowKind::plain;
}

std::string tension_words(double needed) {
  return needed < solver::most_factor ? three_figures(needed) : "none will do";
}

Table factors_table(const solver::JobResult& result) {
  Table content{"safety-factors",
                "Factor on all loads at which the wall has no equilibrium or crushes",
                {"Stage", numeric("Factor"), numeric("From stresses"), numeric("From a mechanism"),
                 numeric("With the tension given"), numeric("Loose kN"),
                 numeric("Tension needed N/mm\u00b2")}};
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) continue;
    const StageSafety& safety = *stage.safety;
    content.add({stage.name, factor_words(safety.factor), factor_words(safety.static_factor),
                 factor_words(safety.kinematic_factor), factor_words(safety.factor_with_tension),
                 loose_kilonewtons(safety.loose_weight), tension_words(safety.tension_needed)},
                kind_of(safety));
    if (!safety.verdict.empty()) {
      content.add({with_raised_powers(safety.verdict)}, RowKind::working);
    }
  }
  return content;
}

std::string gap_words(double gap) {
  return gap < 1e-3 ? "less than 0.1 %" : percent(gap) + " % at most";
}

std::string mesh_words(const solver::JobResult& result) {
  double size = 0.0;
  int steps = 0;
  double gap = 0.0;
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) continue;
    size = std::max(size, stage.safety->mesh_size);
    steps += stage.safety->iterations;
    gap = std::max(gap, stage.safety->gap);
  }
  return fmt::format(
      "Found on elements of {} mm, {} steps in all; on these elements the two factors differ by "
      "{}.",
      millimetres(size), steps, gap_words(gap));
}

/// The stages whose factor could not be found.
Blocks not_found(const solver::JobResult& result) {
  std::vector<std::string> names;
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) names.push_back("\u201c" + stage.name + "\u201d");
  }
  if (names.empty()) return {};
  return callout(Severity::warning, "Not known.",
                 fmt::format("No factor could be worked out for stage {}: the two factors "
                             "could not be brought together.",
                             listed(names)));
}

}  // namespace

Chapter safety_chapter(const solver::JobResult& result, FigureShelf& figures) {
  if (std::ranges::none_of(result.stages,
                           [](const StageResult& stage) { return stage.safety.has_value(); })) {
    return {};
  }
  const Blocks opening = Paragraph{
      "How far the wall is from falling if masonry bears no tension at all, by limit analysis: "
      "strength alone, whatever the stiffness. Stresses in equilibrium give one factor, a "
      "mechanism another; the lower one counts. Strength is looked at at points inside each "
      "element, so both are of the wall as meshed and neither is a strict bound: where load is "
      "concentrated near an edge the true factor can be less than half of it, and the checks of "
      "masonry under bearings count instead. Masonry with no way to a support without tension is "
      "left out of the "
      "factor and given as loose, with the least tensile strength that would keep it up."};
  const Blocks body = factors_table(result) + not_found(result) +
                      Paragraph{mesh_words(result), Tone::small} + figures.take("mechanism");
  return {"safety", "Safety without tension", opening, body};
}

}  // namespace deadshore::io
