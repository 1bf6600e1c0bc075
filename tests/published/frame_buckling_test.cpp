// Buckling loads: S. P. Timoshenko & J. M. Gere, Theory of Elastic Stability, 2nd ed. (1961):
// columns with four end conditions (2.1), shear-flexible columns (2.17), columns under their own
// weight (2.12: 7.837 EI/L^2), portals that sway (2.4; the roots are recomputed from the equations
// beside them). From memory, unverified against the book.

#include "solver/frame/frame_buckling.h"

#include "tests/published/comparison.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source gere{Field::buckling, Certainty::memory, "Timoshenko & Gere 1961, ch. 2"};
constexpr Source rates{Field::buckling, Certainty::derived, "Theory of the element: cubic shapes"};
constexpr Source statics{Field::buckling, Certainty::derived, "Statics"};

using testing::sample_EI;

constexpr double L = 3000.0;
constexpr double pi2 = std::numbers::pi * std::numbers::pi;
constexpr double none = std::numeric_limits<double>::infinity();

/// An upright column under 1 N: its foot is node 0, its head node 1.
Frame column(const FrameSupport& foot, const FrameSupport& head) {
  Frame frame;
  frame.nodes = {{0.0, 0.0, "foot"}, {0.0, L, "head"}};
  frame.members = {testing::sample_member(0, 1)};
  frame.supports = {foot, head};
  frame.node_loads = {{1, 0.0, -1.0, 0.0}};
  return frame;
}

FrameSupport guided_pin() {
  return {1, 0.0, std::nullopt, std::nullopt};
}
FrameSupport guided_clamp() {
  return {1, 0.0, std::nullopt, 0.0};
}
FrameSupport unheld() {
  return {1, std::nullopt, std::nullopt, std::nullopt};
}

double lowest(const Frame& frame, int parts = 8) {
  const auto modes = buckling(frame, {.parts = parts});
  return modes.empty() ? none : modes[0].load_factor;
}

struct EndCondition {
  const char* name;
  FrameSupport foot;
  FrameSupport head;
  double factor;  ///< P L^2 / EI
};

class EulerColumns : public ::testing::TestWithParam<EndCondition> {};
INSTANTIATE_TEST_SUITE_P(
    EndConditions, EulerColumns,
    ::testing::Values(EndCondition{"pinned", pinned_support(0), guided_pin(), pi2},
                      EndCondition{"free", fixed_support(0), unheld(), pi2 / 4.0},
                      EndCondition{"propped", fixed_support(0), guided_pin(), 20.190729},
                      EndCondition{"clamped", fixed_support(0), guided_clamp(), 4.0 * pi2}),
    [](const auto& of) { return of.param.name; });

TEST_P(EulerColumns, BuckleAtTheirEulerLoad) {
  const auto& [name, foot, head, factor] = GetParam();
  const double found = lowest(column(foot, head)) / (sample_EI / (L * L));
  verify({gere, std::string("column, ") + name + ", 8 parts: P L2 / EI", factor, found,
          0.001 * factor, "-"});
}

TEST_P(EulerColumns, AreUnstableInSecondOrderJustPastThatLoad) {
  const auto& [name, foot, head, factor] = GetParam();
  Frame frame = column(foot, head);
  frame.node_loads[0].y = -0.9999 * factor * sample_EI / (L * L);
  EXPECT_TRUE(solve(frame, {.order = FrameOrder::second}).report.converged);
  frame.node_loads[0].y *= 1.0002;
  const FrameResult past = solve(frame, {.order = FrameOrder::second});
  EXPECT_TRUE(past.report.unstable);
  EXPECT_FALSE(past.solution.has_value());
}

TEST(EulerColumn, ErrorFallsWithTheFourthPowerOfTheParts) {
  const Frame frame = column(pinned_support(0), guided_pin());
  const double due = pi2 * sample_EI / (L * L);
  const double coarse = lowest(frame, 4) / due - 1.0;
  const double fine = lowest(frame, 8) / due - 1.0;
  EXPECT_GT(fine, 0.0);
  verify({rates, "pinned column: error of the load falls by", 4.0, std::log2(coarse / fine), 0.05,
          "order"});
}

TEST(EulerColumn, PinnedMembersBuckleLikePinnedSupports) {
  Frame frame = column(fixed_support(0), guided_clamp());
  frame.members[0].pin_from = frame.members[0].pin_to = true;
  EXPECT_NEAR(lowest(frame) / (pi2 * sample_EI / (L * L)), 1.0, 0.001);
}

TEST(EulerColumn, HigherModesFollowTheSquares) {
  const auto modes = buckling(column(pinned_support(0), guided_pin()), {.parts = 24, .modes = 3});
  ASSERT_EQ(modes.size(), 3U);
  EXPECT_NEAR(modes[1].load_factor / modes[0].load_factor, 4.0, 0.001);
  EXPECT_NEAR(modes[2].load_factor / modes[0].load_factor, 9.0, 0.005);
}

TEST(EulerColumn, ModeOfThePinnedColumnIsAHalfSineWave) {
  const auto modes = buckling(column(pinned_support(0), guided_pin()));
  const BucklingMode& mode = modes.at(0);
  const double sign = mode.shape[5].x > 0.0 ? 1.0 : -1.0;
  for (std::size_t i = 0; i < mode.shape.size(); ++i) {
    EXPECT_NEAR(sign * mode.shape[i].x, std::sin(std::numbers::pi * mode.divided.nodes[i].y / L),
                1e-4);
  }
}

TEST(EulerColumn, PulledDoesNotBuckle) {
  Frame frame = column(pinned_support(0), guided_pin());
  frame.node_loads[0].y = 1.0;
  EXPECT_TRUE(buckling(frame).empty());
}

TEST(EngesserColumn, ShearFlexibilityLowersTheLoad) {
  Frame frame = column(pinned_support(0), guided_pin());
  const double euler = pi2 * sample_EI / (L * L);
  frame.members[0].shear_stiffness = 3.0 * euler;
  const double due = euler / (1.0 + 1.0 / 3.0);
  verify({rates, "column that shears: error of the load falls by", 2.0,
          std::log2((lowest(frame, 8) - due) / (lowest(frame, 16) - due)), 0.05, "order"});
  verify({gere, "column that shears (Engesser), 16 parts: load", due / 1e3, lowest(frame, 16) / 1e3,
          0.001 * due / 1e3, "kN"});
  frame.node_loads[0].y = -0.9999 * due;
  EXPECT_TRUE(solve(frame, {.order = FrameOrder::second}).report.converged);
  frame.node_loads[0].y = -1.0001 * due;
  EXPECT_TRUE(solve(frame, {.order = FrameOrder::second}).report.unstable);
}

TEST(HeavyColumn, BucklesUnderItsOwnWeight) {
  Frame frame = column(fixed_support(0), unheld());
  frame.node_loads.clear();
  frame.members[0].weight = 1.0 / L;
  verify({gere, "cantilever under its own weight: q L3 / EI", 7.837,
          lowest(frame) / (sample_EI / (L * L)), 0.001 * 7.837, "-"});
}

TEST(PinnedColumnOnAnElasticHead, LeansOverAtKTimesL) {
  Frame frame = column(pinned_support(0), unheld());
  const double k = 10.0;
  frame.springs = {{1, ground, 1.0, 0.0, k, false, 0.0}};
  verify({statics, "pinned column on an elastic head: load", k * L / 1e3, lowest(frame) / 1e3,
          1e-6 * k * L / 1e3, "kN"});
}

// Both posts loaded, beam and posts of equal I / L. With u = h sqrt(P / EI): u tan u = 6 for pinned
// feet (P = 1.8213 EI/h^2), u / tan u = -6 for fixed ones (7.3792).
class SwayPortals : public ::testing::TestWithParam<bool> {};
INSTANTIATE_TEST_SUITE_P(Feet, SwayPortals, ::testing::Bool());

TEST_P(SwayPortals, BuckleSideways) {
  const bool fixed = GetParam();
  const double h = 3500.0;
  Frame frame = testing::portal(h, h, 1.0, fixed);
  frame.node_loads = {{1, 0.0, -1.0, 0.0}, {2, 0.0, -1.0, 0.0}};
  const double due = fixed ? 7.3792 : 1.8213;
  verify({gere,
          fixed ? "portal that sways, fixed feet: P h2 / EI"
                : "portal that sways, pinned feet: P h2 / EI",
          due, lowest(frame) / (sample_EI / (h * h)), 1e-4 * due, "-"});
  const BucklingMode mode = buckling(frame).at(0);
  EXPECT_NEAR(mode.shape[1].x, mode.shape[2].x, 1e-3);
  EXPECT_NEAR(std::abs(mode.shape[1].x), 1.0, 1e-3);
}

}  // namespace
}  // namespace deadshore::solver
