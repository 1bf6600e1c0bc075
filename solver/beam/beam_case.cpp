#include "solver/beam/beam_case.h"

#include <algorithm>

namespace deadshore::solver {

BeamCase case_of(const HandBeam& hand) {
  BeamCase load{hand_stage, "hand", {}};
  load.answer.reaction_left = hand.reaction_left;
  load.answer.reaction_right = hand.reaction_right;
  load.answer.largest_moment = hand.largest_moment;
  load.answer.largest_shear = hand.largest_shear;
  load.answer.sag = hand.deflection;
  load.answer.stations = hand.stations;
  return load;
}

std::vector<BeamCase> staged_cases(const JobResult& result) {
  std::vector<BeamCase> cases;
  for (const StageResult& stage : result.stages)
    for (const PanelResult& analysis : stage.analyses)
      if (analysis.stands() && analysis.beam)
        cases.push_back({stage.name, to_string(analysis.model), *analysis.beam});
  return cases;
}

BeamDesign design_of(const Job& job, const HandBeam& hand) {
  const CheckRules& rules = job.check_rules;
  BeamDesign design{job};
  if (rules.basis.method == SafetyMethod::permissible) return design;
  design.load_factor = rules.design_load(hand.dead, hand.load - hand.dead) / hand.load;
  design.dead_factor = rules.factors.gamma_G;
  return design;
}

}  // namespace deadshore::solver
