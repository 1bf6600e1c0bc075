#include "solver/limit/limit_analysis.h"
#include "solver/limit/stage_safety.h"
#include "solver/stages/staged_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

Job held_wall() {
  Job job = invented_wall();
  job.left_end = job.right_end = WallEnd::held;
  return job;
}

StageState cut_with_needles(const Job& job) {
  StageState state = state_before(job);
  state.removed = {cut_region};
  state.needles.assign(job.needles.size(), NeedleState::fitted);
  return state;
}

StageSafety safety_of(const Job& job, const StageState& state) {
  return stage_safety(job, state, whole_mesh_of(job, 200.0));
}
StageSafety safety_of(const Job& job) {
  return safety_of(job, cut_with_needles(job));
}

TEST(StageSafety, StaticAndKinematicFactorsMeet) {
  const StageSafety safety = safety_of(held_wall());
  EXPECT_GT(safety.factor, 1.0);
  EXPECT_LE(safety.static_factor, safety.kinematic_factor);
  EXPECT_LT(safety.gap, 1e-4);
  EXPECT_GE(safety.factor_with_tension, safety.static_factor);
  EXPECT_THAT(safety.verdict, HasSubstr("Stands without tension"));
}

TEST(StageSafety, MechanismIsDrawnOnTheWholeWallAndStillWhereItIsOut) {
  const Job job = held_wall();
  const mesh::WallMesh whole = whole_mesh_of(job, 200.0);
  const StageSafety safety = stage_safety(job, cut_with_needles(job), whole);
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
  const double factor = safety_of(job).factor;
  EXPECT_NEAR(safety_of(twice).factor, factor, 2e-4 * factor);
}

TEST(StageSafety, OneMoreNeedleNeverLowersTheFactor) {
  const Job job = held_wall();
  StageState three = cut_with_needles(job);
  three.needles[1] = NeedleState::not_yet;
  EXPECT_LE(safety_of(job, three).factor, safety_of(job).kinematic_factor);
}

TEST(StageSafety, TheWallSeenFromTheOtherSideIsAsSafe) {
  const double factor = safety_of(held_wall()).factor;
  EXPECT_NEAR(safety_of(mirrored(held_wall())).factor, factor, 0.02 * factor);
}

TEST(StageSafety, FreeEndsLeaveTheInventedWallWithoutEquilibrium) {
  const Job job = invented_wall();
  const StageSafety safety = safety_of(job);
  EXPECT_LT(safety.factor, 1.0);
  EXPECT_GT(safety.factor_with_tension, 1.0);
  EXPECT_THAT(safety.verdict, HasSubstr("no equilibrium: it spreads sideways"));
  EXPECT_THAT(safety.verdict, HasSubstr("stands only by the tension of its mortar"));
}

TEST(StageSafety, TensionNeededIsTheLeastThatHoldsTheWall) {
  Job job = invented_wall();
  const double needed = safety_of(job).tension_needed;
  ASSERT_GT(needed, 0.0);
  const StageState state = cut_with_needles(job);
  job.analysis.element = mesh::QuadOrder::eight_node;
  const LimitProblem problem =
      limit_problem(job, state, part_at(whole_mesh_of(job, 200.0).quads, state).quads);
  LimitAnalysis analysis(problem);
  EXPECT_LT(analysis.factor(0.95 * needed, 0.0).upper, 1.0);
  EXPECT_GT(analysis.factor(1.05 * needed, 0.0).lower, 1.0);
}

}  // namespace
}  // namespace deadshore::solver
