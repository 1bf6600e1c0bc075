#include "solver/job/stage_state.h"

#include "solver/job/beam_places.h"
#include "solver/job/cut.h"

#include <array>
#include <variant>

namespace deadshore::solver {

namespace {

/// How much of a load, line or point, stands on the wall.
/// \pre the job has the load
double& share_of(StageState& state, LineLoadId load) {
  return state.line_load_share.at(index_of(load));
}
double& share_of(StageState& state, PointLoadId load) {
  return state.point_load_share.at(index_of(load));
}

/// What an act does to a state, for each kind of thing that it may be done to.
class Doer {
 public:
  Doer(const Job& job, Act act, StageState& state) : job_(job), act_(act), state_(state) {}

  void operator()(WorkPart part) const {
    switch (part) {
      case WorkPart::cut:
        return take_cut_out();
      case WorkPart::pockets:
        state_.pockets_out = true;
        return;
      case WorkPart::padstones:
        state_.padstones = true;
        return;
      case WorkPart::beam:
        if (act_ == Act::place) state_.beam = true;
        if (act_ == Act::pack) state_.packed_on = state_.day;
        return;
    }
  }
  void operator()(NeedleId needle) const {
    state_.needles.at(index_of(needle)) = act_ == Act::fit       ? NeedleState::fitted
                                          : act_ == Act::preload ? NeedleState::preloaded
                                                                 : NeedleState::released;
  }
  /// A dead shore takes its share of what the wall carries, or gives it back.
  void operator()(ShoreId shore) const {
    const bool tight = act_ == Act::tighten;
    const DeadShore& there = job_.dead_shores.at(index_of(shore));
    state_.shore_tight.at(index_of(shore)) = tight ? 1 : 0;
    const double change = tight ? -there.share : there.share;
    for (const LoadId load : loads_of(there)) {
      std::visit([&](auto id) { share_of(state_, id) += change; }, load);
    }
  }
  void operator()(LineLoadId load) const { set_load(load); }
  void operator()(PointLoadId load) const { set_load(load); }
  void operator()(LintelId lintel) const { state_.lintel_out.at(index_of(lintel)) = 1; }

 private:
  void take_cut_out() const {
    state_.cut_out = true;
    for (std::size_t i = 0; i < job_.lintels.size(); ++i) {
      if (takes_out(job_.wall, job_.lintels[i].shape)) state_.lintel_out[i] = 1;
    }
  }
  template <class Load>
  void set_load(Load load) const {
    share_of(state_, load) = act_ == Act::load_on ? 1.0 : 0.0;
  }

  const Job& job_;
  Act act_;
  StageState& state_;
};

}  // namespace

bool StageState::is_out(mesh::Region region) const {
  switch (region.kind) {
    case mesh::RegionKind::masonry:
      return false;
    case mesh::RegionKind::lintel:
      return region.index < lintel_out.size() && lintel_out[region.index] != 0;
    case mesh::RegionKind::cut:
      return cut_out;
    case mesh::RegionKind::block:
      return pockets_out && !(region.index == padstones_group && padstones);
  }
  return false;
}

std::optional<double> StageState::packing_age() const {
  if (!packed_on) return {};
  return day - *packed_on;
}

StageState state_before(const Job& job) {
  StageState state;
  state.lintel_out.assign(job.lintels.size(), 0);
  state.needles.assign(job.needles.size(), NeedleState::not_yet);
  state.shore_tight.assign(job.dead_shores.size(), 0);
  state.line_load_share.assign(job.line_loads.size(), 1.0);
  state.point_load_share.assign(job.point_loads.size(), 1.0);
  return state;
}

void carry_out_in(StageState& state, const Job& job, const Operation& operation) {
  std::visit(Doer(job, operation.act, state), operation.target);
}

StageState state_after(const Job& job, StageState state, const Stage& stage) {
  state.day = stage.day;
  for (const Operation& operation : stage.operations) {
    carry_out_in(state, job, operation);
  }
  return state;
}

Stage stage_at_once(const Job& job) {
  Stage stage{"cut", 0.0, {}};
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    stage.operations.push_back({Act::fit, NeedleId{i}});
    if (job.needles[i].preload > 0.0) stage.operations.push_back({Act::preload, NeedleId{i}});
  }
  stage.operations.push_back({Act::remove, WorkPart::cut});
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

double weight_of_works(const Job& job, const StageState& state) {
  if (!job.beam || !state.pockets_out) return 0.0;
  const BeamPlaces places = places_of_beam(job);
  const auto volume = [&](const std::array<mesh::Box, 2>& boxes) {
    double area = 0.0;
    for (const mesh::Box& box : boxes) area += box.x.length() * box.y.length();
    return area * job.thickness;
  };
  double weight = -job.masonry.unit_weight * (volume(places.pockets) + volume(places.padstones));
  if (state.padstones) weight += job.beam->padstone.unit_weight * volume(places.padstones);
  if (state.beam) weight += job.beam->weight() * places.beam.x.length();
  return weight;
}

bool same_masonry(const StageState& a, const StageState& b) {
  return a.cut_out == b.cut_out && a.pockets_out == b.pockets_out && a.lintel_out == b.lintel_out &&
         a.padstones == b.padstones;
}

}  // namespace deadshore::solver
