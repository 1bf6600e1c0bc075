#include "solver/limit/stage_safety.h"

#include "mesh/error.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/point_location.h"
#include "solver/limit/limit_analysis.h"
#include "solver/limit/limit_verdict.h"
#include "solver/limit/stage_bounds.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double element_size = 200.0;      // mm
constexpr double most_loose_load = 1e-3;    // of all loads
constexpr double next_to_nothing = 2.5e-2;  // of the factor
constexpr double wide = 1.5;                // upper over lower bound

/// The whole wall in elements of `element_size`, or of the job's size where that is too coarse.
mesh::WallMesh coarse_mesh(const Job& job) {
  Job coarse = job;
  coarse.analysis.element = mesh::QuadOrder::eight_node;
  try {
    return whole_mesh_of(coarse, element_size);
  } catch (const mesh::GeometryError&) {
    if (job.analysis.mesh_size >= element_size) throw;
    return whole_mesh_of(coarse, job.analysis.mesh_size);
  }
}

/// Velocities on the nodes of `drawn_on`, largest 1; 0 where all that a node belongs to is out.
std::vector<double> drawn_mechanism(const LimitProblem& problem, const StageState& state,
                                    const std::vector<double>& mechanism,
                                    const mesh::QuadMesh& drawn_on) {
  const Eigen::VectorXd carried = carry_over(problem.quads, mechanism, drawn_on);
  std::vector<double> drawn(static_cast<std::size_t>(carried.size()), 0.0);
  double largest = 0.0;
  for (int quad = 0; quad < drawn_on.quad_count(); ++quad) {
    if (state.is_out(drawn_on.region_of(quad))) continue;
    for (const int node : drawn_on.nodes_of(quad)) {
      drawn[2 * static_cast<std::size_t>(node)] = carried(2 * node);
      drawn[2 * static_cast<std::size_t>(node) + 1] = carried(2 * node + 1);
      largest = std::max(largest, std::hypot(carried(2 * node), carried(2 * node + 1)));
    }
  }
  if (largest > 0.0) {
    for (double& velocity : drawn) velocity /= largest;
  }
  return drawn;
}

void set_bounds(const StageBounds& bounds, StageSafety& safety) {
  safety.factor = bounds.lower;
  safety.upper_factor = bounds.upper;
  safety.let_go = bounds.let_go;
  safety.equilibrium_error = bounds.out_of_balance;
  safety.tension_left = bounds.tension;
  safety.triangles = bounds.problem.triangle_count();
  safety.iterations += bounds.iterations;
}

/// Static factor with a tensile strength. Where the wall stands and its mechanism shows that the
/// strength adds next to nothing, that without tension will do.
double with_tension(LimitAnalysis& analysis, const LimitFactor& without, double tension) {
  if (tension <= 0.0) return without.lower;
  const double most = analysis.upper_factor(without.mechanism, tension);
  if (without.lower >= 1.0 && most <= (1.0 + next_to_nothing) * without.lower) return without.lower;
  return std::max(without.lower, analysis.factor(tension, 0.0).lower);
}

/// Least tension with which all of it stands, where some will do.
double tension_needed(LimitAnalysis& analysis, const LimitProblem& problem,
                      double factor_with_tension) {
  constexpr double little_more = 1.02;
  const bool some_will_do = factor_with_tension > 1.0 ||
                            analysis.factor(problem.masonry_strength, 0.0, little_more).lower > 1.0;
  return some_will_do ? analysis.tension_needed() : most_factor;
}

}  // namespace

bool is_wide(const StageSafety& safety) {
  return safety.upper_factor > wide * safety.factor;
}

StageSafety stage_safety(const Job& job, const StageState& state, const mesh::WallMesh& drawn_on) {
  const mesh::WallMesh whole = coarse_mesh(job);
  const LimitProblem problem = limit_problem(job, state, part_at(whole.quads, state).quads);
  LimitAnalysis analysis(problem);

  StageSafety safety;
  const LimitFactor estimate = analysis.factor(0.0, 0.0);
  safety.factor_with_tension = with_tension(analysis, estimate, job.masonry.tensile_strength);
  LimitFindings findings;
  if (estimate.lower < 1.0) {
    const LooseMasonry loose = analysis.loose_masonry();
    safety.loose_weight = loose.masonry;
    safety.tension_needed = tension_needed(analysis, problem, safety.factor_with_tension);
    findings.letting_go = loose.mechanism;
    const double loads = problem.other_load.sum() + problem.masonry_weight.sum();
    findings.has_equilibrium = loose.load < most_loose_load * loads;
  }
  const StageBounds bounds = stage_bounds(job, state);
  set_bounds(bounds, safety);
  safety.factor_with_tension = std::max(safety.factor_with_tension, safety.factor);
  findings.crushes = bounds.gives_way;
  safety.iterations += analysis.iterations();
  safety.verdict = verdict_of(job, state, problem, findings, safety);
  safety.mechanism =
      findings.has_equilibrium
          ? velocities_at(bounds, drawn_on.quads.nodes)
          : drawn_mechanism(problem, state, findings.letting_go, drawn_on.quads);
  return safety;
}

}  // namespace deadshore::solver
