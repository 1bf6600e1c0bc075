#include "solver/job/error.h"
#include "tests/solver/frame_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
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
  frame = sound();
  frame.supports.push_back(roller_support(1));
  EXPECT_EQ(refusal(frame), "'outer prop' is held twice in the same direction");
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

}  // namespace
}  // namespace deadshore::solver
