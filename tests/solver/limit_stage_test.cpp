#include "solver/fem/job_mesh.h"
#include "solver/limit/limit_analysis.h"
#include "solver/limit/limit_verdict.h"
#include "solver/limit/stage_safety.h"
#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

Job held_wall() {
  Job job = invented_wall();
  job.left_end = job.right_end = WallEnd::held;
  return job;
}

StageState cut_with_needles(const Job& job) {
  StageState state = state_before(job);
  state.cut_out = true;
  state.needles.assign(job.needles.size(), NeedleState::fitted);
  return state;
}

StageSafety safety_of(const Job& job) {
  return stage_safety(job, cut_with_needles(job), whole_mesh_of(job, 200.0));
}

const StageSafety& held_safety() {
  static const StageSafety safety = safety_of(held_wall());
  return safety;
}
const StageSafety& free_safety() {
  static const StageSafety safety = safety_of(invented_wall());
  return safety;
}

LimitProblem coarse_problem(Job job, const StageState& state) {
  job.analysis.element = mesh::QuadOrder::eight_node;
  return limit_problem(job, state, part_at(whole_mesh_of(job, 300.0).quads, state).quads);
}
LimitFactor coarse_factor(const Job& job, const StageState& state) {
  const LimitProblem problem = coarse_problem(job, state);
  return LimitAnalysis(problem).factor(0.0, 0.0);
}
LimitFactor coarse_factor(const Job& job) {
  return coarse_factor(job, cut_with_needles(job));
}

TEST(StageSafety, BoundsOfAWallThatStandsAreBothAboveOne) {
  const StageSafety& safety = held_safety();
  EXPECT_GT(safety.factor, 1.0);
  EXPECT_LE(safety.factor, safety.upper_factor);
  EXPECT_LT(safety.equilibrium_error, 1e-9);
  EXPECT_GE(safety.factor_with_tension, safety.factor);
  EXPECT_GT(safety.let_go, 0.0);  // the layer under the soffit, if nothing else
  EXPECT_THAT(safety.verdict, HasSubstr("stands without tension"));
  EXPECT_THAT(safety.verdict, HasSubstr("Left out of that"));
}

TEST(StageSafety, MechanismIsDrawnOnTheWholeWallAndStillWhereItIsOut) {
  const Job job = held_wall();
  const mesh::WallMesh whole = whole_mesh_of(job, 200.0);
  const StageSafety& safety = held_safety();
  ASSERT_EQ(safety.mechanism.size(), 2 * whole.quads.nodes.size());
  double largest = 0.0;
  for (std::size_t node = 0; node < whole.quads.nodes.size(); ++node) {
    const mesh::Point& p = whole.quads.nodes[node];
    const double speed = std::hypot(safety.mechanism[2 * node], safety.mechanism[2 * node + 1]);
    largest = std::max(largest, speed);
    const bool in_cut = p.x > 601.0 && p.x < 5399.0 && p.y < 2399.0;
    if (in_cut) {
      EXPECT_EQ(speed, 0.0);
    }
  }
  EXPECT_NEAR(largest, 1.0, 1e-12);
}

TEST(StageSafety, StrengthAndLoadsTogetherChangeNothing) {
  const Job job = held_wall();
  Job twice = job;
  twice.masonry.unit_weight *= 2.0;
  twice.masonry.compressive_strength *= 2.0;
  twice.masonry.tensile_strength *= 2.0;
  for (LineLoad& load : twice.line_loads) load.dead *= 2.0, load.imposed *= 2.0;
  for (PointLoad& load : twice.point_loads) load.dead *= 2.0, load.imposed *= 2.0;
  const double factor = coarse_factor(job).lower;
  EXPECT_NEAR(coarse_factor(twice).lower, factor, 2e-3 * factor);
}

TEST(StageSafety, OneMoreNeedleNeverLowersTheFactor) {
  const Job job = held_wall();
  StageState three = cut_with_needles(job);
  three.needles[1] = NeedleState::not_yet;
  EXPECT_LE(coarse_factor(job, three).lower, coarse_factor(job).upper);
}

TEST(StageSafety, TheWallSeenFromTheOtherSideIsAsSafe) {
  const double factor = coarse_factor(held_wall()).lower;
  EXPECT_NEAR(coarse_factor(mirrored(held_wall())).lower, factor, 0.02 * factor);
}

TEST(StageSafety, FreeEndsLeaveTheInventedWallWithoutEquilibrium) {
  const StageSafety& safety = free_safety();
  EXPECT_LT(safety.factor, 1.0);
  EXPECT_GT(safety.factor_with_tension, 1.0);
  EXPECT_THAT(safety.verdict, HasSubstr("no equilibrium: it spreads sideways"));
  EXPECT_THAT(safety.verdict, HasSubstr("stands only by the tension of its mortar"));
}

TEST(StageSafety, TensionNeededIsTheLeastThatHoldsTheWall) {
  const Job job = invented_wall();
  const LimitProblem problem = coarse_problem(job, cut_with_needles(job));
  LimitAnalysis analysis(problem);
  const double needed = analysis.tension_needed();
  ASSERT_GT(needed, 0.0);
  EXPECT_LT(analysis.factor(0.95 * needed, 0.0).upper, 1.0);
  EXPECT_GT(analysis.factor(1.05 * needed, 0.0).lower, 1.0);
}

TEST(StageSafety, ThatTheWallStandsIsSaidFirstWhereNextToNothingIsLoose) {
  const Job job = held_wall();
  const StageState state = cut_with_needles(job);
  const LimitProblem problem = coarse_problem(job, state);
  LimitFindings findings;
  findings.letting_go.assign(2 * problem.quads.nodes.size(), 0.0);
  findings.letting_go[1] = -1.0;
  StageSafety safety;
  safety.factor = 3.0;
  safety.upper_factor = 3.2;
  safety.factor_with_tension = 4.0;
  safety.tension_needed = 0.001;
  safety.loose_weight = 120.0;
  const std::string small = verdict_of(job, state, problem, findings, safety);
  EXPECT_THAT(small, StartsWith("The wall stands without tension in its mortar up to 3.00 times"));
  EXPECT_THAT(small, HasSubstr("Only 120 N of masonry"));
  EXPECT_EQ(safety.iterations, 0);  // no remedy tried
  safety.loose_weight = 800.0;
  EXPECT_THAT(verdict_of(job, state, problem, findings, safety),
              StartsWith("Without tension in the mortar 0.8 kN of masonry"));
}

TEST(StageSafety, OneMechanismBoundsTheFactorWithTensionFromAbove) {
  const Job job = held_wall();
  const LimitProblem problem = coarse_problem(job, cut_with_needles(job));
  LimitAnalysis analysis(problem);
  const LimitFactor without = analysis.factor(0.0, 0.0);
  EXPECT_NEAR(analysis.upper_factor(without.mechanism, 0.0), without.upper, 1e-3 * without.upper);
  const double tension = job.masonry.tensile_strength;
  EXPECT_GE(analysis.upper_factor(without.mechanism, tension), analysis.factor(tension, 0.0).lower);
}

}  // namespace
}  // namespace deadshore::solver
