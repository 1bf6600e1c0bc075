#include "solver/stages/stage_state.h"

#include "solver/model/cut.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

/// Place of the part called `name`; the parts are known to hold it.
template <class Parts>
std::size_t place_of(const Parts& parts, const std::string& name) {
  const auto found = std::ranges::find_if(parts, [&](const auto& p) { return p.name == name; });
  return static_cast<std::size_t>(found - parts.begin());
}

/// Sets how much of a load, line or point, stands on the wall.
void set_load(const Job& job, StageState& state, const std::string& name, double share) {
  const std::size_t line = place_of(job.line_loads, name);
  if (line < job.line_loads.size()) state.line_load_share[line] = share;
  const std::size_t point = place_of(job.point_loads, name);
  if (point < job.point_loads.size()) state.point_load_share[point] = share;
}

/// A dead shore takes its share of what the wall carries, or gives it back.
void set_shore(const Job& job, StageState& state, const std::string& name, bool tight) {
  const std::size_t place = place_of(job.dead_shores, name);
  const DeadShore& shore = job.dead_shores[place];
  state.shore_tight[place] = tight ? 1 : 0;
  const std::size_t line = place_of(job.line_loads, shore.carries);
  state.line_load_share[line] += tight ? -shore.share : shore.share;
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
      return set_load(job, state, operation.what, 1.0);
    case Act::load_off:
      return set_load(job, state, operation.what, 0.0);
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

std::vector<StageState> states_of(const Job& job, const std::vector<Stage>& stages) {
  std::vector<StageState> states;
  StageState state = state_before(job);
  for (const Stage& stage : stages) {
    state = state_after(job, state, stage);
    states.push_back(state);
  }
  return states;
}

}  // namespace deadshore::solver
