#include "solver/piers/footing_checks.h"

#include "solver/beam/beam_checks.h"
#include "solver/checks/ground_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace deadshore::solver {

namespace {

/// What a pier brings down, N, and when.
struct PierLoads {
  std::string name;
  double length = 0.0;  ///< mm
  double before = 0.0;
  double after = 0.0;
  std::string stage = {};  ///< in which it is most
};

double of_stage(const PanelResult& analysis, PierSide side) {
  return side == PierSide::left ? analysis.base_left : analysis.base_right;
}

PierLoads loads_of(const JobResult& result, PierSide side) {
  const Job& job = result.job;
  const bool left = side == PierSide::left;
  const SpreadSum& hand = left ? result.hand.left_pier : result.hand.right_pier;
  PierLoads loads;
  loads.name = left ? "left pier" : "right pier";
  loads.length = left ? job.wall.cut.left : job.wall.length - job.wall.cut.right;
  loads.before = hand.without_wedges();
  loads.after = hand.total;
  loads.stage = hand_stage;
  if (job.beam) {
    const HandBeam beam = hand_beam(job);
    loads.after =
        std::max(loads.after, loads.before + (left ? beam.reaction_left : beam.reaction_right));
  }
  for (const StageResult& stage : result.stages) {
    const bool before = &stage == &result.stages.front() && !stage.state.cut_out;
    for (const PanelResult& analysis : stage.analyses) {
      if (!analysis.stands()) continue;
      const double load = of_stage(analysis, side);
      if (before) loads.before = load;
      if (before || load <= loads.after) continue;
      loads.after = load;
      loads.stage = stage.name;
    }
  }
  return loads;
}

std::string per_metre(const PierLoads& loads) {
  return fmt::format("{:.1f} kN/m before, {:.1f} kN/m after ({}): {:+.0f}%",
                     loads.before / loads.length, loads.after / loads.length, loads.stage,
                     100.0 * (loads.after / loads.before - 1.0));
}

Check by_change(const PierLoads& loads) {
  Check check;
  check.check = "footing, by the change of load";
  check.clause = "common practice, no source";
  check.demand = loads.after / loads.length;
  check.capacity = (1.0 + accepted_change) * loads.before / loads.length;
  check.unit = "kN/m";
  check.working = per_metre(loads) + ", unfactored; up to a tenth more is commonly accepted";
  if (check.passes()) {
    check.caution = "only if the old footing shows no distress";
    return check;
  }
  check.not_verified = true;
  check.caution =
      per_metre(loads) +
      ": what this pier stands on is not known; dig down to it and give its [[footing]]";
  return check;
}

Check by_pressure(const PierLoads& loads, const PierFooting& footing) {
  Check check;
  check.check = "ground under the footing";
  check.clause = footing.ground.source;
  check.demand = loads.after / (loads.length * footing.width) / kN_per_m2;
  check.unit = "kN/m2";
  check.working = fmt::format("{}, unfactored, over {:.0f} mm; {}", per_metre(loads), footing.width,
                              footing.ground.name);
  const std::optional<double> bearing = footing_bearing(footing);
  if (bearing) {
    check.capacity = *bearing / kN_per_m2;
    check.caution = "even pressure along the pier; the footing itself is taken to spread it";
    return check;
  }
  check.not_verified = true;
  check.caution = "nothing may be presumed of " + footing.ground.name + ": have it looked at";
  return check;
}

}  // namespace

std::optional<double> footing_bearing(const PierFooting& footing) {
  const Ground& soil = footing.ground;
  if (!soil.presumed_bearing || soil.slab) return std::nullopt;
  if (!soil.granular) return soil.presumed_bearing;
  if (!soil.friction_angle) return std::nullopt;
  constexpr double long_strip = 1e9;  // mm
  const double resistance =
      soil.unit_weight * footing.depth * overburden_factor(*soil.friction_angle) +
      surface_bearing(footing.width, long_strip, soil.unit_weight, *soil.friction_angle);
  return std::min(*soil.presumed_bearing, resistance / surface_bearing_factor);
}

std::vector<Check> check_footings(const JobResult& result) {
  std::vector<Check> checks;
  for (const PierSide side : {PierSide::left, PierSide::right}) {
    const PierLoads loads = loads_of(result, side);
    if (!(loads.length > 0.0)) continue;
    const auto& footings = result.job.footings;
    const auto own = std::ranges::find(footings, side, &PierFooting::under);
    Check check = own == footings.end() ? by_change(loads) : by_pressure(loads, *own);
    check.member = loads.name;
    check.stage = loads.stage;
    checks.push_back(std::move(check));
  }
  return checks;
}

}  // namespace deadshore::solver
