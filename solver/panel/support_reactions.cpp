#include "solver/panel/support_reactions.h"

#include "solver/job/beam_places.h"

#include <algorithm>

namespace deadshore::solver {

SupportGroup group_of(SupportKind kind) {
  switch (kind) {
    case SupportKind::needle:
    case SupportKind::joists:
      return SupportGroup::under_wall;
    case SupportKind::left_pier:
    case SupportKind::right_pier:
    case SupportKind::base_under_cut:
      return SupportGroup::bases;
    case SupportKind::beam_left_end:
    case SupportKind::beam_right_end:
      return SupportGroup::beam_ends;
    case SupportKind::left_end:
    case SupportKind::right_end:
      return SupportGroup::wall_ends;
  }
  return SupportGroup::under_wall;
}

std::vector<SupportReaction> reactions_of(const Job& job, const PanelResult& analysis) {
  std::vector<SupportReaction> reactions;
  const auto add = [&](SupportId support, double force) {
    SupportReaction reaction{support, place_of(job, support), 0.0, force, {}};
    const auto error = analysis.mesh_error.find(support);
    if (error != analysis.mesh_error.end()) reaction.mesh_error = error->second;
    reactions.push_back(reaction);
  };
  for (std::size_t i = 0; i < analysis.needles.size(); ++i) {
    add(support_of(NeedleId{i}), analysis.needles[i].force);
  }
  add(supports::left_pier, analysis.base_left);
  add(supports::right_pier, analysis.base_right);
  if (analysis.base_cut != 0.0) add(supports::base_under_cut, analysis.base_cut);
  for (const JoistReaction& joist : analysis.joists) add(support_of(joist.shore), joist.force);
  if (analysis.beam && job.beam) {
    add(supports::beam_left_end, analysis.beam->reaction_left);
    add(supports::beam_right_end, analysis.beam->reaction_right);
  }
  return reactions;
}

const SupportReaction* find_reaction(const std::vector<SupportReaction>& reactions,
                                     SupportId support) {
  const auto found = std::ranges::find(reactions, support, &SupportReaction::support);
  return found == reactions.end() ? nullptr : &*found;
}

double place_of(const Job& job, SupportId support) {
  const mesh::Cut& cut = job.wall.cut;
  switch (support.kind) {
    case SupportKind::needle:
      return job.needles.at(support.index).x;
    case SupportKind::left_pier:
      return 0.5 * cut.left;
    case SupportKind::right_pier:
      return 0.5 * (cut.right + job.wall.length);
    case SupportKind::base_under_cut:
      return cut.span().middle();
    case SupportKind::joists:
      return job.line_loads.at(index_of(job.dead_shores.at(support.index).carries)).x.middle();
    case SupportKind::beam_left_end:
      return places_of_beam(job).supports.from;
    case SupportKind::beam_right_end:
      return places_of_beam(job).supports.to;
    case SupportKind::left_end:
      return 0.0;
    case SupportKind::right_end:
      return job.wall.length;
  }
  return 0.0;
}

}  // namespace deadshore::solver
