#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using Analysis = solver::PanelResult;

struct NamedAnalysis {
  std::string heading;
  std::reference_wrapper<const Analysis> analysis;
};

std::vector<NamedAnalysis> analyses_of(const solver::JobResult& result) {
  std::vector<NamedAnalysis> all;
  for (const solver::StageResult& stage : result.stages) {
    for (const Analysis& analysis : stage.analyses) {
      all.push_back(
          {fmt::format("{}, {}", stage.name, solver::to_string(analysis.model)), analysis});
    }
  }
  return all;
}

/// The beam's ends stand on the piers.
double reactions_sum(const solver::Job& job, const Analysis& analysis) {
  double sum = 0.0;
  for (const solver::SupportReaction& reaction : reactions_of(job, analysis)) {
    if (reaction.group() != solver::SupportGroup::beam_ends) sum += reaction.force;
  }
  return sum;
}

/// What the evidence says of an analysis, and whether that means anything where the wall does not
/// stand. A row of the table; with many stages a column under `brief`.
struct Measure {
  std::string name;
  std::string brief;
  std::function<std::string(const Analysis&)> value;
  bool needs_equilibrium = true;
};

std::vector<Measure> measures_for(const solver::Job& job) {
  const std::string strength = significant(job.masonry.compressive_strength, 3);
  std::vector<Measure> measures = {
      {"Loads, down, kN", "Down kN",
       [](const Analysis& a) { return fine_kilonewtons(a.load_total); }, false},
      {"Reactions, up, kN", "Up kN",
       [&job](const Analysis& a) { return fine_kilonewtons(reactions_sum(job, a)); }},
      {"Equilibrium error (up against down)", "Error",
       [](const Analysis& a) { return scientific(a.equilibrium_error); }},
      {"Newton steps", "Newton steps",
       [](const Analysis& a) { return std::to_string(a.iterations); }, false},
      {"Out-of-balance force left, relative", "Out of balance",
       [](const Analysis& a) { return scientific(a.residual); }},
      {"Load that hangs on the residual stiffness, kN", "On residual kN",
       [](const Analysis& a) { return fine_kilonewtons(a.residual_load); }},
      {"Largest downward movement, mm", "Moves down mm",
       [](const Analysis& a) { return fine_millimetres(a.max_settlement); }},
      {"Largest compression, N/mm\u00b2 (strength given: " + strength + ")",
       "Compression N/mm\u00b2", [](const Analysis& a) { return two_decimals(a.max_compression); }},
  };
  if (std::ranges::any_of(job.needles, [](const auto& n) { return n.frame.has_value(); })) {
    measures.push_back({"Solutions until wall and needle frames agreed", "Solutions",
                        [](const Analysis& a) { return std::to_string(a.coupling_passes); },
                        false});
  }
  if (job.left_end == solver::WallEnd::held) {
    measures.push_back({"Sideways push the left end must take, kN", "Push left kN",
                        [](const Analysis& a) { return kilonewtons(a.thrust_left); }});
  }
  if (job.right_end == solver::WallEnd::held) {
    measures.push_back({"Sideways push the right end must take, kN", "Push right kN",
                        [](const Analysis& a) { return kilonewtons(a.thrust_right); }});
  }
  return measures;
}

std::string value_of(const Measure& measure, const Analysis& analysis, const std::string& instead) {
  return measure.needs_equilibrium && !analysis.stands() ? instead : measure.value(analysis);
}

Table analyses_table(const solver::JobResult& result) {
  const std::vector<NamedAnalysis> analyses = analyses_of(result);
  Table content{"analyses", "", {Column{"What was found"}}};
  for (const NamedAnalysis& named : analyses) content.columns.push_back(numeric(named.heading));
  for (const Measure& measure : measures_for(result.job)) {
    std::vector<Text> cells = {measure.name};
    for (const NamedAnalysis& named : analyses) {
      cells.push_back(value_of(measure, named.analysis, "no equilibrium"));
    }
    content.add(std::move(cells));
  }
  return content;
}

/// A table for each model, with a row for each stage.
Table stages_table(const solver::JobResult& result, solver::MasonryModel model) {
  const std::vector<Measure> measures = measures_for(result.job);
  Table content{fmt::format("evidence-{}", solver::to_string(model)),
                fmt::format("With {}; a dash: no equilibrium", masonry_phrase(model)),
                {Column{"Stage"}}};
  for (const Measure& measure : measures) content.columns.push_back(numeric(measure.brief));
  for (const solver::StageResult& stage : result.stages) {
    const Analysis* analysis = find_analysis(stage, model);
    if (analysis == nullptr) continue;
    std::vector<Text> cells = {stage.name};
    for (const Measure& measure : measures) {
      cells.push_back(value_of(measure, *analysis, "\u2013"));
    }
    content.add(std::move(cells));
  }
  return content;
}

Blocks found(const solver::JobResult& result) {
  if (!is_staged(result)) return analyses_table(result);
  Blocks tables;
  for (const solver::MasonryModel model : result.job.analysis.masonry) {
    tables += stages_table(result, model);
  }
  return tables +
         Paragraph{fmt::format("The masonry\u2019s compressive strength is given as {} N/mm\u00b2.",
                               significant(result.job.masonry.compressive_strength, 3)),
                   Tone::small};
}

std::string mesh_sentence(const mesh::WallMesh& mesh) {
  return fmt::format(
      "{} quadrilaterals with {} nodes each, {} nodes in all, {} mm across; the longest is {} "
      "times as long as wide.",
      mesh.quads.quad_count(), mesh.quads.nodes_per_quad(), mesh.quads.node_count(),
      millimetres(mesh.size), significant(mesh.worst_aspect, 2));
}

std::string change_at(const std::vector<double>& changes, std::size_t index) {
  return index < changes.size() ? percent(changes[index]) : "\u2013";
}

Blocks mesh_effect_table(const solver::JobResult& result) {
  if (result.mesh_effects.empty()) return {};
  const solver::MeshEffect& first = result.mesh_effects.front();
  Table content{"mesh-effect",
                "Change of the reactions from elements twice as large, %" +
                    (is_staged(result) ? fmt::format(", stage \u201c{}\u201d", first.stage) : ""),
                {Column{"Support"}}};
  for (const solver::MeshEffect& effect : result.mesh_effects) {
    content.columns.push_back(
        numeric(fmt::format("{}, {} to {} mm", solver::to_string(effect.model),
                            millimetres(effect.coarse_size), millimetres(result.mesh.size))));
  }
  const auto add = [&](solver::SupportId support, const auto& value_of) {
    std::vector<Text> cells = {label_of(result.job, support)};
    for (const solver::MeshEffect& effect : result.mesh_effects) cells.push_back(value_of(effect));
    content.add(std::move(cells));
  };
  for (std::size_t index = 0; index < result.job.needles.size(); ++index) {
    add(support_of(solver::NeedleId{index}), [index](const solver::MeshEffect& effect) {
      return change_at(effect.needle_change, index);
    });
  }
  add(solver::supports::left_pier,
      [](const solver::MeshEffect& e) { return percent(e.base_left_change); });
  add(solver::supports::right_pier,
      [](const solver::MeshEffect& e) { return percent(e.base_right_change); });
  return content;
}

/// What the plus or minus of a reaction means; nothing where none is known.
Blocks mesh_error_words(const solver::JobResult& result) {
  const bool known = std::ranges::any_of(result.stages, [](const solver::StageResult& stage) {
    return std::ranges::any_of(stage.analyses,
                               [](const Analysis& a) { return !a.mesh_error.empty(); });
  });
  if (!known) return {};
  return Paragraph{
      "Plus or minus after a reaction: 2.7 times its change from elements twice as large in the "
      "same stage, or 2.7 times the root mean square of the changes of its like (needles with "
      "joists, bases, beam ends) where that is more, rounded up. 2.7 is Richardson\u2019s "
      "extrapolation with the order 1.09 that corners of 270\u00b0 leave, times 3 for want of a "
      "third mesh (Williams 1952; Roache 1994; both from memory, unverified). It covers the size "
      "of the elements and nothing else.",
      Tone::small};
}

}  // namespace

Chapter evidence_chapter(const solver::JobResult& result) {
  const Blocks body =
      found(result) +
      Paragraph{
          "Cracked masonry keeps a ten-thousandth of its stiffness, so that the sum is always "
          "defined; load that hangs on that alone is held by nothing real.",
          Tone::small} +
      Heading{"Mesh"} + Paragraph{mesh_sentence(result.mesh)} + bullets(result.mesh.remarks) +
      mesh_effect_table(result) + mesh_error_words(result) + what_if(result);
  return {"evidence", "Evidence for the analyses", {}, body};
}

}  // namespace deadshore::io
