#include "solver/job/stage_state.h"

#include "solver/job/cut.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

/// Place of the part called `name`; the parts are known to hold it.
template <class Parts>
std::size_t place_of(const Parts& parts, const std::string& name) {
  const auto found = std::ranges::find_if(parts, [&](const auto& p) { return p.name == name; });
  return static_cast<std::size_t>(found - parts.begin());
}

/// How much of a load, line or point, stands on the wall. \pre the job has the load
double& share_of(const Job& job, StageState& state, const std::string& name) {
  const std::size_t line = place_of(job.line_loads, name);
  if (line < job.line_loads.size()) return state.line_load_share[line];
  return state.point_load_share.at(place_of(job.point_loads, name));
}

/// A dead shore takes its share of what the wall carries, or gives it back.
void set_shore(const Job& job, StageState& state, const std::string& name, bool tight) {
  const std::size_t place = place_of(job.dead_shores, name);
  const DeadShore& shore = job.dead_shores[place];
  state.shore_tight[place] = tight ? 1 : 0;
  const double change = tight ? -shore.share : shore.share;
  for (const std::string& load : loads_of(shore)) share_of(job, state, load) += change;
}

void remove_lintels_of_cut(const Job& job, StageState& state) {
  for (const Lintel& lintel : job.lintels) {
    if (takes_out(job.wall, lintel.shape)) state.removed.insert(lintel.shape.name);
  }
}

void apply(const Job& job, StageState& state, const Operation& operation) {
  const auto set_needle = [&](NeedleState to) {
    state.needles[place_of(job.needles, operation.what)] = to;
  };
  switch (operation.act) {
    case Act::fit:
      return set_needle(NeedleState::fitted);
    case Act::preload:
      return set_needle(NeedleState::preloaded);
    case Act::release:
      return set_needle(NeedleState::released);
    case Act::remove:
      state.removed.insert(operation.what);
      if (operation.what == pockets_region) state.removed.insert(padstones_part);
      if (operation.what == cut_region) remove_lintels_of_cut(job, state);
      return;
    case Act::place:
      (operation.what == beam_part ? state.beam : state.padstones) = true;
      if (operation.what == padstones_part) state.removed.erase(padstones_part);
      return;
    case Act::pack:
      state.packed_on = state.day;
      return;
    case Act::tighten:
      return set_shore(job, state, operation.what, true);
    case Act::slacken:
      return set_shore(job, state, operation.what, false);
    case Act::load_on:
      share_of(job, state, operation.what) = 1.0;
      return;
    case Act::load_off:
      share_of(job, state, operation.what) = 0.0;
      return;
  }
}

}  // namespace

std::optional<double> StageState::packing_age() const {
  if (!packed_on) return {};
  return day - *packed_on;
}

StageState state_before(const Job& job) {
  StageState state;
  state.needles.assign(job.needles.size(), NeedleState::not_yet);
  state.shore_tight.assign(job.dead_shores.size(), 0);
  state.line_load_share.assign(job.line_loads.size(), 1.0);
  state.point_load_share.assign(job.point_loads.size(), 1.0);
  return state;
}

StageState state_after(const Job& job, StageState state, const Stage& stage) {
  state.day = stage.day;
  for (const Operation& operation : stage.operations) apply(job, state, operation);
  return state;
}

Stage stage_at_once(const Job& job) {
  Stage stage{cut_region, 0.0, {}};
  for (const Needle& needle : job.needles) {
    stage.operations.push_back({Act::fit, needle.name});
    if (needle.preload > 0.0) stage.operations.push_back({Act::preload, needle.name});
  }
  stage.operations.push_back({Act::remove, cut_region});
  return stage;
}

std::vector<StageState> states_of(const Job& job, const std::vector<Stage>& stages) {
  std::vector<StageState> states;
  StageState state = state_before(job);
  for (const Stage& stage : stages) {
    state = state_after(job, state, stage);
    states.push_back(state);
  }
  return states;
}

double load_off(const Job& job, const StageState& state) {
  double off = 0.0;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const LineLoad& load = job.line_loads[i];
    off += (1.0 - state.line_load_share[i]) * load.characteristic() * load.x.length();
  }
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    off += (1.0 - state.point_load_share[i]) * job.point_loads[i].characteristic();
  }
  return off;
}

}  // namespace deadshore::solver
