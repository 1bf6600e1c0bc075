// Second order: S. P. Timoshenko & J. M. Gere, Theory of Elastic Stability, 2nd ed. (1961), ch. 1
// (closed forms; from memory, unverified against the book), and the two benchmark problems in the
// commentary to ANSI/AISC 360-16, C2.1 (from memory, unverified): W14x48, E 29000 ksi, 28 ft,
// axial, bending and shear deformation. One member each.

#include "solver/frame/imperfections.h"
#include "tests/published/comparison.h"
#include "tests/solver/frame_samples.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source timoshenko{Field::second_order, Certainty::memory,
                            "Timoshenko & Gere 1961, ch. 1"};
constexpr Source aisc{Field::second_order, Certainty::memory, "AISC 360-16, commentary C2.1"};

using testing::level_beam;
using testing::roller_support;
using testing::sample_EI;
using testing::second_order;

constexpr double L = 3000.0;
constexpr double exact = 1e-9;

/// Moments in N mm, equal but for rounding.
void same_moment(const std::string& what, double found, double due) {
  verify({timoshenko, what, due / 1e6, found / 1e6, exact * due / 1e6, "kNm"});
}

/// Compression at which sqrt(P / EI) * length is `u`.
double compression_for(double u, double length) {
  return u * u * sample_EI / (length * length);
}

class Cantilever : public ::testing::TestWithParam<double> {};
INSTANTIATE_TEST_SUITE_P(U, Cantilever, ::testing::Values(0.01, 0.3, 0.8, 1.2, 1.5));

TEST_P(Cantilever, GrowsByTanUOverU) {
  const double u = GetParam();
  const double H = 1000.0;
  Frame frame;
  frame.nodes = {{0.0, 0.0, {}}, {0.0, L, {}}};
  frame.members = {testing::sample_member(0, 1)};
  frame.supports = {fixed_support(0)};
  frame.node_loads = {{1, H, -compression_for(u, L), 0.0}};
  const FrameSolution solution = second_order(frame);
  same_moment(fmt::format("cantilever, side force, u {}: moment", u), solution.reactions[0].moment,
              H * L * std::tan(u) / u);
  EXPECT_NEAR(solution.nodes[1].x / (H * L * L * L / sample_EI * (std::tan(u) - u) / (u * u * u)),
              1.0, 1e-7);  // the closed form cancels at small u
}

class SimpleBeam : public ::testing::TestWithParam<double> {
 protected:
  SimpleBeam() : frame(level_beam(L)) { frame.supports = {pinned_support(0), roller_support(1)}; }

  void compress(double u) { frame.node_loads = {{1, -compression_for(2.0 * u, L), 0.0, 0.0}}; }

  Frame frame;
};
INSTANTIATE_TEST_SUITE_P(U, SimpleBeam, ::testing::Values(0.4, 1.0, 1.4));

TEST_P(SimpleBeam, UnderUniformLoadAndCompression) {
  const double u = GetParam();
  const double w = 5.0;
  compress(u);
  frame.line_loads = {uniform_load(frame, 0, 0.0, -w)};
  const MemberSolution beam = second_order(frame).members[0];
  same_moment(fmt::format("simple beam, even load, u {}: moment", u),
              extremes(beam, &SectionState::moment).greatest.moment,
              w * L * L / 8.0 * 2.0 * (1.0 - std::cos(u)) / (u * u * std::cos(u)));
  const double sag = 5.0 * w * std::pow(L, 4) / (384.0 * sample_EI) *
                     (12.0 * (2.0 / std::cos(u) - 2.0 - u * u)) / (5.0 * std::pow(u, 4));
  verify({timoshenko, fmt::format("simple beam, even load, u {}: deflection", u), sag,
          -section(beam, L / 2.0).deflection, exact * sag, "mm"});
}

TEST_P(SimpleBeam, UnderCentralForceAndCompression) {
  const double u = GetParam();
  const double Q = 8000.0;
  compress(u);
  frame.point_loads = {{0, L / 2.0, 0.0, -Q, 0.0}};
  const MemberSolution beam = second_order(frame).members[0];
  same_moment(fmt::format("simple beam, central force, u {}: moment", u),
              section(beam, L / 2.0).moment, Q * L / 4.0 * std::tan(u) / u);
}

TEST_P(SimpleBeam, EccentricCompressionFollowsTheSecant) {
  const double u = GetParam();
  const double e = 25.0;
  const double P = compression_for(2.0 * u, L);
  frame.node_loads = {eccentric_load(0, P, 0.0, 0.0, e), eccentric_load(1, -P, 0.0, 0.0, e)};
  const MemberSolution beam = second_order(frame).members[0];
  same_moment(fmt::format("eccentric compression, secant, u {}: moment", u),
              extremes(beam, &SectionState::moment).greatest.moment, P * e / std::cos(u));
}

TEST_P(SimpleBeam, TensionRelievesUniformLoad) {
  const double u = GetParam();
  const double w = 5.0;
  frame.node_loads = {{1, compression_for(2.0 * u, L), 0.0, 0.0}};
  frame.line_loads = {uniform_load(frame, 0, 0.0, -w)};
  const MemberSolution beam = second_order(frame).members[0];
  same_moment(fmt::format("simple beam, even load and tension, u {}: moment", u),
              section(beam, L / 2.0).moment,
              w * L * L / 8.0 * 2.0 * (std::cosh(u) - 1.0) / (u * u * std::cosh(u)));
}

// A bow of half sine form e0 grows by 1 / (1 - P / P_E): ch. 1, art. 12.
TEST(BowedColumn, MomentGrowsByTheEulerRatio) {
  const double e0 = 10.0;
  Frame frame = level_beam(L);
  frame.members[0].A = 1e7;  // no shortening, so no change of bow
  frame.supports = {pinned_support(0), roller_support(1)};
  const double euler = std::numbers::pi * std::numbers::pi * sample_EI / (L * L);
  const double P = 0.4 * euler;
  frame.node_loads = {{1, -P, 0.0, 0.0}};
  const Frame bowed = with_bow(frame, 0, e0, 32);
  const FrameSolution solution = second_order(bowed);
  double largest = 0.0;
  for (const MemberSolution& member : solution.members)
    largest = std::max(largest, std::abs(extremes(member, &SectionState::moment).least.moment));
  const double due = P * e0 / (1.0 - 0.4);
  verify({timoshenko, "bowed column at 0.4 of its Euler load: moment", due / 1e6, largest / 1e6,
          0.002 * due / 1e6, "kNm"});
}

// AISC 360-16 commentary, kip and inch. I 484 in4, A 14.1 in2, depth x web 13.8 x 0.340 in, G 11200
// ksi.
constexpr double foot = 12.0;

Frame aisc_beam() {
  Frame frame;
  frame.nodes = {{0.0, 0.0, {}}, {28.0 * foot, 0.0, {}}};
  FrameMember member{0, 1, 29000.0, 14.1, 484.0, 11200.0 * 13.8 * 0.340, false, false, 0.0, {}};
  frame.members = {member};
  return frame;
}

struct AiscRow {
  double axial, moment, deflection;
};

TEST(AiscBenchmarks, SimpleBeamOfCaseOne) {
  for (const AiscRow row : {AiscRow{0.0, 235.0, 0.202}, AiscRow{150.0, 270.0, 0.230},
                            AiscRow{300.0, 316.0, 0.269}, AiscRow{450.0, 380.0, 0.322}}) {
    Frame frame = aisc_beam();
    frame.supports = {pinned_support(0), roller_support(1)};
    frame.line_loads = {uniform_load(frame, 0, 0.0, -0.200 / foot)};
    frame.node_loads = {{1, -row.axial, 0.0, 0.0}};
    const SectionState middle = section(second_order(frame).members[0], 14.0 * foot);
    const std::string at = fmt::format("simple beam of case 1, {} kip: ", row.axial);
    verify({aisc, at + "moment", row.moment, middle.moment, 0.03 * row.moment, "kip in"});
    verify(
        {aisc, at + "deflection", row.deflection, -middle.deflection, 0.05 * row.deflection, "in"});
  }
}

TEST(AiscBenchmarks, CantileverOfCaseTwo) {
  for (const AiscRow row : {AiscRow{0.0, 336.0, 0.907}, AiscRow{100.0, 470.0, 1.34},
                            AiscRow{150.0, 601.0, 1.77}, AiscRow{200.0, 856.0, 2.60}}) {
    Frame frame = aisc_beam();
    frame.supports = {fixed_support(0)};
    frame.node_loads = {{1, -row.axial, -1.0, 0.0}};
    const FrameSolution solution = second_order(frame);
    const std::string at = fmt::format("cantilever of case 2, {} kip: ", row.axial);
    verify({aisc, at + "moment", row.moment, solution.reactions[0].moment, 0.03 * row.moment,
            "kip in"});
    verify({aisc, at + "deflection", row.deflection, -solution.nodes[1].y, 0.05 * row.deflection,
            "in"});
  }
}

}  // namespace
}  // namespace deadshore::solver
