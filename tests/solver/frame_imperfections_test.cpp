#include "solver/frame/imperfections.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace deadshore::solver {
namespace {

/// A pinned prop under a load, held sideways at its head.
Frame prop(double load) {
  Frame frame;
  frame.nodes = {{0.0, 0.0, "foot"}, {0.0, 2600.0, "head"}};
  frame.members = {testing::unshortened_member(0, 1)};
  frame.supports = {pinned_support(0), {1, 0.0, std::nullopt, std::nullopt}};
  frame.node_loads = {{1, 0.0, -load, 0.0}};
  return frame;
}

constexpr double practice_lean = 1.5 * M_PI / 180.0;

TEST(Lean, PushesAgainstWhatHoldsTheHead) {
  const double load = 20000.0;
  const Frame leaning = with_lean(prop(load), std::array{1}, 0.0, practice_lean);
  const double drawn = solve(leaning).value().reactions[1].x;
  EXPECT_NEAR(drawn / (-load * std::tan(practice_lean)), 1.0, 1e-6);

  Frame stands_for_it = prop(load);
  // The head to the right of the foot is on the member's right: a negative lean to its left.
  add_lean_forces(stands_for_it, 0, load, -practice_lean);
  EXPECT_NEAR(solve(stands_for_it).value().reactions[1].x / drawn, 1.0, 1e-6);
}

TEST(Eccentricity, BendsThePropByTheLoadTimesTheOffset) {
  Frame frame = prop(0.0);
  frame.node_loads = {eccentric_load(1, 0.0, -20000.0, 25.0, 0.0)};
  const FrameSolution solution = solve(frame).value();
  EXPECT_NEAR(section(solution.members[0], 2600.0).moment, -20000.0 * 25.0, 1e-3);
  EXPECT_NEAR(section(solution.members[0], 2600.0).axial, -20000.0, 1e-6);
}

TEST(Bow, KeepsTheLoadsOfTheMember) {
  Frame frame = prop(20000.0);
  frame.line_loads = {{0, 400.0, 2000.0, 0.5, 0.0, 1.5, 0.0}};
  const Frame bowed = with_bow(frame, 0, 10.0, 6);
  ASSERT_EQ(bowed.members.size(), 6U);
  EXPECT_NEAR(bowed.nodes[4].x, -10.0, 1e-12);  // left of a member that runs up
  const FrameSolution solution = solve(bowed).value();
  EXPECT_NEAR(solution.reactions[0].x + solution.reactions[1].x, -1600.0, 1e-6);
}

}  // namespace
}  // namespace deadshore::solver
