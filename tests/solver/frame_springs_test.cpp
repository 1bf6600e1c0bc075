#include "solver/frame/frame_solution.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

namespace deadshore::solver {
namespace {

using testing::level_beam;
using testing::sample_EI;

constexpr double k = 8000.0;  // N/mm

/// A level beam on compression-only springs under each node, held sideways at its first.
Frame beam_on_props(std::vector<double> x) {
  Frame frame = level_beam(x);
  for (int i = 0; i < static_cast<int>(x.size()); ++i)
    frame.springs.push_back({i, ground, 0.0, -1.0, k, true, 0.0});
  frame.supports = {{0, 0.0, std::nullopt, std::nullopt}};
  return frame;
}

TEST(CompressionSpring, LiftsOffUnderALoadOnTheOtherSide) {
  // Props at 0, 1000 and 2000; the overhang beyond pulls the first one up.
  Frame frame = beam_on_props({0.0, 1000.0, 2000.0, 3500.0});
  frame.springs.pop_back();
  frame.node_loads = {{3, 0.0, -10000.0, 0.0}};
  frame.springs.push_back({0, ground, 0.0, 1.0, k, true, 0.0});  // a tail held down
  const FrameSolution solution = solve(frame).value();
  EXPECT_EQ(solution.spring_forces[0], 0.0);
  EXPECT_GT(solution.spring_forces[2], 10000.0);
  EXPECT_GT(solution.spring_forces[3], 0.0);
  EXPECT_NEAR(solution.spring_forces[1] + solution.spring_forces[2] - solution.spring_forces[3],
              10000.0, 1e-6);
}

TEST(CompressionSpring, ClosesItsGapFirst) {
  Frame frame = beam_on_props({0.0, 1000.0, 2000.0});
  frame.springs[1].gap = 3.0;
  frame.node_loads = {{1, 0.0, -1000.0, 0.0}};
  EXPECT_EQ(solve(frame).value().spring_forces[1], 0.0);
  frame.node_loads[0].y = -200000.0;
  const FrameSolution solution = solve(frame).value();
  EXPECT_NEAR(solution.spring_forces[1], k * (-solution.nodes[1].y - 3.0), 1e-6);
  EXPECT_GT(solution.spring_forces[1], 0.0);
}

TEST(CompressionSpring, PreloadPushesAgainstAStiffBeam) {
  Frame frame = level_beam(std::array{0.0, 1000.0});
  frame.supports = {fixed_support(0), fixed_support(1)};
  frame.springs = {{1, ground, 0.0, -1.0, k, true, -2.0}};
  const FrameSolution solution = solve(frame).value();
  EXPECT_EQ(solution.spring_forces[0], 2.0 * k);
  EXPECT_EQ(solution.reactions[1].y, -2.0 * k);
}

TEST(CompressionSpring, BetweenTwoBeamsOnlyPushesThemApart) {
  Frame frame;
  frame.nodes = {{0.0, 0.0, {}}, {1000.0, 0.0, {}}, {0.0, 100.0, {}}, {1000.0, 100.0, {}}};
  frame.members = {testing::sample_member(0, 1), testing::sample_member(2, 3)};
  frame.supports = {fixed_support(0), fixed_support(2)};
  frame.springs = {{3, 1, 0.0, -1.0, k, true, 0.0}};  // from the upper beam down to the lower
  const double own = 3.0 * sample_EI / 1e9;           // stiffness of each cantilever
  frame.node_loads = {{3, 0.0, -5000.0, 0.0}};
  const double shared = 5000.0 / (1.0 + own * (1.0 / k + 1.0 / own));
  EXPECT_NEAR(solve(frame).value().spring_forces[0], shared, 1e-6);
  frame.node_loads[0].y = 5000.0;
  const FrameSolution apart = solve(frame).value();
  EXPECT_EQ(apart.spring_forces[0], 0.0);
  EXPECT_NEAR(apart.nodes[3].y, 5000.0 / own, 1e-9);
}

/// Springs that bear push, the others are open: complementarity.
void expect_contact(const Frame& frame, const FrameSolution& solution) {
  for (std::size_t i = 0; i < frame.springs.size(); ++i) {
    const double sinking = -solution.nodes[static_cast<std::size_t>(frame.springs[i].node)].y;
    const double closure = sinking - frame.springs[i].gap;
    EXPECT_NEAR(solution.spring_forces[i], frame.springs[i].stiffness * std::max(closure, 0.0),
                1e-6);
  }
}

TEST(CompressionSprings, StopWithTheRightOnesBearingUnderRandomLoads) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  int lifted = 0;
  for (int trial = 0; trial < 60; ++trial) {
    Frame frame = beam_on_props({0.0, 300.0, 700.0, 900.0, 1500.0, 1900.0, 2600.0, 3000.0});
    for (FrameMember& member : frame.members) {
      member.I = 4e5;
      member.weight = 10.0;  // more than the loads can lift or overturn
    }
    for (FrameSpring& spring : frame.springs) spring.gap = 4.0 * uniform(random) - 1.0;
    for (int node = 0; node < 8; ++node)
      frame.node_loads.push_back({node, 0.0, 3000.0 * (2.0 * uniform(random) - 1.0), 0.0});
    const FrameResult result = solve(frame);
    ASSERT_TRUE(result.report.converged) << result.report.reason;
    EXPECT_LE(result.report.contact_steps, 20);
    expect_contact(frame, *result.solution);
    const testing::Unbalance left = testing::unbalance(frame, *result.solution);
    EXPECT_NEAR(left.y, 0.0, 1e-6);
    for (const double force : result.solution->spring_forces) lifted += force == 0.0 ? 1 : 0;
  }
  EXPECT_GT(lifted, 60);
}

TEST(RotationSpring, HoldsAPinnedFoot) {
  Frame frame = level_beam(1000.0);
  const double spring = 5e8;
  frame.supports = {pinned_support(0)};
  frame.rotation_springs = {{0, ground, spring}};
  frame.node_loads = {{1, 0.0, -100.0, 0.0}};
  const FrameSolution solution = solve(frame).value();
  EXPECT_NEAR(-solution.nodes[1].y / (100.0 * 1e6 / spring + 100.0 * 1e9 / (3.0 * sample_EI)), 1.0,
              1e-10);
  EXPECT_NEAR(solution.rotation_spring_moments[0], -1e5, 1e-6);
}

// Two springs under a stiff beam: 1/K = (b/L)^2 / k1 + (a/L)^2 / k2 under a force at a.
TEST(Flexibility, OfANeedleOnTwoPropsFollowsTheLever) {
  Frame frame = level_beam(std::array{0.0, 450.0, 1200.0});
  for (FrameMember& member : frame.members) member.I = 1e13;
  frame.supports = {{0, 0.0, std::nullopt, std::nullopt}};
  frame.springs = {{0, ground, 0.0, -1.0, 20000.0, true, 0.0},
                   {2, ground, 0.0, -1.0, 12000.0, true, 0.0}};
  frame.node_loads = {{1, 0.0, -1000.0, 0.0}};
  const double due = 1.0 / (0.625 * 0.625 / 20000.0 + 0.375 * 0.375 / 12000.0);
  const FrameSolution solution = solve(frame).value();
  EXPECT_NEAR(stiffness(frame, solution, NodePattern{1, 0.0, -1.0, 0.0}) / due, 1.0, 1e-4);
}

TEST(Flexibility, OverAWallIsTheMeanDisplacementPerLoad) {
  Frame frame = level_beam(1200.0);
  frame.supports = {pinned_support(0), testing::roller_support(1)};
  const double W = 20000.0;
  frame.line_loads = {{0, 342.5, 557.5, 0.0, -W / 215.0, 0.0, -W / 215.0}};
  for (const FrameOrder order : {FrameOrder::first, FrameOrder::second}) {
    const FrameSolution solution = solve(frame, {.order = order}).value();
    const double K = stiffness(frame, solution, StretchPattern{0, 342.5, 557.5, 0.0, -1.0});
    EXPECT_NEAR(W / K, -mean_displacement(solution.members[0], 342.5, 557.5).y(), 1e-12);
  }
}

}  // namespace
}  // namespace deadshore::solver
