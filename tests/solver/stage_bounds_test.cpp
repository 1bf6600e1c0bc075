#include "solver/limit/bound_analysis.h"
#include "solver/limit/safety_order.h"
#include "solver/limit/stage_bounds.h"
#include "tests/solver/grid_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

constexpr BoundSizes coarse_sizes{200.0, 300.0, 2500};

Job bound_held_wall() {
  Job job = invented_wall();
  job.left_end = job.right_end = WallEnd::held;
  return job;
}

StageState bound_cut_with_needles(const Job& job) {
  StageState state = state_before(job);
  state.cut_out = true;
  state.needles.assign(job.needles.size(), NeedleState::fitted);
  return state;
}

TEST(TriangleMesh, FillsTheQuadsAndStaysConformingWhenItIsRefined) {
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(3, 2, mesh::QuadOrder::four_node, 900.0, 400.0);
  TriangleMesh mesh = triangles_of(quads);
  split_chain_at(mesh, 2, 410.0);
  refine(
      mesh, [](mesh::Point p) { return 20.0 + 0.3 * std::hypot(p.x - 410.0, p.y - 400.0); }, 5000);
  const BoundProblem problem = plain_bound_problem(mesh, {1.0, 1.0, 0.0});
  double area = 0.0;
  for (int i = 0; i < problem.triangle_count(); ++i) {
    EXPECT_GT(problem.area(i), 0.0);
    area += problem.area(i);
  }
  EXPECT_NEAR(area, 900.0 * 400.0, 1e-6);
  double outline = 0.0;
  for (const BoundEdge& edge : problem.edges) {
    if (edge.is_boundary()) outline += problem.length(edge);
  }
  EXPECT_NEAR(outline, 2600.0, 1e-6);  // a hanging node would leave more
}

TEST(LowerBound, EquilibriumHoldsToRoundOffAndNothingPassesStrength) {
  const Job job = bound_held_wall();
  const StageBounds bounds = stage_bounds(job, bound_cut_with_needles(job), coarse_sizes);
  EXPECT_GT(bounds.lower, 0.0);
  EXPECT_LT(bounds.out_of_balance, 1e-9);
  EXPECT_LE(bounds.tension,
            (1.0 + 1e-9) * tension_left_in_bounds * job.masonry.compressive_strength);
  EXPECT_LE(bounds.lower, bounds.upper);
}

TEST(LetFringeGo, TakesTheWeightUnderFlatEdgesAlone) {
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(4, 4, mesh::QuadOrder::four_node, 400.0, 400.0);
  const TriangleMesh mesh = triangles_of(quads);
  BoundProblem problem = plain_bound_problem(mesh, {10.0, 1.0, 2e-5});
  push(problem, mesh, 0, {0.0, 100.0});
  const double one_triangle = 2e-5 * 10.0 * 100.0 * 100.0 / 4.0;
  EXPECT_NEAR(let_fringe_go(problem), 3.0 * one_triangle, 1e-12);
}

TEST(StageBounds, LowerIsNeverAboveUpperAndBothFallWhenSupportGoes) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  for (int trial = 0; trial < 4; ++trial) {
    Job job = bound_held_wall();
    job.masonry.compressive_strength = 0.5 + 3.0 * uniform(random);
    for (LineLoad& load : job.line_loads) load.dead *= 0.5 + 2.0 * uniform(random);
    for (PointLoad& load : job.point_loads) load.dead *= 0.5 + 4.0 * uniform(random);
    StageState less = bound_cut_with_needles(job);
    std::vector<StageState> states{less};
    std::vector<std::optional<StageSafety>> safety;
    for (const std::size_t needle : {std::size_t{1}, std::size_t{2}}) {
      less.needles[needle] = NeedleState::released;
      states.push_back(less);
    }
    for (const StageState& state : states) {
      const StageBounds bounds = stage_bounds(job, state, coarse_sizes);
      EXPECT_LE(bounds.lower, bounds.upper) << trial;
      safety.emplace_back();
      safety.back().emplace();
      safety.back()->factor = bounds.lower;
      safety.back()->upper_factor = bounds.upper;
    }
    put_in_order(states, safety);
    for (std::size_t k = 1; k < states.size(); ++k) {
      EXPECT_LE(safety[k]->factor, safety[k - 1]->factor) << trial;
      EXPECT_LE(safety[k]->upper_factor, safety[k - 1]->upper_factor) << trial;
      EXPECT_LE(safety[k]->factor, safety[k]->upper_factor) << trial;
    }
  }
}

TEST(PutInOrder, NoFactorRisesWhenMasonryOrSupportGoes) {
  const Job job = invented_wall();
  const StageState built = state_before(job);
  StageState fitted = bound_cut_with_needles(job);
  StageState fewer = fitted;
  fewer.needles[0] = NeedleState::not_yet;
  EXPECT_TRUE(is_held_no_better(fewer, fitted));
  EXPECT_FALSE(is_held_no_better(fitted, fewer));
  EXPECT_FALSE(is_held_no_better(fitted, built));  // it has needles
  EXPECT_TRUE(is_held_no_better(fitted, fitted));
  const std::vector<StageState> states{fitted, fewer};
  std::vector<std::optional<StageSafety>> safety(2);
  safety[0].emplace().factor = 4.5;
  safety[1].emplace().factor = 9.6;
  safety[0]->upper_factor = 5.0;
  safety[1]->upper_factor = 10.0;
  put_in_order(states, safety);
  EXPECT_EQ(safety[0]->factor, 4.5);
  EXPECT_EQ(safety[1]->factor, 4.5);
  EXPECT_EQ(safety[1]->upper_factor, 5.0);
  EXPECT_THAT(safety[1]->verdict, HasSubstr("Counted as 4.50"));
}

}  // namespace
}  // namespace deadshore::solver
