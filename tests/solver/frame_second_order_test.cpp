#include "solver/job/error.h"
#include "tests/solver/frame_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

Frame needle() {
  Frame frame = testing::level_beam(2000.0);
  frame.members[0].name = "needle";
  frame.supports = {pinned_support(0), testing::roller_support(1)};
  return frame;
}

TEST(UnstableFrame, IsReportedAndHasNoAnswer) {
  Frame frame = needle();
  frame.node_loads = {{1, -1.1 * M_PI * M_PI * testing::sample_EI / 4e6, 0.0, 0.0}};
  frame.line_loads = {uniform_load(frame, 0, 0.0, -1.0)};
  const FrameResult result = solve(frame, {.order = FrameOrder::second});
  EXPECT_TRUE(result.report.unstable);
  EXPECT_FALSE(result.report.converged);
  EXPECT_THAT(result.report.reason, HasSubstr("buckles"));
  EXPECT_THROW((void)result.value(), SolveError);
  EXPECT_TRUE(solve(frame).report.converged);  // first order does not see it
}

TEST(UnstableFrame, NamesThePinnedMemberThatBuckles) {
  Frame frame = needle();
  frame.members[0].pin_from = frame.members[0].pin_to = true;
  frame.node_loads = {{1, -1.1 * M_PI * M_PI * testing::sample_EI / 4e6, 0.0, 0.0}};
  EXPECT_THAT(solve(frame, {.order = FrameOrder::second}).report.reason,
              HasSubstr("'needle' buckles"));
}

TEST(SecondOrder, TakesFewPassesWhereAxialForcesAreStatic) {
  Frame frame = needle();
  frame.node_loads = {{1, -1e5, 0.0, 0.0}};
  frame.line_loads = {uniform_load(frame, 0, 0.0, -1.0)};
  const FrameReport report = solve(frame, {.order = FrameOrder::second}).report;
  EXPECT_TRUE(report.converged);
  EXPECT_EQ(report.passes, 2);
  EXPECT_LE(report.change, 1e-10);
}

TEST(SecondOrder, SaysSoWhenItsPassesRunOut) {
  Frame frame = testing::portal(3000.0, 3000.0, 1.0, true);
  frame.node_loads = {{1, 5e3, -1e6, 0.0}, {2, 0.0, -1e6, 0.0}};
  const FrameResult result = solve(frame, {.order = FrameOrder::second, .most_passes = 2});
  EXPECT_FALSE(result.report.converged);
  EXPECT_FALSE(result.solution.has_value());
  EXPECT_THAT(result.report.reason, HasSubstr("2 passes"));
}

}  // namespace
}  // namespace deadshore::solver
