#include "solver/study/study_parts.h"

#include "solver/beam/beam_checks.h"
#include "solver/job/error.h"
#include "solver/job/stage_state.h"
#include "solver/loads/chimney_checks.h"
#include "solver/loads/point_bearing_checks.h"
#include "solver/piers/pier_checks.h"
#include "solver/site/lift_plan.h"
#include "solver/site/monitoring.h"
#include "solver/site/removed_masonry.h"
#include "solver/stages/staged_wall.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

/// Mesh lines may move by a tenth of an element, which changes the weight a little; more than this
/// part of all load is a fault in the mesh.
constexpr double load_tolerance = 0.02;

double relative_change(double fine, double coarse) {
  return fine != 0.0 ? (fine - coarse) / fine : 0.0;
}

}  // namespace

MeshEffect mesh_effect(const PanelResult& fine, const PanelResult& coarse, double coarse_size) {
  MeshEffect effect;
  effect.model = fine.model;
  effect.coarse_size = coarse_size;
  effect.base_left_change = relative_change(fine.base_left, coarse.base_left);
  effect.base_right_change = relative_change(fine.base_right, coarse.base_right);
  for (std::size_t i = 0; i < fine.needles.size(); ++i) {
    effect.needle_change.push_back(relative_change(fine.needles[i].force, coarse.needles[i].force));
  }
  return effect;
}

std::vector<double> hand_loads(const SpreadResult& hand) {
  std::vector<double> loads;
  for (const SpreadSum& needle : hand.needles) loads.push_back(needle.total);
  return loads;
}

WhatIf ask_what_if(const Job& job, const mesh::WallMesh& mesh) {
  const auto forces = [&](const Job& variant) {
    StagedWall wall(variant, mesh, MasonryModel::uncracked);
    return forces_of(wall.advance(stage_at_once(variant)));
  };
  WhatIf what_if;
  what_if.as_given = forces(job);
  what_if.unyielding = forces(with_unyielding_needles(job));
  bool any_slack = false;
  for (const Needle& needle : job.needles) any_slack = any_slack || needle.slack > 0.0;
  if (any_slack) what_if.without_slack = forces(without_slack(job));
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    what_if.without_load.push_back(forces(without_point_load(job, i)));
  }
  return what_if;
}

void check_load_total(const PanelResult& analysis, double expected) {
  if (std::abs(analysis.load_total - expected) <= load_tolerance * expected) return;
  throw SolveError(fmt::format(
      "the finite elements weigh {:.2f} kN where the hand sum of all loads is {:.2f} kN",
      analysis.load_total / 1000.0, expected / 1000.0));
}

void add_beam_and_site(JobResult& result) {
  const auto add = [&](const std::vector<Check>& checks) {
    result.checks.insert(result.checks.end(), checks.begin(), checks.end());
  };
  if (result.job.beam) add(check_beam(result));
  add(check_piers(result));
  add(check_point_bearings(result.job));
  result.take_down = take_down(result.job.house);
  add(check_chimneys(result.job, result.take_down));
  result.shores = design_shores(result.job);
  for (const ShoreDesign& shore : result.shores) add(shore.checks);
  if (result.job.lifting) {
    result.lift = plan_lift(result.job);
    add(result.lift->checks);
  }
  result.removed = removed_masonry(result.job);
  result.monitoring = monitoring_of(result.job, result.mesh, result.stages);
  sort_worst_first(result.checks);
}

}  // namespace deadshore::solver
