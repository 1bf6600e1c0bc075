// Beams of one span: W. C. Young & R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed.
// (2002), table 8.1 (from memory, unverified against the book; each is also derived in any text on
// strength of materials). Continuous beams: the three-moment equation (Clapeyron 1857), as tabled
// in any handbook. Closed forms throughout, so one member a span has to be exact.

#include "tests/published/comparison.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source roark{Field::beams, Certainty::memory, "Roark, 7th ed., table 8.1"};
constexpr Source clapeyron{Field::beams, Certainty::derived,
                           "Three-moment equation (Clapeyron 1857)"};
constexpr Source statics{Field::beams, Certainty::derived, "Statics"};

using testing::level_beam;
using testing::roller_support;
using testing::sample_EI;

constexpr double l = 3000.0;
constexpr double w = 12.0;     // N/mm
constexpr double P = 20000.0;  // N
constexpr double exact = 1e-9;

#define EXPECT_SAME(found, due) EXPECT_NEAR((found) / (due), 1.0, exact)

/// Equal but for rounding: `unit` N mm in a kNm and the like.
void same(const Source& source, const char* what, double found, double due, double unit,
          const char* name) {
  verify({source, what, due / unit, found / unit, exact * std::abs(due / unit), name});
}
constexpr double kN = 1e3;
constexpr double kNm = 1e6;

Frame with_ends(const FrameSupport& left, const FrameSupport& right) {
  Frame beam = level_beam(l);
  beam.supports = {left, right};
  return beam;
}

Frame simple_beam() {
  return with_ends(pinned_support(0), roller_support(1));
}
Frame propped_cantilever() {
  return with_ends(fixed_support(0), roller_support(1));
}
Frame fixed_ended() {
  return with_ends(fixed_support(0), fixed_support(1));
}

Frame uniformly(Frame beam, double load = w) {
  for (int i = 0; i < static_cast<int>(beam.members.size()); ++i)
    beam.line_loads.push_back(uniform_load(beam, i, 0.0, -load));
  return beam;
}

Frame with_force(Frame beam, double at, double force = P) {
  beam.point_loads.push_back({0, at, 0.0, -force, 0.0});
  return beam;
}

TEST(RoarkBeams, SimpleBeamUnderUniformLoad) {
  const FrameSolution solution = solve(uniformly(simple_beam())).value();
  const MemberSolution& beam = solution.members[0];
  EXPECT_SAME(solution.reactions[0].y, w * l / 2.0);
  same(roark, "simple beam, even load: moment",
       extremes(beam, &SectionState::moment).greatest.moment, w * l * l / 8.0, kNm, "kNm");
  same(roark, "simple beam, even load: deflection", section(beam, l / 2.0).deflection,
       -5.0 * w * std::pow(l, 4) / (384.0 * sample_EI), 1.0, "mm");
  EXPECT_SAME(section(beam, 0.0).shear, w * l / 2.0);
  EXPECT_SAME(section(beam, l).shear, -w * l / 2.0);
}

TEST(RoarkBeams, SimpleBeamUnderPartUniformLoad) {
  Frame beam = simple_beam();
  const double a = 1000.0;
  beam.line_loads.push_back({0, 0.0, a, 0.0, -w, 0.0, -w});
  const FrameSolution solution = solve(beam).value();
  const double R = w * a * (2.0 * l - a) / (2.0 * l);
  same(roark, "simple beam, even load on a third: left reaction", solution.reactions[0].y, R, kN,
       "kN");
  const SectionState top = extremes(solution.members[0], &SectionState::moment).greatest;
  EXPECT_SAME(top.moment, R * R / (2.0 * w));
  EXPECT_NEAR(top.at, R / w, 1e-3);
}

TEST(RoarkBeams, SimpleBeamUnderTriangularLoad) {
  Frame beam = simple_beam();
  beam.line_loads.push_back({0, 0.0, l, 0.0, 0.0, 0.0, -w});
  const FrameSolution solution = solve(beam).value();
  const SectionState top = extremes(solution.members[0], &SectionState::moment).greatest;
  same(roark, "simple beam, triangular load: moment", top.moment,
       w * l * l / (9.0 * std::numbers::sqrt3), kNm, "kNm");
  EXPECT_NEAR(top.at, l / std::numbers::sqrt3, 1e-3);
}

TEST(RoarkBeams, SimpleBeamUnderAMomentAtItsMiddle) {
  Frame beam = simple_beam();
  const double M = 5e6;
  beam.point_loads.push_back({0, l / 2.0, 0.0, 0.0, M});
  const MemberSolution member = solve(beam).value().members[0];
  EXPECT_SAME(section(member, l / 2.0, SectionSide::before).moment, M / 2.0);
  EXPECT_SAME(section(member, l / 2.0, SectionSide::after).moment, -M / 2.0);
  EXPECT_NEAR(section(member, l / 2.0).deflection, 0.0, 1e-12);
}

TEST(RoarkBeams, ProppedCantileverUnderUniformLoad) {
  const FrameSolution solution = solve(uniformly(propped_cantilever())).value();
  same(roark, "propped cantilever, even load: prop", solution.reactions[1].y, 3.0 * w * l / 8.0, kN,
       "kN");
  EXPECT_SAME(solution.reactions[0].moment, w * l * l / 8.0);
  const Extremes moment = extremes(solution.members[0], &SectionState::moment);
  EXPECT_SAME(moment.least.moment, -w * l * l / 8.0);
  same(roark, "propped cantilever, even load: sagging moment", moment.greatest.moment,
       9.0 * w * l * l / 128.0, kNm, "kNm");
  EXPECT_NEAR(moment.greatest.at, 5.0 * l / 8.0, 1e-3);
  const SectionState lowest = extremes(solution.members[0], &SectionState::deflection).least;
  const double t = (1.0 + std::sqrt(33.0)) / 16.0;  // 0.4215, from the prop
  EXPECT_NEAR(l - lowest.at, t * l, 1e-3);
  same(roark, "propped cantilever, even load: deflection", lowest.deflection,
       -w * std::pow(l, 4) / (48.0 * sample_EI) * (t - 3.0 * t * t * t + 2.0 * t * t * t * t), 1.0,
       "mm");
}

TEST(RoarkBeams, ProppedCantileverUnderCentralForce) {
  const FrameSolution solution = solve(with_force(propped_cantilever(), l / 2.0)).value();
  same(roark, "propped cantilever, central force: prop", solution.reactions[1].y, 5.0 * P / 16.0,
       kN, "kN");
  EXPECT_SAME(solution.reactions[0].moment, 3.0 * P * l / 16.0);
  const SectionState lowest = extremes(solution.members[0], &SectionState::deflection).least;
  EXPECT_SAME(lowest.deflection, -P * l * l * l / (48.0 * std::sqrt(5.0) * sample_EI));
  EXPECT_NEAR(l - lowest.at, l / std::sqrt(5.0), 1e-3);
}

TEST(RoarkBeams, FixedEndedUnderUniformLoad) {
  const FrameSolution solution = solve(uniformly(fixed_ended())).value();
  const MemberSolution& beam = solution.members[0];
  EXPECT_SAME(section(beam, 0.0).moment, -w * l * l / 12.0);
  EXPECT_SAME(section(beam, l / 2.0).moment, w * l * l / 24.0);
  same(roark, "fixed ends, even load: deflection", section(beam, l / 2.0).deflection,
       -w * std::pow(l, 4) / (384.0 * sample_EI), 1.0, "mm");
}

TEST(RoarkBeams, FixedEndedUnderEccentricForce) {
  const double a = 900.0;
  const double b = l - a;
  const FrameSolution solution = solve(with_force(fixed_ended(), a)).value();
  const MemberSolution& beam = solution.members[0];
  same(roark, "fixed ends, eccentric force: left end moment", section(beam, 0.0).moment,
       -P * a * b * b / (l * l), kNm, "kNm");
  EXPECT_SAME(section(beam, l).moment, -P * a * a * b / (l * l));
  EXPECT_SAME(section(beam, a).moment, 2.0 * P * a * a * b * b / (l * l * l));
  same(roark, "fixed ends, eccentric force: deflection under it", section(beam, a).deflection,
       -P * std::pow(a, 3) * std::pow(b, 3) / (3.0 * sample_EI * std::pow(l, 3)), 1.0, "mm");
}

TEST(RoarkBeams, FixedEndedUnderTriangularLoad) {
  Frame beam = fixed_ended();
  beam.line_loads.push_back({0, 0.0, l, 0.0, 0.0, 0.0, -w});
  const FrameSolution solution = solve(beam).value();
  EXPECT_SAME(solution.reactions[0].moment, w * l * l / 30.0);
  same(roark, "fixed ends, triangular load: right end moment", solution.reactions[1].moment,
       -w * l * l / 20.0, kNm, "kNm");
}

TEST(RoarkBeams, ShearFlexibleCantileverAddsPlOverGA) {
  Frame beam = level_beam(l);
  const double GA = 2e8;
  beam.members[0].shear_stiffness = GA;
  beam.supports = {fixed_support(0)};
  beam.node_loads = {{1, 0.0, -P, 0.0}};
  same(roark, "cantilever that shears, end force: deflection", solve(beam).value().nodes[1].y,
       -(P * l * l * l / (3.0 * sample_EI) + P * l / GA), 1.0, "mm");
}

TEST(ThreeMomentEquation, TwoEqualSpansUnderUniformLoad) {
  Frame beam = level_beam(std::array{0.0, l, 2.0 * l});
  beam.supports = {pinned_support(0), roller_support(1), roller_support(2)};
  const FrameSolution solution = solve(uniformly(beam)).value();
  same(clapeyron, "two equal spans, even load: middle reaction", solution.reactions[1].y,
       1.25 * w * l, kN, "kN");
  EXPECT_SAME(solution.reactions[0].y, 0.375 * w * l);
  EXPECT_SAME(section(solution.members[1], 0.0).moment, -w * l * l / 8.0);
}

TEST(ThreeMomentEquation, TwoUnequalSpansUnderUniformLoad) {
  const double l2 = 1.7 * l;
  Frame beam = level_beam(std::array{0.0, l, l + l2});
  beam.supports = {pinned_support(0), roller_support(1), roller_support(2)};
  const FrameSolution solution = solve(uniformly(beam)).value();
  same(clapeyron, "two unequal spans, even load: support moment",
       section(solution.members[0], l).moment, -w * (l * l * l + l2 * l2 * l2) / (8.0 * (l + l2)),
       kNm, "kNm");
}

TEST(ThreeMomentEquation, ThreeEqualSpansUnderUniformLoad) {
  Frame beam = level_beam(std::array{0.0, l, 2.0 * l, 3.0 * l});
  beam.supports = {pinned_support(0), roller_support(1), roller_support(2), roller_support(3)};
  const FrameSolution solution = solve(uniformly(beam)).value();
  EXPECT_SAME(solution.reactions[0].y, 0.4 * w * l);
  same(clapeyron, "three equal spans, even load: second reaction", solution.reactions[1].y,
       1.1 * w * l, kN, "kN");
  EXPECT_SAME(section(solution.members[0], l).moment, -0.1 * w * l * l);
  same(clapeyron, "three equal spans, even load: moment in the end span",
       extremes(solution.members[0], &SectionState::moment).greatest.moment, 0.08 * w * l * l, kNm,
       "kNm");
  EXPECT_SAME(section(solution.members[1], l / 2.0).moment, 0.025 * w * l * l);
}

TEST(ThreeMomentEquation, MiddleSupportSettles) {
  const double settlement = 5.0;
  Frame beam = level_beam(std::array{0.0, l, 2.0 * l});
  beam.supports = {
      pinned_support(0), {1, std::nullopt, -settlement, std::nullopt}, roller_support(2)};
  const FrameSolution solution = solve(beam).value();
  same(clapeyron, "two spans, the middle support settles 5 mm: moment",
       section(solution.members[0], l).moment, 3.0 * sample_EI * settlement / (l * l), kNm, "kNm");
}

// Lever rule and the deflection under a force P a^2 b^2 / (3 E I (a + b)) of a simple beam, for a
// needle on two props: P 20 kN, a 0.45 m, b 0.75 m, I 1250 cm4 (UC 152 x 152 x 23), E 210 kN/mm2.
TEST(NeedleOnTwoProps, ReactionsFollowTheLever) {
  Frame needle = level_beam(1200.0);
  needle.members[0].I = 1250e4;
  needle.supports = {pinned_support(0), roller_support(1)};
  const FrameSolution solution = solve(with_force(needle, 450.0)).value();
  same(statics, "needle on two props, 20 kN by the lever: nearer prop", solution.reactions[0].y,
       12500.0, kN, "kN");
  EXPECT_SAME(solution.reactions[1].y, 7500.0);
  same(statics, "needle on two props: moment",
       extremes(solution.members[0], &SectionState::moment).greatest.moment, 5.625e6, kNm, "kNm");
  verify({statics, "needle on two props: deflection under the wall", -0.241,
          section(solution.members[0], 450.0).deflection, 0.0005, "mm"});
}

}  // namespace
}  // namespace deadshore::solver
