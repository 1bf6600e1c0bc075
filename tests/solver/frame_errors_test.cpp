#include "solver/frame/imperfections.h"
#include "solver/model/error.h"
#include "tests/solver/frame_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace deadshore::solver {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using testing::level_beam;
using testing::roller_support;

std::string refusal(const Frame& frame) {
  try {
    const FrameResult result = solve(frame);
    return result.report.reason;
  } catch (const SolveError& error) {
    return error.what();
  }
}

Frame sound() {
  Frame frame = level_beam(2000.0);
  frame.nodes[0].name = "inner prop";
  frame.nodes[1].name = "outer prop";
  frame.members[0].name = "needle";
  frame.supports = {pinned_support(0), roller_support(1)};
  return frame;
}

TEST(FrameFaults, NameTheThingAndTheRule) {
  Frame frame = sound();
  frame.members[0].E = -1.0;
  EXPECT_EQ(refusal(frame), "'needle': E must be above 0, found -1");
  frame = sound();
  frame.members[0].to = 7;
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("needle"), HasSubstr("7"), HasSubstr("only 2")));
  frame = sound();
  frame.nodes[1].x = 0.0;
  EXPECT_THAT(refusal(frame), HasSubstr("length must be above 0"));
  frame = sound();
  frame.point_loads = {{0, 2100.0, 0.0, -1.0, 0.0}};
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("needle"), HasSubstr("2100"), HasSubstr("2000")));
  frame = sound();
  frame.node_loads = {{1, 0.0, std::numeric_limits<double>::quiet_NaN(), 0.0}};
  EXPECT_THAT(refusal(frame), HasSubstr("outer prop"));
  frame = sound();
  frame.springs = {{1, ground, 0.0, 0.0, 100.0, false, 0.0}};
  EXPECT_THAT(refusal(frame), HasSubstr("direction"));
}

TEST(Mechanism, NamesTheNodeThatSlides) {
  Frame frame = sound();
  frame.supports = {roller_support(0), roller_support(1)};
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("mechanism"), HasSubstr("sideways")));
}

TEST(Mechanism, NamesTheNodeThatDrops) {
  Frame frame = sound();
  frame.supports = {pinned_support(0)};
  EXPECT_EQ(refusal(frame), "the frame is a mechanism: 'outer prop' can move up and down freely");
}

TEST(Mechanism, NamesTheNodeThatTurns) {
  // Both ends pinned to a node that holds nothing else but a spring's other end.
  Frame frame = sound();
  frame.members[0].pin_to = true;
  frame.nodes.push_back({2000.0, 500.0, "loose"});
  frame.supports.push_back(pinned_support(2));
  frame.rotation_springs = {{1, 2, 1e6}};
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("mechanism"), HasSubstr("turn")));
}

TEST(Mechanism, IsFoundWhereSpringsLetGo) {
  Frame frame = sound();
  frame.supports = {{0, 0.0, std::nullopt, std::nullopt}};
  frame.springs = {{0, ground, 0.0, -1.0, 5000.0, true, 0.0},
                   {1, ground, 0.0, -1.0, 5000.0, true, 0.0}};
  frame.node_loads = {{1, 0.0, 1000.0, 0.0}};
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("mechanism"), HasSubstr("outer prop")));
}

TEST(Mechanism, IsANeedleThatOverturns) {
  Frame frame = level_beam(std::array{0.0, 1000.0, 2000.0});
  frame.nodes[2].name = "overhang";
  frame.supports = {{0, 0.0, std::nullopt, std::nullopt}};
  frame.springs = {{0, ground, 0.0, -1.0, 5000.0, true, 0.0},
                   {1, ground, 0.0, -1.0, 5000.0, true, 0.0}};
  frame.node_loads = {{2, 0.0, -1000.0, 0.0}};
  EXPECT_THAT(refusal(frame), AllOf(HasSubstr("mechanism"), HasSubstr("up and down")));
}

TEST(Mechanism, IsATowerWithoutABrace) {
  Frame frame = testing::portal(1000.0, 2000.0, 1.0, false);
  for (FrameMember& member : frame.members) member.pin_from = member.pin_to = true;
  EXPECT_THAT(refusal(frame), HasSubstr("sideways"));
  frame.members.push_back(testing::sample_member(0, 2));
  frame.members.back().pin_from = frame.members.back().pin_to = true;
  EXPECT_EQ(refusal(frame), "");
}

TEST(PinnedJoint, RefusesAMoment) {
  Frame frame = level_beam(std::array{0.0, 1000.0});
  frame.members[0].pin_to = true;
  frame.supports = {fixed_support(0)};
  frame.node_loads = {{1, 0.0, 0.0, 1e5}};
  EXPECT_THAT(refusal(frame), HasSubstr("a moment acts on node 1"));
}

TEST(ClampedBeam, NeedsNoEquations) {
  Frame frame = sound();
  frame.supports = {fixed_support(0), fixed_support(1)};
  frame.line_loads = {uniform_load(frame, 0, 0.0, -3.0)};
  EXPECT_NEAR(testing::second_order(frame).reactions[0].moment, 1e6, 1e-3);
}

TEST(UnstableFrame, IsReportedAndHasNoAnswer) {
  Frame frame = sound();
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
  Frame frame = sound();
  frame.members[0].pin_from = frame.members[0].pin_to = true;
  frame.node_loads = {{1, -1.1 * M_PI * M_PI * testing::sample_EI / 4e6, 0.0, 0.0}};
  EXPECT_THAT(solve(frame, {.order = FrameOrder::second}).report.reason,
              HasSubstr("'needle' buckles"));
}

TEST(SecondOrder, TakesFewPassesWhereAxialForcesAreStatic) {
  Frame frame = sound();
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
