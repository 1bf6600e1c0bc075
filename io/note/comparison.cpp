#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// One support's load by each method, N; NaN where there is none.
struct SupportLoads {
  std::string support;
  double hand = solver::not_known;
  double uncracked = solver::not_known;
  double cracked = solver::not_known;
  double unyielding = solver::not_known;
  double uncracked_error = solver::not_known;  ///< of the mesh
  double cracked_error = solver::not_known;
};

std::string ratio(double analysed, double hand) {
  return two_decimals(hand > 0.0 ? analysed / hand : solver::not_known);
}

void add(Table& content, const SupportLoads& loads, RowKind kind = RowKind::plain) {
  content.add(
      {loads.support, kilonewtons(loads.hand), kilonewtons(loads.uncracked, loads.uncracked_error),
       kilonewtons(loads.cracked, loads.cracked_error), ratio(loads.uncracked, loads.hand),
       ratio(loads.cracked, loads.hand), kilonewtons(loads.unyielding)},
      kind);
}

/// The hand method's load on a support beside what the analyses of the stage compared give it.
SupportLoads loads_on(const solver::JobResult& result, solver::SupportId support, double by_hand) {
  SupportLoads loads{label_of(result.job, support), by_hand};
  const solver::StageResult* stage = comparable_stage(result);
  if (stage == nullptr) return loads;
  for (const solver::PanelResult& analysis : stage->analyses) {
    if (!analysis.stands()) continue;
    const auto reactions = reactions_of(result.job, analysis);
    const solver::SupportReaction* reaction = find_reaction(reactions, support);
    if (reaction == nullptr) continue;
    const bool cracked = analysis.model == solver::MasonryModel::cracked;
    (cracked ? loads.cracked : loads.uncracked) = reaction->force;
    (cracked ? loads.cracked_error : loads.uncracked_error) =
        reaction->mesh_error.value_or(solver::not_known);
  }
  return loads;
}

Table comparison_table(const solver::JobResult& result) {
  Table content{"comparison",
                "Loads on the supports, kN, characteristic",
                {"Support", numeric("Hand"), numeric("Uncracked"), numeric("Cracked"),
                 numeric("Uncracked / hand"), numeric("Cracked / hand"),
                 numeric("Uncracked, if no needle gave")}};
  SupportLoads needles{"All needles", 0.0, 0.0, 0.0, 0.0};
  for (std::size_t i = 0; i < result.comparison.size(); ++i) {
    const solver::NeedleComparison& needle = result.comparison[i];
    SupportLoads loads = loads_on(result, support_of(solver::NeedleId{i}), needle.hand);
    loads.unyielding = needle.unyielding;
    add(content, loads);
    needles.hand += needle.hand;
    needles.uncracked += needle.uncracked;
    needles.cracked += needle.cracked;
    needles.unyielding += needle.unyielding;
  }
  add(content, needles, RowKind::total);
  add(content, loads_on(result, solver::supports::left_pier, result.hand.left_pier.total));
  add(content, loads_on(result, solver::supports::right_pier, result.hand.right_pier.total));
  return content;
}

Blocks reasons(const solver::JobResult& result) {
  std::vector<std::string> sentences;
  for (const solver::NeedleComparison& needle : result.comparison) {
    if (!needle.reason.empty()) sentences.push_back(needle.needle + ": " + needle.reason);
  }
  if (sentences.empty()) {
    return Paragraph{"No needle differs by more than 15% between the methods."};
  }
  return Heading{"Why they differ"} + bullets(sentences);
}

Blocks movements_table(const solver::Job& job, std::ptrdiff_t stage_number,
                       const solver::StageResult& stage, const solver::PanelResult& analysis) {
  Table content{fmt::format("needles-{}-{}", stage_number, solver::to_string(analysis.model)),
                fmt::format("Needles under {}, stage \u201c{}\u201d",
                            masonry_phrase(analysis.model), stage.name),
                {"Needle", numeric("Load kN"), numeric("Wall moves down mm"),
                 numeric("Bearing in contact %")}};
  for (const solver::SupportReaction& reaction : reactions_of(job, analysis)) {
    if (reaction.support.kind != solver::SupportKind::needle) continue;
    const solver::NeedleReaction& needle = analysis.needles.at(reaction.support.index);
    content.add({label_of(job, reaction.support),
                 kilonewtons(reaction.force, reaction.mesh_error.value_or(solver::not_known)),
                 fine_millimetres(needle.settlement), percent(needle.contact)});
  }
  return content;
}

}  // namespace

Chapter comparison_chapter(const solver::JobResult& result) {
  const solver::StageResult* stage = comparable_stage(result);
  if (stage == nullptr) {
    return {"methods", "Hand method against finite elements",
            Paragraph{"The work did not come to a stage in which the wall is cut and stands: there "
                      "is nothing to set the hand method against."}};
  }
  const bool staged = is_staged(result);
  const Blocks opening = Paragraph{
      std::string("The hand method beside the finite-element analyses of the same wall") +
      (staged ? fmt::format(" in stage \u201c{}\u201d, which is what the hand method sums up",
                            stage->name)
              : "") +
      ". A dash: not analysed, or no equilibrium. \u00b1: for the size of the elements alone (see "
      "the evidence); what is not known of masonry and packing is more."};
  Blocks body = reasons(result);
  const auto number = stage - result.stages.data() + 1;
  for (const solver::PanelResult& analysis : stage->analyses) {
    if (analysis.stands()) body += movements_table(result.job, number, *stage, analysis);
  }
  return {"methods", "Hand method against finite elements", opening + comparison_table(result),
          body};
}

}  // namespace deadshore::io
