// Rectangular portals, Kleinlogel, Rahmenformeln (from memory, unverified against the book; the
// limits k -> 0 and k -> infinity agree with beams and propped cantilevers). k = I_beam / I_post *
// h / l; shortening of members is neglected, which the stout members of the samples nearly do.
// Moments here stretch the inner side where positive. Feet A (left) and D, corners B and C.

#include "tests/published/comparison.h"
#include "tests/solver/frame_samples.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source kleinlogel{Field::portals, Certainty::memory, "Kleinlogel, Rahmenformeln"};

constexpr double l = 5000.0;
constexpr double h = 3500.0;
constexpr double w = 15.0;      // N/mm
constexpr double P = 10000.0;   // N
constexpr double close = 2e-6;  // left by shortening

class KleinlogelPortals : public ::testing::TestWithParam<double> {
 protected:
  double k = GetParam();
};
INSTANTIATE_TEST_SUITE_P(StiffnessRatios, KleinlogelPortals, ::testing::Values(0.4, 1.0, 2.5));

struct Corners {
  double A, B, C, D;
};

// Walking up the left post, along the beam and down the right one, the inside is on the right.
Corners corner_moments(const FrameSolution& solution) {
  return {section(solution.members[0], 0.0).moment, section(solution.members[1], 0.0).moment,
          section(solution.members[1], l).moment, section(solution.members[2], h).moment};
}

/// `what` is the load, of a portal of stiffness ratio `k`.
void expect_moments(const char* what, double k, const FrameSolution& solution, const Corners& due) {
  const Corners found = corner_moments(solution);
  const double size = std::max({std::abs(due.A), std::abs(due.B), std::abs(due.C)});
  EXPECT_NEAR(found.A, due.A, close * size);
  verify({kleinlogel, fmt::format("portal, {}, k {}: moment at its left corner", what, k),
          due.B / 1e6, found.B / 1e6, close * size / 1e6, "kNm"});
  EXPECT_NEAR(found.C, due.C, close * size);
  EXPECT_NEAR(found.D, due.D, close * size);
}

TEST_P(KleinlogelPortals, PinnedUnderLoadOnTheBeam) {
  Frame frame = testing::portal(l, h, k, false);
  frame.line_loads = {uniform_load(frame, 1, 0.0, -w)};
  const FrameSolution solution = solve(frame).value();
  const double M = -w * l * l / (4.0 * (2.0 * k + 3.0));
  expect_moments("pinned, load on the beam", k, solution, {0.0, M, M, 0.0});
  EXPECT_NEAR(solution.reactions[0].x / (-M / h), 1.0, close);
}

TEST_P(KleinlogelPortals, PinnedUnderForceAtTheBeam) {
  Frame frame = testing::portal(l, h, k, false);
  frame.node_loads = {{1, P, 0.0, 0.0}};
  const FrameSolution solution = solve(frame).value();
  expect_moments("pinned, side force", k, solution, {0.0, P * h / 2.0, -P * h / 2.0, 0.0});
  EXPECT_NEAR(solution.reactions[1].y / (P * h / l), 1.0, close);
}

TEST_P(KleinlogelPortals, PinnedUnderLoadOnThePost) {
  Frame frame = testing::portal(l, h, k, false);
  frame.line_loads = {uniform_load(frame, 0, w, 0.0)};
  const double H = w * h * (5.0 * k + 6.0) / (8.0 * (2.0 * k + 3.0));
  const FrameSolution solution = solve(frame).value();
  EXPECT_NEAR(solution.reactions[1].x / -H, 1.0, close);
  expect_moments("pinned, load on the post", k, solution,
                 {0.0, w * h * h / 2.0 - H * h, -H * h, 0.0});
}

TEST_P(KleinlogelPortals, FixedUnderLoadOnTheBeam) {
  Frame frame = testing::portal(l, h, k, true);
  frame.line_loads = {uniform_load(frame, 1, 0.0, -w)};
  const double M = w * l * l / (12.0 * (k + 2.0));
  expect_moments("fixed, load on the beam", k, solve(frame).value(), {M, -2.0 * M, -2.0 * M, M});
}

TEST_P(KleinlogelPortals, FixedUnderForceAtTheBeam) {
  Frame frame = testing::portal(l, h, k, true);
  frame.node_loads = {{1, P, 0.0, 0.0}};
  const double foot = P * h / 2.0 * (3.0 * k + 1.0) / (6.0 * k + 1.0);
  const double corner = P * h / 2.0 * 3.0 * k / (6.0 * k + 1.0);
  expect_moments("fixed, side force", k, solve(frame).value(), {-foot, corner, -corner, foot});
}

TEST_P(KleinlogelPortals, FixedUnderLoadOnThePost) {
  Frame frame = testing::portal(l, h, k, true);
  frame.line_loads = {uniform_load(frame, 0, w, 0.0)};
  const double M = w * h * h / 4.0;
  const double even = 1.0 / (6.0 * (k + 2.0));
  const double odd = 1.0 / (6.0 * k + 1.0);
  expect_moments(
      "fixed, load on the post", k, solve(frame).value(),
      {M * (-(k + 3.0) * even - (4.0 * k + 1.0) * odd), M * (-k * even + 2.0 * k * odd),
       M * (-k * even - 2.0 * k * odd), M * (-(k + 3.0) * even + (4.0 * k + 1.0) * odd)});
}

}  // namespace
}  // namespace deadshore::solver
