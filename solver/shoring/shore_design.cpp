#include "solver/shoring/shore_design.h"

#include "solver/job/job.h"
#include "solver/job/usual_stages.h"
#include "solver/shoring/shore_advice.h"
#include "solver/shoring/shore_spacing.h"

#include <algorithm>
#include <utility>

namespace deadshore::solver {

namespace {

/// The first stage in which the shore is tight; "" where nothing is followed stage by stage.
std::string first_stage_of(const Job& job, ShoreId shore) {
  if (job.analysis.sequence == Sequence::at_once) return {};
  for (const Stage& stage : stages_of(job))
    if (does(stage, {Act::tighten, shore})) return stage.name;
  return {};
}

std::vector<UprightLoad> loads_of_uprights(const ShoreAnswer& answer) {
  std::vector<UprightLoad> loads;
  // None where the head plate would tip: there is no load to tell then.
  for (std::size_t i = 0; i < answer.service.uprights.size(); ++i) {
    const Upright& upright = answer.uprights[i];
    loads.push_back({upright.mark, upright.x, answer.service.uprights[i], upright.extra_for});
  }
  return loads;
}

ShoreDesign design_of(const Job& job, ShoreId id) {
  const DeadShore& shore = job.dead_shores[index_of(id)];
  const ShoreFrame& frame = *shore.frame;
  const RowLoads loads = loads_on_row(job, shore);
  const ShoreCase asked{shore, loads, job.check_rules};
  const SpacingFound spacing = proposes_places(frame) ? find_spacing(asked) : SpacingFound{};
  const ShoreAnswer answer = work_out(shore, uprights_of(shore, loads, spacing.used), loads,
                                      job.check_rules, first_stage_of(job, id));
  ShoreDesign design;
  design.shore = id;
  design.name = shore.name;
  design.lever = lever_of(frame);
  design.loads = head_loads(loads, frame, frame.x.from + 0.5 * frame.joist_spacing);
  design.uprights = loads_of_uprights(answer);
  design.length = upright_length(frame);
  design.total = answer.service.all;
  design.largest_moment = answer.service.moment;
  design.largest_shear = answer.service.shear;
  design.deflection = answer.service.deflection;
  design.advice = advise_on_shore(job, asked, spacing, answer);
  design.checks = answer.checks;
  return design;
}

}  // namespace

std::vector<ShoreDesign> design_shores(const Job& job) {
  std::vector<ShoreDesign> designs;
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i)
    if (job.dead_shores[i].frame) designs.push_back(design_of(job, ShoreId{i}));
  return designs;
}

}  // namespace deadshore::solver
