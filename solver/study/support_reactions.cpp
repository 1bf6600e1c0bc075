#include "solver/study/support_reactions.h"

namespace deadshore::solver {

std::vector<SupportReaction> reactions_of(const PanelResult& analysis) {
  std::vector<SupportReaction> reactions;
  for (const NeedleReaction& needle : analysis.needles) {
    reactions.push_back({needle.name, needle.force});
  }
  reactions.push_back({"left pier", analysis.base_left, SupportGroup::bases});
  reactions.push_back({"right pier", analysis.base_right, SupportGroup::bases});
  if (analysis.base_cut != 0.0) {
    reactions.push_back({"base under the cut", analysis.base_cut, SupportGroup::bases});
  }
  for (const JoistReaction& joist : analysis.joists) {
    reactions.push_back({"joists on " + joist.shore, joist.force});
  }
  if (analysis.beam) {
    reactions.push_back({"beam left end", analysis.beam->reaction_left, SupportGroup::beam_ends});
    reactions.push_back({"beam right end", analysis.beam->reaction_right, SupportGroup::beam_ends});
  }
  return reactions;
}

}  // namespace deadshore::solver
