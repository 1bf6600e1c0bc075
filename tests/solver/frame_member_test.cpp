#include "solver/frame/beam_column.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace deadshore::solver {
namespace {

using testing::level_beam;
using testing::roller_support;
using testing::second_order;

TEST(BeamFunctions, AreCosinesSinesAndPowers) {
  for (const double x : {0.3, 1.0, 2.9, 3.3, 7.0}) {
    const auto bent = beam_functions(-1.0, x);
    EXPECT_NEAR(bent[0], std::cos(x), 1e-13);
    EXPECT_NEAR(bent[1], std::sin(x), 1e-13);
    EXPECT_NEAR(bent[3], x - std::sin(x), 1e-13);
    const auto pulled = beam_functions(1.0, x);
    EXPECT_NEAR(pulled[2] / (std::cosh(x) - 1.0), 1.0, 1e-13);
    const auto straight = beam_functions(0.0, x);
    EXPECT_NEAR(straight[5] / (std::pow(x, 5) / 120.0), 1.0, 1e-14);
  }
}

TEST(BeamFunctions, MeetWhereTheSeriesEnds) {
  for (const double sign : {-1.0, 1.0}) {
    const auto below = beam_functions(sign * 10.0, 1.0 - 1e-9);
    const auto above = beam_functions(sign * 10.0, 1.0 + 1e-9);
    for (std::size_t n = 0; n < 6; ++n)
      EXPECT_NEAR(below[n], above[n], 1e-8 * (1.0 + std::abs(above[n])));
  }
}

/// A compressed propped cantilever with one of each load, flexible in shear.
Frame busy_member(double compression) {
  Frame frame = level_beam(3000.0);
  frame.members[0].shear_stiffness = 2e8;
  frame.members[0].weight = 0.4;
  frame.supports = {fixed_support(0), roller_support(1)};
  frame.node_loads = {{1, -compression, 0.0, 3e6}};
  frame.line_loads = {{0, 500.0, 1700.0, 0.0, -4.0, 0.0, -9.0}};
  frame.point_loads = {{0, 2100.0, 0.0, -7000.0, 2e6}};
  return frame;
}

// The differential equations of the member, by central differences.
TEST(MemberSection, ObeysEquilibriumAndTheLawsOfBendingAndShear) {
  const MemberSolution member = second_order(busy_member(1.2e6)).members[0];
  const double step = 0.5;
  for (const double x : {200.0, 900.0, 1500.0, 1900.0, 2800.0}) {
    const SectionState here = section(member, x);
    const SectionState before = section(member, x - step);
    const SectionState after = section(member, x + step);
    const auto slope = [&](double SectionState::*quantity) {
      return (after.*quantity - before.*quantity) / (2.0 * step);
    };
    const double load = -0.4 - (x > 500.0 && x < 1700.0 ? 4.0 + 5.0 * (x - 500.0) / 1200.0 : 0.0);
    EXPECT_NEAR(slope(&SectionState::transverse), load, 1e-6);
    EXPECT_NEAR(slope(&SectionState::moment), here.shear, 1e-4 * std::abs(here.shear) + 1e-2);
    EXPECT_NEAR(slope(&SectionState::rotation), here.moment / member.beam.EI, 1e-10);
    EXPECT_NEAR(slope(&SectionState::deflection), here.rotation - here.shear / 2e8, 1e-9);
    EXPECT_NEAR(here.shear, here.transverse + here.axial * slope(&SectionState::deflection), 1e-2);
  }
}

TEST(MemberSection, JumpsByTheLoadsThatBeginThere) {
  const MemberSolution member = solve(busy_member(0.0)).value().members[0];
  const SectionState before = section(member, 2100.0, SectionSide::before);
  const SectionState after = section(member, 2100.0, SectionSide::after);
  EXPECT_NEAR(after.shear - before.shear, -7000.0, 1e-6);
  EXPECT_NEAR(after.moment - before.moment, -2e6, 1e-3);
  EXPECT_EQ(after.deflection, before.deflection);
}

TEST(MemberSection, AtTheEndsMovesWithTheNodes) {
  const FrameSolution solution = second_order(busy_member(1.2e6));
  const SectionState end = section(solution.members[0], 3000.0);
  EXPECT_NEAR(end.x, solution.nodes[1].x, 1e-12);
  EXPECT_NEAR(end.y, 0.0, 1e-12);
  EXPECT_NEAR(end.rotation, solution.nodes[1].rotation, 1e-14);
  EXPECT_NEAR(end.moment, 3e6, 1e-4);
}

TEST(DividedMember, GivesTheSameAnswer) {
  const Frame whole = busy_member(0.0);
  const Frame parts = divided(whole, 7);
  const FrameSolution one = solve(whole).value();
  const FrameSolution seven = solve(parts).value();
  ASSERT_EQ(seven.members.size(), 7U);
  EXPECT_NEAR(seven.reactions[0].moment / one.reactions[0].moment, 1.0, 1e-10);
  EXPECT_NEAR(seven.nodes[1].rotation / one.nodes[1].rotation, 1.0, 1e-10);
  EXPECT_NEAR(seven.nodes[3].y / section(one.members[0], 3000.0 * 2.0 / 7.0).y, 1.0, 1e-10);
}

TEST(DividedMember, GivesTheSameAnswerInSecondOrder) {
  const Frame whole = busy_member(1.2e6);
  const double one = second_order(whole).reactions[0].moment;
  EXPECT_NEAR(second_order(divided(whole, 5)).reactions[0].moment / one, 1.0, 1e-9);
}

TEST(PinnedMember, CarriesNoMomentAtThePin) {
  Frame frame = level_beam(std::array{0.0, 1000.0, 2500.0});
  frame.supports = {fixed_support(0), fixed_support(2)};
  frame.members[1].pin_from = true;
  frame.line_loads = {uniform_load(frame, 1, 0.0, -5.0)};
  for (const FrameOrder order : {FrameOrder::first, FrameOrder::second}) {
    const FrameSolution solution = solve(frame, {.order = order}).value();
    EXPECT_NEAR(section(solution.members[1], 0.0).moment, 0.0, 1e-6);
    EXPECT_NEAR(section(solution.members[0], 1000.0).moment, 0.0, 1e-6);
  }
}

TEST(StiffTie, KeepsItsDigitsUntilItHangsLikeACable) {
  Frame frame = level_beam(3000.0);
  frame.members[0].I = 8000.0;
  frame.supports = {pinned_support(0), roller_support(1)};
  frame.members[0].weight = 0.4;
  frame.node_loads = {{1, 40000.0, 0.0, 0.0}};  // sqrt(N / EI) L = 14.6
  const SectionState middle = section(second_order(frame).members[0], 1500.0);
  const double u = 0.5 * 3000.0 * std::sqrt(40000.0 / (210000.0 * 8000.0));
  EXPECT_NEAR(middle.moment / (0.4 * 210000.0 * 8000.0 / 40000.0 * (1.0 - 1.0 / std::cosh(u))), 1.0,
              1e-7);
  frame.node_loads[0].x = 50000.0;
  EXPECT_THROW((void)solve(frame, {.order = FrameOrder::second}), std::runtime_error);
}

TEST(MeanDisplacement, IsTheIntegralOfTheElasticLine) {
  Frame frame = level_beam(2000.0);
  frame.supports = {pinned_support(0), roller_support(1)};
  const double w = 10.0;
  frame.line_loads = {uniform_load(frame, 0, 0.0, -w)};
  const MemberSolution member = solve(frame).value().members[0];
  // integral of w (L^3 x - 2 L x^3 + x^4) / 24 EI over the span: w L^5 / 120 EI
  EXPECT_NEAR(mean_displacement(member, 0.0, 2000.0).y() /
                  (-w * std::pow(2000.0, 4) / (120.0 * testing::sample_EI)),
              1.0, 1e-12);
}

}  // namespace
}  // namespace deadshore::solver
