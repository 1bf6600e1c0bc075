#include "solver/beam/load_over_beam.h"
#include "tests/solver/beam_samples.h"
#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace deadshore::solver {
namespace {

using testing::beam_job;
using testing::weightless_beam_job;

Job invented_wall_on_a_beam() {
  Job job = invented_wall();
  job.beam = beam_job().beam;
  job.beam->bearing = 150.0;
  return job;
}

/// Face of masonry above the soffit within x, by small squares, mm2.
double area_by_squares(const mesh::WallShape& wall, mesh::Interval x) {
  constexpr double side = 10.0;
  double area = 0.0;
  for (double at = x.from + 0.5 * side; at < x.to; at += side)
    for (double y = wall.cut.soffit + 0.5 * side; y < wall.height(); y += side)
      if (mesh::is_solid(wall, {at, y})) area += side * side;
  return area;
}

TEST(HandBeam, CarriesEverythingOverItAndNothingBesideIt) {
  const Job job = invented_wall_on_a_beam();
  const HandBeam hand = hand_beam(job);
  const mesh::Interval ends{450.0, 5550.0};
  const double masonry = area_by_squares(job.wall, ends) * 215.0 * 19e-6;
  const double weight = job.beam->weight() * ends.length();
  const double loads = (7.0 + 9.0) * ends.length() + 10000.0;
  EXPECT_NEAR(hand.load, masonry + weight + loads, 1e-6 * hand.load);
  EXPECT_NEAR(hand.dead, hand.load - 6.0 * ends.length() - 4000.0, 1e-6 * hand.load);
  EXPECT_NEAR(hand.reaction_left + hand.reaction_right, hand.load, 1e-9 * hand.load);
}

TEST(HandBeam, SeenFromTheOtherSideIsItsMirrorImage) {
  const Job job = invented_wall_on_a_beam();
  const HandBeam hand = hand_beam(job);
  const HandBeam image = hand_beam(mirrored(job));
  EXPECT_NE(hand.reaction_left, hand.reaction_right);
  EXPECT_NEAR(hand.reaction_left, image.reaction_right, 1e-9 * hand.load);
  EXPECT_NEAR(hand.largest_moment, image.largest_moment, 1e-9 * hand.largest_moment);
  EXPECT_NEAR(hand.deflection, image.deflection, 1e-9 * hand.deflection);
}

TEST(HandBeam, DiagramsAgreeWithEachOther) {
  const HandBeam hand = hand_beam(invented_wall_on_a_beam());
  double moment = 0.0;
  double shear = 0.0;
  double sag = 0.0;
  ASSERT_GT(hand.stations.size(), 100U);
  for (std::size_t i = 0; i < hand.stations.size(); ++i) {
    const BeamStation& here = hand.stations[i];
    moment = std::max(moment, here.moment);
    shear = std::max(shear, std::abs(here.shear));
    sag = std::max(sag, here.deflection);
    if (i == 0) continue;
    const BeamStation& before = hand.stations[i - 1];
    const double step = here.x - before.x;
    EXPECT_GT(step, 0.0);
    EXPECT_LT(step, 50.0);
    EXPECT_NEAR(here.moment - before.moment, 0.5 * step * (here.shear + before.shear),
                1e-3 * hand.largest_moment);
  }
  EXPECT_DOUBLE_EQ(moment, hand.largest_moment);
  EXPECT_DOUBLE_EQ(sag, hand.deflection);
  EXPECT_NEAR(shear, hand.largest_shear, 1e-9 * hand.largest_shear);
  EXPECT_NEAR(hand.stations.front().moment, 0.0, 1e-9 * hand.largest_moment);
  EXPECT_NEAR(hand.stations.back().moment, 0.0, 1e-6 * hand.largest_moment);
  EXPECT_DOUBLE_EQ(hand.stations.back().x - hand.stations.front().x, hand.span);
}

TEST(HandBeam, LeavesLoadsBesideItOnThePiers) {
  Job job = weightless_beam_job();
  job.line_loads = {{"left of it", 4000.0, false, {0.0, 1275.0}, 10.0, 0.0},
                    {"right of it", 4000.0, false, {4725.0, 6000.0}, 10.0, 0.0}};
  job.point_loads = {{"on the pier below the soffit", 1400.0, 2000.0, 100.0, 5000.0, 0.0}};
  EXPECT_NEAR(hand_beam(job).load, 0.0, 1e-9);
}

TEST(HandBeam, TakesThePartOfAPointLoadThatLiesOverIt) {
  Job job = weightless_beam_job();
  job.point_loads = {{"purlin", 1275.0, 4000.0, 200.0, 6000.0, 2000.0}};  // at its very end
  const HandBeam hand = hand_beam(job);
  EXPECT_NEAR(hand.load, 4000.0, 1e-6);
  EXPECT_NEAR(hand.dead, 3000.0, 1e-6);
  EXPECT_NEAR(hand.reaction_left, 4000.0, 1e-6);  // outside the span: straight into the bearing
  EXPECT_NEAR(hand.largest_moment, 0.0, 1.0);
}

TEST(HandBeam, CountsALintelInPlaceOfItsMasonry) {
  Job job = beam_job();
  job.wall.openings = {{"window", 2500.0, 3000.0, 1000.0, 1000.0, 0.0}};
  const double without = hand_beam(job).load;
  Lintel lintel;
  lintel.shape = {"lintel", 0, 150.0, 150.0};
  lintel.unit_weight = 25e-6;
  lintel.thickness = 215.0;
  job.wall.lintels = {lintel.shape};
  job.lintels = {lintel};
  EXPECT_NEAR(hand_beam(job).load - without, 1300.0 * 150.0 * 215.0 * (25e-6 - 19e-6), 1e-6);
}

// A load that follows the top is per mm measured level, so a slope does not add to it.
TEST(HandBeam, TakesARoofThatFollowsTheTop) {
  Job job = weightless_beam_job();
  job.wall.top = {{0.0, 4000.0}, {3000.0, 6000.0}, {6000.0, 4000.0}};
  job.line_loads = {{"roof", 0.0, true, {0.0, 6000.0}, 5.0, 1.0}};
  EXPECT_NEAR(hand_beam(job).load, 6.0 * 3450.0, 1e-6);
}

// Segment of a circle, R = (half^2 + rise^2) / (2 rise). Two Gauss points in each of 16 parts of
// h = 75 mm err by at most 16 h^5 f'''' / 4320 = 8 mm2, f'''' 9e-7 / mm3 at the springing.
TEST(HandBeam, LeavesOutTheHoleUnderAnArch) {
  Job job = weightless_beam_job();
  job.masonry.unit_weight = 1.0 / job.thickness;
  const double solid = hand_beam(job).load;
  job.wall.openings = {{"window", 2200.0, 3000.0, 1200.0, 900.0, 300.0}};
  const double R = (600.0 * 600.0 + 300.0 * 300.0) / 600.0;
  const double half_angle = std::asin(600.0 / R);
  const double segment = R * R * (half_angle - std::sin(half_angle) * std::cos(half_angle));
  EXPECT_NEAR(solid - hand_beam(job).load, 1200.0 * 600.0 + segment, 8.0);
}

// What stands over a window half over the beam's end rests on the window's jambs: half of it comes
// down at the inner jamb, further into the span than where it stands.
TEST(HandBeam, TakesAWindowAcrossItsEndAtTheJamb) {
  Job job = weightless_beam_job();
  const double left = 1387.5;
  job.wall.openings = {{"window", 475.0, 3000.0, 1600.0, 1000.0, 0.0}};
  job.line_loads = {{"roof", 5000.0, false, {0.0, 6000.0}, 20.0, 0.0}};
  const LoadOverBeam over = load_over_beam(job);
  ASSERT_EQ(over.jambs.size(), 1U);
  EXPECT_DOUBLE_EQ(over.jambs.front().x, 2075.0);
  EXPECT_NEAR(over.jambs.front().load.dead, 0.5 * 20.0 * 1600.0, 1e-6);
  const HandBeam hand = hand_beam(job);
  EXPECT_NEAR(hand.load, 16000.0 + 20.0 * (4725.0 - 2075.0), 1e-6);
  // Lever about the right bearing; the load over its outer half goes straight into it.
  const double span = 3225.0;
  const double even = 20.0 * (4612.5 - 2075.0);
  EXPECT_NEAR(hand.reaction_left,
              (16000.0 * (span - (2075.0 - left)) + even * 0.5 * (4612.5 - 2075.0)) / span, 1e-6);

  // The mirror image, at the other end.
  job.wall.openings.front().left = 6000.0 - 475.0 - 1600.0;
  EXPECT_NEAR(hand_beam(job).reaction_right, hand.reaction_left, 1e-6);
}

TEST(HandBeam, LeavesAWindowBelowTheSoffitInThePierAlone) {
  Job job = beam_job();
  const double without = hand_beam(job).load;
  job.wall.openings = {{"hatch", 500.0, 500.0, 900.0, 900.0, 0.0}};
  EXPECT_DOUBLE_EQ(hand_beam(job).load, without);
}

}  // namespace
}  // namespace deadshore::solver
