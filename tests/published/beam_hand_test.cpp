// Simple beams: W. C. Young & R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed.
// (2002), table 8.1, cases 1e and 2e (from memory, unverified against the book; also in any text on
// strength of materials). Shear adds M / (G A_v) at the middle of a symmetrical load. Accepted:
// rounding, but three digits for the tabled deflection under a ramp.

#include "solver/beam/beam_checks.h"
#include "tests/published/comparison.h"
#include "tests/solver/beam_samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source roark{Field::permanent_beam, Certainty::memory, "Roark, 7th ed., table 8.1"};
constexpr Source statics{Field::permanent_beam, Certainty::derived, "Statics"};

using testing::weightless_beam_job;

constexpr double L = 3225.0;     // 3.0 m and half a bearing of 225 mm at each end
constexpr double left = 1387.5;  // middle of the left bearing
constexpr double soffit = 2400.0;

#define EXPECT_SAME(found, due) EXPECT_NEAR((found) / (due), 1.0, 1e-9)

void same_moment(const Source& source, const char* what, double found, double due) {
  verify({source, what, due / 1e6, found / 1e6, 1e-9 * due / 1e6, "kNm"});
}

double EI(const Job& job) {
  return job.beam->bending_stiffness();
}
double GA(const Job& job) {
  return job.beam->shear_stiffness();
}

/// Masonry of 1 N/mm2 of wall face over the beam, up to the given outline.
Job under_masonry(std::vector<mesh::Point> top) {
  Job job = weightless_beam_job();
  job.wall.top = std::move(top);
  job.masonry.unit_weight = 1.0 / job.thickness;
  return job;
}

TEST(HandBeamRoark, UnderAnEvenLoad) {
  Job job = weightless_beam_job();
  constexpr double w = 30.0;
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, w, 0.0}};
  const HandBeam hand = hand_beam(job);
  EXPECT_SAME(hand.span, L);
  same_moment(roark, "beam under an even load: moment", hand.largest_moment, w * L * L / 8.0);
  EXPECT_SAME(hand.largest_shear, w * L / 2.0);
  EXPECT_SAME(hand.deflection,
              5.0 * w * std::pow(L, 4) / (384.0 * EI(job)) + w * L * L / (8.0 * GA(job)));
  EXPECT_SAME(hand.reaction_left, w * 3450.0 / 2.0);  // with what lies over the outer half bearings
}

TEST(HandBeamRoark, UnderAGable) {
  constexpr double w = 2000.0;  // N/mm, 2 m of masonry at 1 N/mm2
  const Job job = under_masonry({{0.0, soffit},
                                 {left, soffit},
                                 {left + 0.5 * L, soffit + w},
                                 {left + L, soffit},
                                 {6000.0, soffit}});
  const HandBeam hand = hand_beam(job);
  EXPECT_SAME(hand.load, w * L / 2.0);
  same_moment(roark, "beam under a gable: moment", hand.largest_moment, w * L * L / 12.0);
  EXPECT_SAME(hand.largest_shear, w * L / 4.0);
  EXPECT_SAME(hand.deflection,
              w * std::pow(L, 4) / (120.0 * EI(job)) + w * L * L / (12.0 * GA(job)));
}

TEST(HandBeamRoark, UnderARamp) {
  constexpr double w = 2000.0;
  Job job = under_masonry({{0.0, soffit},
                           {left, soffit},
                           {left + L, soffit + w},
                           {left + L, soffit},
                           {6000.0, soffit}});
  job.beam->member.properties.A_v = 1e12;  // the table leaves shear out
  const HandBeam hand = hand_beam(job);
  EXPECT_SAME(hand.reaction_left, w * L / 6.0);
  EXPECT_SAME(hand.reaction_right, w * L / 3.0);
  same_moment(roark, "beam under a ramp: moment", hand.largest_moment,
              w * L * L / (9.0 * std::numbers::sqrt3));
  verify({roark, "beam under a ramp: deflection over w L4 / EI", 0.00652,
          hand.deflection / (w * std::pow(L, 4) / EI(job)), 0.000005, "-"});
}

// A trapezium is an even load and a ramp: at the middle the moments add, w1 L^2/8 + w2 L^2/16.
TEST(HandBeamRoark, UnderATrapezium) {
  constexpr double w1 = 500.0;
  constexpr double w2 = 1500.0;
  const Job job = under_masonry({{0.0, soffit + w1},
                                 {left, soffit + w1},
                                 {left + L, soffit + w1 + w2},
                                 {left + L, soffit},
                                 {6000.0, soffit}});
  const HandBeam hand = hand_beam(job);
  const auto middle = std::min_element(hand.stations.begin(), hand.stations.end(),
                                       [](const BeamStation& a, const BeamStation& b) {
                                         return std::abs(a.x - 3000.0) < std::abs(b.x - 3000.0);
                                       });
  EXPECT_NEAR(middle->x, 3000.0, 1e-6);
  same_moment(roark, "beam under a trapezium: moment at the middle", middle->moment,
              w1 * L * L / 8.0 + w2 * L * L / 16.0);
  EXPECT_SAME(middle->packing, w1 + 0.5 * w2);
  EXPECT_SAME(hand.largest_shear, w1 * L / 2.0 + w2 * L / 3.0);
}

// P over a bearing c: P (L/4 - c/8) in the middle. Elsewhere, the lever: P a b / L less P c / 8
// where the shear is zero within the bearing, at c b / L from its left edge.
TEST(HandBeamRoark, UnderAPointLoad) {
  constexpr double P = 40000.0;
  constexpr double c = 200.0;
  Job job = weightless_beam_job();
  job.point_loads = {{"purlin", 3000.0, 4000.0, c, P, 0.0}};
  same_moment(statics, "beam under a central point load on its bearing: moment",
              hand_beam(job).largest_moment, P * (L / 4.0 - c / 8.0));

  const double a = 1000.0;
  const double b = L - a;
  job.point_loads.front().x = left + a;
  const HandBeam hand = hand_beam(job);
  EXPECT_SAME(hand.reaction_left, P * b / L);
  EXPECT_SAME(hand.reaction_right, P * a / L);
  EXPECT_SAME(hand.largest_moment, P * b / L * (a - 0.5 * c) + 0.5 * P * c * (b / L) * (b / L));
}

}  // namespace
}  // namespace deadshore::solver
