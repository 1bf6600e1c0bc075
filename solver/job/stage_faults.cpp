#include "solver/job/stage_faults.h"

#include "solver/job/cut.h"
#include "solver/job/stage_state.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

namespace deadshore::solver {

namespace {

/// Why an operation cannot be done, to follow "remove cut" in stage "cut", and what was due.
struct Trouble {
  std::string why;
  std::string due;
};
using Outcome = std::optional<Trouble>;

bool is_in_cut(const Job& job, const Lintel& lintel) {
  return mesh::spanned_opening(lintel.shape, job.wall) && takes_out(job.wall, lintel.shape);
}

/// Whether the job has what an operation is done to.
bool has(const Job& job, const Target& target) {
  struct Finder {
    const Job& job;
    bool operator()(WorkPart) const { return true; }
    bool operator()(NeedleId id) const { return index_of(id) < job.needles.size(); }
    bool operator()(ShoreId id) const { return index_of(id) < job.dead_shores.size(); }
    bool operator()(LineLoadId id) const { return index_of(id) < job.line_loads.size(); }
    bool operator()(PointLoadId id) const { return index_of(id) < job.point_loads.size(); }
    bool operator()(LintelId id) const { return index_of(id) < job.lintels.size(); }
  };
  return std::visit(Finder{job}, target);
}

/// The site as the work goes on. Does one operation after the other, or says why it cannot be done
/// and leaves it undone.
class Site {
 public:
  explicit Site(const Job& job)
      : job_(job),
        state_(state_before(job)),
        line_load_off_(job.line_loads.size(), false),
        point_load_off_(job.point_loads.size(), false) {}

  Outcome carry_out(const Operation& operation) {
    if (!has(job_, operation.target)) {
      return Trouble{"which is done to nothing in the job", "something that the job has"};
    }
    if (Outcome trouble = trouble_with(operation)) return trouble;
    carry_out_in(state_, job_, operation);
    if (operation.act == Act::load_on || operation.act == Act::load_off) {
      off(load_of(operation)) = operation.act == Act::load_off;
    }
    return {};
  }

 private:
  [[nodiscard]] Outcome trouble_with(const Operation& operation) {
    const auto* part = std::get_if<WorkPart>(&operation.target);
    const auto* needle = std::get_if<NeedleId>(&operation.target);
    const auto* shore = std::get_if<ShoreId>(&operation.target);
    const auto* lintel = std::get_if<LintelId>(&operation.target);
    const bool is_load = !part && !needle && !shore && !lintel;
    switch (operation.act) {
      case Act::fit:
      case Act::preload:
      case Act::release:
        if (needle) return at_needle(operation.act, *needle);
        break;
      case Act::remove:
        if (lintel) return remove(*lintel);
        if (part) return remove(*part);
        break;
      case Act::place:
        if (part) return place(*part);
        break;
      case Act::pack:
        if (part) return pack(*part);
        break;
      case Act::tighten:
      case Act::slacken:
        if (shore) return at_shore(*shore, operation.act == Act::tighten);
        break;
      case Act::load_on:
      case Act::load_off:
        if (is_load) return at_load(load_of(operation), operation.act == Act::load_on);
        break;
    }
    return Trouble{fmt::format("which is nothing to {}", to_string(operation.act)),
                   "an act and what it is done to"};
  }

  [[nodiscard]] Outcome at_needle(Act act, NeedleId id) const {
    const NeedleState needle = state_.needles[index_of(id)];
    const Needle& there = job_.needles[index_of(id)];
    if (act == Act::fit) {
      if (is_in(needle)) return Trouble{"but it is in already", "each needle fitted once"};
      if (needle == NeedleState::released)
        return Trouble{"but it is out again", "each needle fitted once"};
      return {};
    }
    if (needle == NeedleState::not_yet)
      return Trouble{"but it is not in yet", fmt::format("\"fit {}\" before", there.name)};
    if (needle == NeedleState::released)
      return Trouble{"but it is out already", "nothing done to a needle that is out"};
    if (act == Act::release) return {};
    if (needle == NeedleState::preloaded)
      return Trouble{"but it is preloaded already", "each needle preloaded once"};
    if (there.preload <= 0.0)
      return Trouble{"but it has no preload", "`preload` in its [[needle]]"};
    return {};
  }

  [[nodiscard]] Outcome remove(LintelId id) const {
    if (!is_in_cut(job_, job_.lintels[index_of(id)])) {
      return Trouble{"a lintel that the cut leaves in", one_of(removable_names(job_))};
    }
    return state_.lintel_out[index_of(id)] ? Outcome(out_already("it is")) : Outcome();
  }

  [[nodiscard]] Outcome remove(WorkPart part) const {
    if (part == WorkPart::cut) return state_.cut_out ? Outcome(out_already("it is")) : Outcome();
    if (part != WorkPart::pockets) {
      return Trouble{"which does not come out", one_of(removable_names(job_))};
    }
    if (!job_.beam) return no_beam();
    return state_.pockets_out ? Outcome(out_already("they are")) : Outcome();
  }

  [[nodiscard]] Outcome place(WorkPart part) const {
    if (part != WorkPart::padstones && part != WorkPart::beam)
      return Trouble{"which is nothing to place", R"("padstones" or "beam")"};
    if (!job_.beam) return no_beam();
    const bool beam = part == WorkPart::beam;
    if (beam ? state_.beam : state_.padstones)
      return Trouble{beam ? "but it is in place already" : "but they are in place already",
                     "each placed once"};
    if (beam && !state_.cut_out) return still_in("cut is", WorkPart::cut);
    if (!state_.pockets_out) return still_in("pockets are", WorkPart::pockets);
    if (beam && !state_.padstones)
      return Trouble{"but it has no padstones yet", R"("place padstones" before)"};
    return {};
  }

  [[nodiscard]] Outcome pack(WorkPart part) const {
    if (part != WorkPart::beam) return Trouble{"which is nothing to pack", R"("beam")"};
    if (!job_.beam) return no_beam();
    if (!state_.beam) return Trouble{"but it is not in place yet", R"("place beam" before)"};
    if (state_.packed_on) return Trouble{"but it is packed already", "the beam packed once"};
    return {};
  }

  [[nodiscard]] Outcome at_shore(ShoreId id, bool tighten) {
    const DeadShore& shore = job_.dead_shores[index_of(id)];
    if ((state_.shore_tight[index_of(id)] != 0) == tighten)
      return tighten
                 ? Trouble{"but it is tight already", "a dead shore that is slack"}
                 : Trouble{"but it is not tight", fmt::format("\"tighten {}\" before", shore.name)};
    for (const LoadId load : loads_of(shore)) {
      if (!off(load)) continue;
      const std::string name = name_of(job_, target_of(load));
      return Trouble{fmt::format("but its load {} is off", quoted(name)),
                     fmt::format("\"load on {}\" before", name)};
    }
    return {};
  }

  [[nodiscard]] Outcome at_load(LoadId load, bool on) {
    const std::string name = name_of(job_, target_of(load));
    if (off(load) != on)
      return on ? Trouble{"but it is on; all loads are, until they are taken off",
                          fmt::format("\"load off {}\" before", name)}
                : Trouble{"but it is off already", "a load that is on"};
    for (std::size_t i = 0; i < job_.dead_shores.size(); ++i) {
      const DeadShore& shore = job_.dead_shores[i];
      if (state_.shore_tight[i] && std::ranges::count(loads_of(shore), load) > 0)
        return Trouble{fmt::format("but dead shore {} carries it", quoted(shore.name)),
                       fmt::format("\"slacken {}\" before", shore.name)};
    }
    return {};
  }

  static Trouble no_beam() { return {"and there is no beam", "a [beam] in the job"}; }
  static Trouble out_already(const char* it_is) {
    return {fmt::format("but {} out already", it_is), "each taken out once"};
  }
  static Trouble still_in(const char* what_is, WorkPart part) {
    return {fmt::format("but the {} still in", what_is),
            fmt::format("\"remove {}\" before", to_string(part))};
  }
  /// \pre the operation is done to a load
  static LoadId load_of(const Operation& operation) {
    if (const auto* line = std::get_if<LineLoadId>(&operation.target)) return *line;
    return std::get<PointLoadId>(operation.target);
  }
  std::vector<bool>::reference off(LoadId load) {
    if (const auto* line = std::get_if<LineLoadId>(&load)) return line_load_off_[index_of(*line)];
    return point_load_off_[index_of(std::get<PointLoadId>(load))];
  }

  const Job& job_;
  StageState state_;
  std::vector<bool> line_load_off_;
  std::vector<bool> point_load_off_;
};

/// "fit N1", or the act alone where the job does not have what it is done to.
std::string operation_in_words(const Job& job, const Operation& operation) {
  return has(job, operation.target) ? in_words(job, operation) : to_string(operation.act);
}

/// The fault of an operation.
Fault fault_at(const Job& job, std::size_t stage, std::size_t operation, Trouble trouble) {
  const Stage& in = job.stages[stage];
  return {
      fmt::format("stage[{}].do[{}]", stage, operation),
      fmt::format("{} in stage {}, {}", quoted(operation_in_words(job, in.operations[operation])),
                  quoted(in.name), trouble.why),
      std::move(trouble.due)};
}

void check_day(const Job& job, std::size_t i, FaultList& faults) {
  if (i == 0 || job.stages[i].day >= job.stages[i - 1].day) return;
  faults.push_back(
      {key_of("stage", i, "day"),
       fmt::format("day {:.6g} for stage {}, where stage {} before it is on day {:.6g}",
                   job.stages[i].day, quoted(job.stages[i].name), quoted(job.stages[i - 1].name),
                   job.stages[i - 1].day),
       "days that never fall"});
}

void check_stage(const Job& job, std::size_t i, Site& site, FaultList& faults) {
  for (std::size_t k = 0; k < job.stages[i].operations.size(); ++k)
    if (Outcome trouble = site.carry_out(job.stages[i].operations[k]))
      faults.push_back(fault_at(job, i, k, *std::move(trouble)));
}

}  // namespace

std::string one_of(const std::vector<std::string>& names) {
  constexpr std::size_t most = 6;
  std::string text;
  for (std::size_t i = 0; i < std::min(names.size(), most); ++i)
    text += (i > 0 ? ", " : "") + quoted(names[i]);
  if (names.size() > most) text += fmt::format(" and {} more", names.size() - most);
  return names.size() > 1 ? "one of " + text : text;
}

std::vector<std::string> removable_names(const Job& job) {
  std::vector<std::string> names = {to_string(WorkPart::cut)};
  if (job.beam) names.emplace_back(to_string(WorkPart::pockets));
  for (const Lintel& lintel : job.lintels) {
    // A lintel called as the cut or the pockets cannot be told from them.
    if (is_in_cut(job, lintel) && !std::ranges::count(names, lintel.shape.name)) {
      names.push_back(lintel.shape.name);
    }
  }
  return names;
}

void find_stage_faults(const Job& job, FaultList& faults) {
  find_beam_faults(job, faults);
  find_dead_shore_faults(job, faults);
  const bool each_carries_a_load = std::ranges::all_of(
      job.dead_shores,
      [&](const DeadShore& shore) { return index_of(shore.carries) < job.line_loads.size(); });
  if (job.stages.empty() || !each_carries_a_load) return;
  Site site(job);
  for (std::size_t i = 0; i < job.stages.size(); ++i) {
    check_day(job, i, faults);
    check_stage(job, i, site, faults);
  }
  const bool cuts = std::ranges::any_of(job.stages, [](const Stage& stage) {
    return does(stage, {Act::remove, WorkPart::cut});
  });
  if (!cuts)
    faults.push_back({"stage", "no stage that takes the cut out", "\"remove cut\" in one of them"});
}

}  // namespace deadshore::solver
