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

constexpr double next_to_nothing = 30.0;  // N, a brick

RowKind kind_of(const StageSafety& safety) {
  if (!solver::is_safe_without_tension(safety.factor)) return RowKind::fails;
  return safety.loose_weight >= next_to_nothing ? RowKind::unverified : RowKind::plain;
}

std::string tension_words(double needed) {
  return needed < solver::most_factor ? three_figures(needed) : "none will do";
}

Table factors_table(const solver::JobResult& result) {
  Table content{"safety-factors",
                "Factor on all loads at which the wall has no equilibrium or crushes",
                {"Stage", numeric("No less than"), numeric("No more than"),
                 numeric("With the tension given, about"), numeric("Left out kN"),
                 numeric("Loose kN"), numeric("Tension needed N/mm\u00b2")}};
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) continue;
    const StageSafety& safety = *stage.safety;
    content.add({stage.name, lower_factor_words(safety.factor),
                 upper_factor_words(safety.upper_factor), factor_words(safety.factor_with_tension),
                 loose_kilonewtons(safety.let_go), loose_kilonewtons(safety.loose_weight),
                 tension_words(safety.tension_needed)},
                kind_of(safety));
    if (!safety.verdict.empty()) {
      content.add({with_raised_powers(safety.verdict)}, RowKind::working);
    }
  }
  return content;
}

std::string mesh_words(const solver::JobResult& result) {
  int triangles = 0;
  int steps = 0;
  double error = 0.0;
  double tension = 0.0;
  bool wide = false;
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) continue;
    triangles = std::max(triangles, stage.safety->triangles);
    steps += stage.safety->iterations;
    error = std::max(error, stage.safety->equilibrium_error);
    tension = std::max(tension, stage.safety->tension_left);
    wide = wide || is_wide(*stage.safety);
  }
  return fmt::format(
      "Found on up to {} triangles, {} steps in all. The stresses behind the lower bound were "
      "measured: forces out of balance by {:.0e} of the largest load at most, tension of {:.0e} "
      "N/mm\u00b2 at most.{}",
      triangles, steps, error, tension,
      wide ? " Where the two bounds are far apart the lower one counts, and the true factor may be "
             "well above it."
           : "");
}

/// The stages whose factor could not be found.
Blocks not_found(const solver::JobResult& result) {
  std::vector<std::string> names;
  for (const StageResult& stage : result.stages) {
    if (!stage.safety) names.push_back("\u201c" + stage.name + "\u201d");
  }
  if (names.empty()) return {};
  return callout(Severity::warning, "Not known.",
                 fmt::format("No factor could be worked out for stage {}.", listed(names)));
}

}  // namespace

Chapter safety_chapter(const solver::JobResult& result, FigureShelf& figures) {
  if (std::ranges::none_of(result.stages,
                           [](const StageResult& stage) { return stage.safety.has_value(); })) {
    return {};
  }
  const Blocks opening = Paragraph{
      "How far the wall is from falling if masonry bears no tension at all, by limit analysis: "
      "strength alone, whatever the stiffness. Stresses in equilibrium everywhere that the masonry "
      "bears give a factor that the true one is no less than; a mechanism gives one that it is no "
      "more than. Both are strict for the wall as a continuum, however coarse the triangles; the "
      "lower one counts in every check. Needles, packing and shores under joist ends are taken as "
      "unyielding here and have checks of their own. Masonry with no way to a support without "
      "tension, and the layer under flat soffits and heads, is in neither and its weight is given "
      "as left out. What is loose, the least tensile strength that would keep it up and the factor "
      "with tension are estimates on coarser elements, not bounds."};
  const Blocks body = factors_table(result) + not_found(result) +
                      Paragraph{mesh_words(result), Tone::small} + figures.take("mechanism");
  return {"safety", "Safety without tension", opening, body};
}

}  // namespace deadshore::io
