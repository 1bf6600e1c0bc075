#include "solver/site/lift_plan.h"

#include "solver/job/usual_stages.h"
#include "solver/site/beam_share.h"
#include "solver/site/raised_beam.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::solver {

namespace {

/// Name of the stage that places the beam; "" where none does.
std::string stage_of_beam(const Job& job) {
  for (const Stage& stage : stages_of(job)) {
    if (does(stage, {Act::place, WorkPart::beam})) return stage.name;
  }
  return "";
}

}  // namespace

RaisedBeam raised_beam(const Job& job) {
  const PermanentBeam& given = job.beam.value();
  const Lifting& lifting = job.lifting.value();
  RaisedBeam beam;
  beam.places = places_of_beam(job);
  beam.stage = stage_of_beam(job);
  beam.length = beam.places.beam.x.length();
  beam.weight = given.weight() * beam.length;
  beam.weight_of_one = beam.weight / given.count;
  beam.weight_up = lifting.one_at_a_time ? beam.weight_of_one : beam.weight;
  beam.width_up = lifting.one_at_a_time ? given.member.section.b : given.flange_width();
  if (lifting.entry == BeamEntry::endways) {
    const double past = given.bearing + lifting.clearance;
    beam.shift = lifting.pocket_left >= lifting.pocket_right ? -past : past;
  }
  return beam;
}

Check geometry_check(std::string member, std::string check, double needed, double there,
                     std::string working) {
  Check result;
  result.member = std::move(member);
  result.check = std::move(check);
  result.clause = "geometry";
  result.working = std::move(working);
  result.demand = needed;
  result.capacity = std::max(there, 0.0);
  result.unit = "mm";
  return result;
}

Check balance_check(std::string held_by, std::span<const double> places,
                    std::span<const double> middles) {
  const auto [left, right] = std::ranges::minmax(places);
  const double between = 0.5 * (left + right);
  double worst = middles.front();
  for (const double middle : middles)
    if (std::abs(middle - between) > std::abs(worst - between)) worst = middle;
  const bool one = right - left <= 2.0 * off_middle;
  const double allowed = one ? off_middle : 0.5 * (right - left) - off_middle;
  Check check = geometry_check(
      std::move(held_by), "balance", std::abs(worst - between), allowed,
      one ? fmt::format("the beam's middle at {:.0f} mm, held at {:.0f} mm alone; {:.0f} mm off "
                        "may be",
                        worst, between, off_middle)
          : fmt::format("the beam's middle at {:.0f} mm, held from {:.0f} to {:.0f} mm; {:.0f} mm "
                        "inside them is due",
                        worst, left, right, off_middle));
  check.clause = "statics";
  if (!check.passes()) check.caution = "the beam tips: its middle is not held between the pieces";
  return check;
}

LiftPlan plan_lift(const Job& job) {
  const RaisedBeam beam = raised_beam(job);
  LiftPlan plan;
  plan.length = beam.length;
  plan.weight_of_one = beam.weight_of_one;
  plan.weight = beam.weight;
  plan.lift = beam.places.beam.y.from - job.lifting->floor_level;
  add_lifters(job, beam, plan);
  add_stands(job, beam, plan);
  std::vector<Check> way = clear_way(job, beam);
  std::move(way.begin(), way.end(), std::back_inserter(plan.checks));
  for (Check& check : plan.checks) check.stage = beam.stage;
  sort_worst_first(plan.checks);
  plan.steps = lift_steps(job, beam);
  return plan;
}

}  // namespace deadshore::solver
