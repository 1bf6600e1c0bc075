#include "solver/piers/pier_checks.h"

#include "solver/beam/beam_checks.h"
#include "solver/checks/masonry_checks.h"
#include "solver/job/beam_places.h"
#include "solver/piers/footing_checks.h"
#include "solver/piers/pier_cuts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double joist_bearing = 100.0;  // mm on the wall's inner face; common practice, no source
constexpr double same_end = 5.0;         // mm
constexpr double least_pier = 50.0;      // mm; less is a sliver of the mesh

/// Mean factor from characteristic to design loads, in which dead and imposed load have the shares
/// of the whole hand sum: analyses do not keep the two apart.
double mean_load_factor(const JobResult& result) {
  const CheckRules& rules = result.job.check_rules;
  double imposed = 0.0;
  for (const LineLoad& load : result.job.line_loads) imposed += load.imposed * load.x.length();
  for (const PointLoad& load : result.job.point_loads) imposed += load.imposed;
  const double total = result.hand.load_total;
  if (!(total > 0.0)) return rules.design_load(1.0, 0.0);
  return rules.design_load(total - imposed, imposed) / total;
}

/// Part of all load that the lowest floor over the soffit brings, by what of it stands on the wall.
double floor_part(const Job& job, const StageState& state, double all) {
  double level = std::numeric_limits<double>::infinity();
  double floor = 0.0;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const LineLoad& load = job.line_loads[i];
    if (load.follows_top || load.level < job.wall.cut.soffit || load.level > level) continue;
    if (load.level < level) floor = 0.0;
    level = load.level;
    const double share = i < state.line_load_share.size() ? state.line_load_share[i] : 1.0;
    floor += share * load.characteristic() * load.x.length();
  }
  return all > 0.0 ? std::min(1.0, floor / all) : 0.0;
}

/// Eccentricity of the whole load at a pier's top through the wall, from the wall's middle, mm.
double eccentricity_through(const Job& job, const StageState& state, double all) {
  const double of_floor = std::max(0.0, 0.5 * job.thickness - joist_bearing / 3.0);
  return of_floor * floor_part(job, state, all);
}

/// What a stretch beside an opening or the cut is called; empty for the wall from end to end.
std::string name_of(const Job& job, const PierCut& cut) {
  const mesh::WallShape& wall = job.wall;
  const auto same = [](double a, double b) { return std::abs(a - b) < same_end; };
  const bool at_left = same(cut.x.from, 0.0);
  const bool at_right = same(cut.x.to, wall.length);
  if ((at_left && at_right) || cut.x.length() < least_pier) return {};
  const bool below = cut.level < wall.cut.soffit;
  if (below && at_left && same(cut.x.to, wall.cut.left)) return "left pier";
  if (below && at_right && same(cut.x.from, wall.cut.right)) return "right pier";
  return fmt::format("pier at x {:.2f} to {:.2f} m{}", cut.x.from / 1000.0, cut.x.to / 1000.0,
                     below ? "" : ", above the soffit");
}

/// Height over which each stretch is as it is, mm, by its name: the rows of elements cut through
/// it.
std::map<std::string, double> heights_of(const Job& job, const std::vector<PierCut>& cuts,
                                         double row) {
  std::map<std::string, mesh::Interval> reach;
  for (const PierCut& cut : cuts) {
    const std::string name = name_of(job, cut);
    if (name.empty()) continue;
    const auto [known, first] = reach.try_emplace(name, mesh::Interval{cut.level, cut.level});
    if (first) continue;
    known->second = {std::min(known->second.from, cut.level),
                     std::max(known->second.to, cut.level)};
  }
  std::map<std::string, double> heights;
  for (const auto& [name, levels] : reach) heights[name] = levels.length() + row;
  return heights;
}

bool is_before(const StageState& state) {
  return !state.cut_out && !state.pockets_out &&
         std::ranges::none_of(state.needles, [](NeedleState needle) { return is_in(needle); });
}

/// Keeps of each pier the worst row before and the worst after work has begun.
class WorstOfPiers {
 public:
  explicit WorstOfPiers(const JobResult& result)
      : result_(result), factor_(mean_load_factor(result)) {}

  void add(const std::string& name, const LoadedWall& wall, double force, const std::string& where,
           const std::string& stage, bool before) {
    const Job& job = result_.job;
    Check check = check_loaded_wall(wall, factor_ * force, job.masonry.compressive_strength,
                                    job.check_rules.basis);
    check.member = name;
    check.stage = stage;
    check.working =
        fmt::format("{}, {:.2f} kN x {:.3f}: {}", where, force / kN, factor_, check.working);
    if (!check.passes())
      check.caution = fmt::format(
          "would pass with {:.1f} kN there, or with masonry of f_k {:.1f} N/mm2: rebuild the pier, "
          "lengthen bearing and padstone, or put a steel post under the beam",
          check.capacity / factor_,
          job.masonry.compressive_strength * check.demand / std::max(check.capacity, 1e-9));
    const auto same = std::ranges::find_if(kept_, [&](const Kept& kept) {
      return kept.check.member == name && kept.before == before;
    });
    if (same == kept_.end())
      kept_.push_back({std::move(check), before});
    else if (check.utilisation() > same->check.utilisation())
      same->check = std::move(check);
  }

  void add(const StageResult& stage, const PanelResult& analysis) {
    const Job& job = result_.job;
    const std::vector<PierCut> cuts = pier_cuts(result_.mesh.quads, analysis, job.thickness);
    const std::map<std::string, double> heights = heights_of(job, cuts, result_.mesh.size);
    for (const PierCut& cut : cuts) {
      const std::string name = name_of(job, cut);
      if (name.empty() || !(cut.force > 0.0)) continue;
      add(name,
          {cut.x.length(), job.thickness, heights.at(name), cut.eccentricity(),
           eccentricity_through(job, stage.state, analysis.load_total)},
          cut.force, fmt::format("{}, {:.2f} m up", to_string(analysis.model), cut.level / 1000.0),
          stage.name, is_before(stage.state));
    }
  }

  /// The permanent beam's reaction by hand beside what stands over the pier itself.
  void add_beam_by_hand() {
    const Job& job = result_.job;
    const HandBeam hand = hand_beam(job);
    const auto at = [&](const char* name, const SpreadSum& sum, double reaction, double length) {
      if (!(length > 0.0)) return;
      const double own = sum.without_wedges();
      const double along = reaction * 0.5 * (length - job.beam->bearing) / (own + reaction);
      const StageState state = state_before(job);
      add(name,
          {length, job.thickness, job.wall.cut.soffit, along,
           eccentricity_through(job, state, result_.hand.load_total)},
          own + reaction, fmt::format("hand, {:.1f} kN of it the beam's", reaction / kN),
          hand_stage, false);
    };
    at("left pier", result_.hand.left_pier, hand.reaction_left, job.wall.cut.left);
    at("right pier", result_.hand.right_pier, hand.reaction_right,
       job.wall.length - job.wall.cut.right);
  }

  [[nodiscard]] std::vector<Check> checks() && {
    std::vector<Check> checks;
    for (Kept& kept : kept_) {
      if (kept.before) kept.check.check += ", before the work";
      checks.push_back(std::move(kept.check));
    }
    return checks;
  }

 private:
  struct Kept {
    Check check;
    bool before = false;
  };

  const JobResult& result_;
  double factor_ = 1.0;
  std::vector<Kept> kept_;
};

}  // namespace

std::vector<Check> check_piers(const JobResult& result) {
  const auto stands = [](const StageResult& stage) { return stage.stands(); };
  if (!std::ranges::all_of(result.stages, stands)) return {};
  WorstOfPiers worst(result);
  bool beam_analysed = false;
  for (const StageResult& stage : result.stages) {
    for (const PanelResult& analysis : stage.analyses) {
      worst.add(stage, analysis);
      beam_analysed = beam_analysed || analysis.beam.has_value();
    }
  }
  if (result.job.beam && !beam_analysed) worst.add_beam_by_hand();
  std::vector<Check> checks = std::move(worst).checks();
  for (Check& check : check_footings(result)) checks.push_back(std::move(check));
  return checks;
}

}  // namespace deadshore::solver
