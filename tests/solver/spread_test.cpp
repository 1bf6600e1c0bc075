// The 45-degree hand method against sums worked by hand (written out beside each), against an
// independent walk of sampled points down the wall, and against its own mirror image. The rules are
// common practice, no source.
#include "solver/spread/spread.h"

#include "tests/some.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <utility>

namespace deadshore::solver {
namespace {

using mesh::Point;

// 20 kN/m3 x 215 mm = 4.3 kN/m2 = 4.3e-3 N/mm2 of face.
constexpr double weight_per_area = 4.3e-3;
constexpr double exactly = 1e-6;  // N; the sums run to some 1e5 N

// A level wall with a cut; mm.
Job wall_with_cut(double length, double height, mesh::Cut cut) {
  Job job;
  job.wall.length = length;
  job.wall.top = {{0.0, height}, {length, height}};
  job.wall.cut = cut;
  job.thickness = 215.0;
  job.masonry.unit_weight = 20e-6;
  return job;
}

Needle needle_at(const std::string& name, double x, double bearing_width = 200.0) {
  Needle needle;
  needle.name = name;
  needle.x = x;
  needle.bearing_width = bearing_width;
  needle.stiffness = 20e3;
  return needle;
}

// 4 m x 3 m, cut from 1 m to 3 m up to 1 m, one 200 mm needle in the middle.
Job one_needle_wall() {
  Job job = wall_with_cut(4000.0, 3000.0, {1000.0, 3000.0, 1000.0});
  job.needles = {needle_at("N1", 2000.0)};
  return job;
}

// The same, without weight, to see loads alone.
Job weightless_one_needle_wall() {
  Job job = one_needle_wall();
  job.masonry.unit_weight = 0.0;
  return job;
}

// One with everything: gable, windows over needles and over a jamb, lintel, arch, uneven needles.
Job mixed_wall() {
  Job job = wall_with_cut(6000.0, 5000.0, {900.0, 4700.0, 2200.0});
  job.wall.top = {
      {0.0, 4200.0}, {2600.0, 6300.0}, {4800.0, 4900.0}, {4800.0, 5300.0}, {6000.0, 5300.0}};
  job.wall.openings = {{"low", 1300.0, 2900.0, 900.0, 800.0, 0.0},
                       {"high", 1700.0, 4300.0, 700.0, 600.0, 150.0},
                       {"side", 4300.0, 3100.0, 800.0, 1000.0, 0.0},
                       {"door", 5300.0, 0.0, 500.0, 1900.0, 250.0},
                       {"gone", 2500.0, 400.0, 700.0, 1500.0, 0.0}};
  job.wall.lintels = {{"beam", 0, 200.0, 150.0}};
  job.lintels = {{job.wall.lintels[0], "concrete", 25e-6, 25000.0, 0.2, 100.0}};
  job.line_loads = {{"floor", 4200.0, false, {200.0, 5700.0}, 6.0, 3.0},
                    {"roof", 0.0, true, {0.0, 6000.0}, 2.0, 1.5}};
  job.point_loads = {{"purlin", 3700.0, 4600.0, 200.0, 5000.0, 2000.0},
                     {"tie", 2050.0, 5000.0, 150.0, 900.0, 0.0}};
  job.needles = {needle_at("N1", 1200.0, 150.0), needle_at("N2", 2500.0),
                 needle_at("N3", 3300.0, 150.0), needle_at("N4", 4400.0)};
  return job;
}

const SpreadItem* item(const SpreadSum& sum, const std::string& name, bool over_opening = false) {
  for (const SpreadItem& candidate : sum.items)
    if (candidate.name == name && candidate.over_opening == over_opening && !candidate.wedge)
      return &candidate;
  return nullptr;
}

double load_of(const SpreadSum& sum, const std::string& name, bool over_opening = false) {
  const SpreadItem* found = item(sum, name, over_opening);
  return found ? found->load : 0.0;
}

double sum_of_parts(const SpreadResult& result) {
  return result.needle_total() + result.left_pier.total + result.right_pier.total;
}

// What comes to a support from under the 45-degree lines, by the lever.
double wedge_of(const SpreadSum& sum, const std::string& name) {
  for (const SpreadItem& candidate : sum.items)
    if (candidate.name == name && candidate.wedge) return candidate.load;
  return 0.0;
}

TEST(Spread, OneNeedleCarriesTheWallAboveItsFortyFiveDegreeLines) {
  const SpreadResult result = spread_at_45_degrees(one_needle_wall());
  // Over the cut 2 m x 2 m less two triangles of 0.9 m x 0.9 m / 2: 3.19 m2; a pier 1 m x 3 m. A
  // triangle's middle is 0.3 m from the jamb, 1 m from the needle: 0.3 of it to the needle.
  EXPECT_NEAR(load_of(result.needles[0], "masonry"), 3.19e6 * weight_per_area, exactly);
  EXPECT_NEAR(wedge_of(result.needles[0], "masonry"), 0.3 * 0.81e6 * weight_per_area, exactly);
  EXPECT_NEAR(wedge_of(result.left_pier, "masonry"), 0.7 * 0.405e6 * weight_per_area, exactly);
  EXPECT_NEAR(result.left_pier.total, (3.0e6 + 0.7 * 0.405e6) * weight_per_area, exactly);
  EXPECT_NEAR(result.right_pier.total, result.left_pier.total, exactly);
  EXPECT_NEAR(result.load_total, 10.0e6 * weight_per_area, exactly);
  ASSERT_EQ(result.needles[0].items.size(), 2U);
  EXPECT_NEAR(result.needles[0].items[0].area, 3.19e6, 1e-3);
  EXPECT_NEAR(result.needles[0].items[0].share, 0.319, 1e-12);
}

TEST(Spread, WedgeBetweenTwoNeedlesGoesToBothByTheLever) {
  // Needles 0.9 m apart with 150 mm bearings at the very ends of the cut: the wedge between weighs
  // gamma t (s - b)^2 / 4 = 4.3 x 0.75^2 / 4 = 0.6047 kN.
  Job job = wall_with_cut(3000.0, 3000.0, {1000.0, 2050.0, 1000.0});
  job.needles = {needle_at("N1", 1075.0, 150.0), needle_at("N2", 1975.0, 150.0)};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(wedge_of(result.needles[0], "masonry"), 0.5 * 604.6875, exactly);
  EXPECT_NEAR(result.needles[0].total, 0.5 * 1.05 * 2.0 * 4300.0, exactly);
  EXPECT_NEAR(result.needles[1].total, result.needles[0].total, exactly);
}

TEST(Spread, NeighboursOfUnequalBearingMeetMidwayBetweenTheirBearings) {
  // Bearings 1.0-1.4 m and 2.4-2.5 m: halved at 1.9 m; N3's 3.4-3.5 m: halved at 2.95 m. Soffit 1
  // m, top 3 m. N1: 0.9 m x 2 m - 0.5^2/2; N2: 1.05 x 2 - 0.5^2/2 - 0.45^2/2; N3: 0.55 x 2 -
  // 0.45^2/2.
  Job job = wall_with_cut(5000.0, 3000.0, {1000.0, 3500.0, 1000.0});
  job.needles = {needle_at("N3", 3450.0, 100.0), needle_at("N1", 1200.0, 400.0),
                 needle_at("N2", 2450.0, 100.0)};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_EQ(result.needles[0].support, support_of(NeedleId{0}));
  const auto straight = [&](std::size_t i) { return load_of(result.needles[i], "masonry"); };
  EXPECT_NEAR(straight(1), (1.8e6 - 0.125e6) * weight_per_area, exactly);
  EXPECT_NEAR(straight(2), (2.1e6 - 0.125e6 - 0.10125e6) * weight_per_area, exactly);
  EXPECT_NEAR(straight(0), (1.1e6 - 0.10125e6) * weight_per_area, exactly);
}

TEST(Spread, LowWallCutsTheSpreadOffAtItsTop) {
  // Top only 0.5 m over the soffit: the line leaves the wall 0.5 m beyond the bearing, and what is
  // further off is shared by the lever: 0.2 x 0.5 + 2 x 0.5^2/2 = 0.35 m2 inside. Outside it on
  // each side 0.9 x 0.5 with its middle at 0.45 m from the jamb, less 0.5^2/2 at 0.9 m - 0.5/3 m.
  Job job = one_needle_wall();
  job.wall.top = {{0.0, 1500.0}, {4000.0, 1500.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "masonry"), 0.35e6 * weight_per_area, exactly);
  const double lever = 0.45e6 * 0.45 - 0.125e6 * (0.9 - 0.5 / 3.0);
  EXPECT_NEAR(wedge_of(result.needles[0], "masonry"), 2.0 * lever * weight_per_area, exactly);
}

TEST(Spread, CutToTheWallsEndLeavesNoPierThere) {
  Job job = one_needle_wall();
  job.wall.cut = {1000.0, 4000.0, 1000.0};
  job.left_end = WallEnd::held;
  const SpreadResult result = spread_at_45_degrees(job);
  // 3 m x 2 m, less what the pier's jamb has of 0.9^2/2: 0.7. Beyond the needle nothing else holds.
  EXPECT_NEAR(result.needles[0].total, (6.0e6 - 0.7 * 0.405e6) * weight_per_area, exactly);
  EXPECT_EQ(result.right_pier.total, 0.0);
  EXPECT_TRUE(result.right_pier.items.empty());
  EXPECT_NEAR(sum_of_parts(result), result.load_total, exactly);
}

TEST(Spread, WithoutNeedlesAllOverTheCutGoesToItsJambs) {
  Job job = one_needle_wall();
  job.needles.clear();
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_TRUE(result.needles.empty());
  EXPECT_NEAR(wedge_of(result.left_pier, "masonry"), 2.0e6 * weight_per_area, exactly);
  EXPECT_NEAR(result.right_pier.total, 5.0e6 * weight_per_area, exactly);
}

TEST(Spread, PointLoadInsideTheSpreadGoesToTheNeedle) {
  Job job = weightless_one_needle_wall();
  job.point_loads = {{"purlin", 2500.0, 2000.0, 200.0, 6500.0, 4000.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "purlin"), 10500.0, exactly);
  EXPECT_NEAR(result.load_total, 10500.0, exactly);
}

TEST(Spread, PointLoadUnderTheLineGoesToNeedleAndJambByTheLever) {
  Job job = weightless_one_needle_wall();
  job.point_loads = {{"joist", 2800.0, 1200.0, 100.0, 3000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  // 0.8 m from the needle, 0.2 m from the jamb.
  EXPECT_NEAR(result.needles[0].total, 0.2 * 3000.0, exactly);
  EXPECT_NEAR(wedge_of(result.right_pier, "joist"), 0.8 * 3000.0, exactly);
}

TEST(Spread, PointLoadAcrossTheLineIsSharedByLength) {
  // At level 1.5 m the line is at x = 2.6 m; the bearing runs from 2.55 m to 2.75 m.
  Job job = weightless_one_needle_wall();
  job.point_loads = {{"joist", 2650.0, 1500.0, 200.0, 4000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "joist"), 1000.0, exactly);
  EXPECT_NEAR(item(result.needles[0], "joist")->share, 0.25, 1e-9);
  // The other 3000 N lie about x = 2.675 m.
  EXPECT_NEAR(wedge_of(result.right_pier, "joist"), 0.675 * 3000.0, exactly);
  EXPECT_NEAR(wedge_of(result.needles[0], "joist"), 0.325 * 3000.0, exactly);
}

TEST(Spread, LineLoadIsSharedByTheLengthsItsLevelIsCutInto) {
  // 10 N/mm over the whole wall at 1.4 m: spread 0.2 + 2 x 0.4 m; each pier 1 m; the rest 1 m.
  Job job = weightless_one_needle_wall();
  job.line_loads = {{"floor", 1400.0, false, {0.0, 4000.0}, 7.0, 3.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "floor"), 10000.0, exactly);
  EXPECT_NEAR(load_of(result.left_pier, "floor"), 10000.0, exactly);
  EXPECT_NEAR(load_of(result.right_pier, "floor"), 10000.0, exactly);
  // The rest is 0.5 m beside each jamb: a quarter of it to the needle.
  EXPECT_NEAR(wedge_of(result.needles[0], "floor"), 2500.0, exactly);
  EXPECT_NEAR(wedge_of(result.left_pier, "floor"), 3750.0, exactly);
}

TEST(Spread, LoweringAFloorTakesNothingOffTheSupportsTogether) {
  // A floor just over the soffit is all under the lines; what leaves the spread comes back by
  // lever.
  Job job = weightless_one_needle_wall();
  for (const double level : {1000.0, 1010.0, 1400.0, 2500.0}) {
    job.line_loads = {{"floor", level, false, {1000.0, 3000.0}, 7.0, 3.0}};
    const SpreadResult result = spread_at_45_degrees(job);
    EXPECT_NEAR(sum_of_parts(result), 20000.0, exactly) << level;
    EXPECT_EQ(result.on_nothing(), 0.0);
    EXPECT_GE(result.needles[0].total, 0.5 * 20000.0 - exactly) << level;
  }
}

TEST(Spread, WideWallOnTwoNeedlesLeavesNothingOver) {
  // 5.6 m wall, 3.6 m cut, needles 1.9 m apart; a partition over mid-span, under the lines between
  // them: half to each. By the line of thought of common practice the two share all over the cut.
  Job job = wall_with_cut(5600.0, 5000.0, {1000.0, 4600.0, 2300.0});
  job.needles = {needle_at("N1", 1850.0), needle_at("N2", 3750.0)};
  job.point_loads = {{"partition", 2800.0, 2600.0, 200.0, 12000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(wedge_of(result.needles[0], "partition"), 6000.0, exactly);
  EXPECT_NEAR(wedge_of(result.needles[1], "partition"), 6000.0, exactly);
  EXPECT_NEAR(sum_of_parts(result), result.load_total, exactly);
}

TEST(Spread, LoadCloseToTheMidlineIsDesignedForOnBothNeedles) {
  // Needles at 1.5 m and 2.5 m, midline 2.0 m; a post at 1.99 m on an 10 mm bearing is N1's, and
  // N2's where either needle stands 50 mm further left: the midline is then 25 mm further left.
  Job job = weightless_one_needle_wall();
  job.needles = {needle_at("N1", 1500.0), needle_at("N2", 2500.0)};
  job.point_loads = {{"post", 1990.0, 2500.0, 10.0, 8000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(result.needles[0].total, 8000.0, exactly);
  EXPECT_NEAR(result.needles[1].total, 0.0, exactly);
  EXPECT_NEAR(result.needles[1].nearby, 8000.0, exactly);
  job.point_loads[0].x = 1900.0;  // well away from it
  EXPECT_NEAR(spread_at_45_degrees(job).needles[1].largest(), 0.0, exactly);
}

TEST(Spread, LoadInAPierBelowTheSoffitStandsOnThePier) {
  Job job = weightless_one_needle_wall();
  job.point_loads = {{"joist", 500.0, 600.0, 100.0, 3000.0, 0.0}};
  EXPECT_NEAR(load_of(spread_at_45_degrees(job).left_pier, "joist"), 3000.0, exactly);
}

TEST(Spread, WallOverAnOpeningGoesToItsJambsByTheLever) {
  // Window 1.6-2.4 m, sill 1.5 m, head 2.0 m. Over it 0.8 m x 1.0 m, half to each jamb; jambs at
  // x = 1.6 m and 2.4 m stand 1.0 m up, above the lines (0.3 m there): all to the needle.
  Job job = one_needle_wall();
  job.wall.openings = {{"window", 1600.0, 1500.0, 800.0, 500.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(item(result.needles[0], "masonry", true)->area, 0.8e6, 1e-3);
  EXPECT_NEAR(item(result.needles[0], "masonry")->area, 3.19e6 - 0.8e6 - 0.4e6, 1e-3);
  EXPECT_NEAR(result.load_total, 9.6e6 * weight_per_area, exactly);
}

TEST(Spread, OpeningAcrossTheMidlineFeedsBothNeedles) {
  // Needles at 1.5 m and 2.5 m, midline 2.0 m. Window 1.8-2.3 m: a load at 1.9 m goes 4/5 to the
  // left jamb and so to N1.
  Job job = weightless_one_needle_wall();
  job.needles = {needle_at("N1", 1500.0), needle_at("N2", 2500.0)};
  job.wall.openings = {{"window", 1800.0, 1500.0, 500.0, 500.0, 0.0}};
  job.point_loads = {{"tie", 1900.0, 2500.0, 100.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 800.0, exactly);
  EXPECT_NEAR(load_of(result.needles[1], "tie", true), 200.0, exactly);
}

TEST(Spread, OpeningAcrossTheCutsJambFeedsThePierToo) {
  // Window 0.6-1.4 m over the jamb at 1.0 m; a load at 0.8 m: 3/4 left to the pier, 1/4 right.
  Job job = weightless_one_needle_wall();
  job.wall.openings = {{"window", 600.0, 2000.0, 800.0, 500.0, 0.0}};
  job.point_loads = {{"tie", 800.0, 2800.0, 100.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.left_pier, "tie", true), 750.0, exactly);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 250.0, exactly);
}

TEST(Spread, JambUnderTheLineComesDownByTheLever) {
  // Right jamb at 2.9 m stands 0.5 m up; the line is 0.8 m up there.
  Job job = weightless_one_needle_wall();
  job.wall.openings = {{"hatch", 2500.0, 1200.0, 400.0, 300.0, 0.0}};
  job.point_loads = {{"tie", 2800.0, 2500.0, 100.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  // 750 N on the right jamb, 0.1 m from the cut's jamb, 0.9 m from the needle.
  EXPECT_NEAR(load_of(result.right_pier, "tie", true), 0.9 * 750.0, 0.01);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 250.0 + 0.1 * 750.0, 0.01);
}

TEST(Spread, JambOnTheCutsJambOrOnTheLineIsNotLost) {
  // Left jamb in line with the cut's left jamb stands on the pier; right jamb at 2.4 m with its
  // head 0.3 m up is on the 45-degree line itself and counts as inside.
  Job job = weightless_one_needle_wall();
  job.wall.openings = {{"hatch", 1000.0, 1100.0, 1400.0, 200.0, 0.0}};
  job.point_loads = {{"tie", 1700.0, 2500.0, 100.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.left_pier, "tie", true), 500.0, exactly);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 500.0, exactly);
}

TEST(Spread, StackedOpeningsPassTheLoadOnByTheLeverTwice) {
  // Upper 1.8-2.2 m, lower 1.5-2.5 m; N1 left of 2.0 m, N2 right. A load over the upper's left
  // quarter point x = 1.9 m: 3/4 to its jamb 1.8 m, 1/4 to 2.2 m. Lower: from 1.8 m 0.7 left and
  // 0.3 right, from 2.2 m 0.3 left and 0.7 right. N1: 0.75 x 0.7 + 0.25 x 0.3 = 0.6.
  Job job = weightless_one_needle_wall();
  job.needles = {needle_at("N1", 1400.0), needle_at("N2", 2600.0)};
  job.wall.openings = {{"upper", 1800.0, 2200.0, 400.0, 300.0, 0.0},
                       {"lower", 1500.0, 1600.0, 1000.0, 300.0, 0.0}};
  job.point_loads = {{"tie", 1900.0, 2700.0, 100.0, 1000.0, 0.0},
                     {"sill", 2000.0, 2200.0, 400.0, 400.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 600.0, exactly);
  EXPECT_NEAR(load_of(result.needles[1], "tie", true), 400.0, exactly);
  // A load on the upper's sill stands on the band over the lower one, not on the upper's jambs.
  EXPECT_NEAR(load_of(result.needles[0], "sill", true), 200.0, exactly);
}

TEST(Spread, SlotToTheTopHasNothingAboveIt) {
  // Slot 1.8-2.2 m from 2 m to the top: 0.4 m x 1 m less, and nothing comes by its jambs.
  Job job = one_needle_wall();
  job.wall.openings = {{"bay", 1800.0, 2000.0, 400.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  const double straight = load_of(result.needles[0], "masonry");
  EXPECT_NEAR(straight, (3.19e6 - 0.4e6) * weight_per_area, exactly);
  EXPECT_EQ(item(result.needles[0], "masonry", true), nullptr);
  EXPECT_NEAR(sum_of_parts(result), result.load_total, exactly);
}

TEST(Spread, OpeningInsideTheCutIsGone) {
  Job job = one_needle_wall();
  job.wall.openings = {{"door", 1500.0, 0.0, 800.0, 900.0, 0.0}};
  job.wall.lintels = {{"old lintel", 0, 50.0, 100.0}};
  job.lintels = {{job.wall.lintels[0], "timber", 5e-6, 9000.0, 0.2, 215.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(result.load_total, 10.0e6 * weight_per_area, exactly);
  EXPECT_NEAR(sum_of_parts(result), result.load_total, exactly);
}

TEST(Spread, OpeningInAPierStaysWithThePier) {
  Job job = one_needle_wall();
  job.wall.openings = {{"door", 300.0, 0.0, 500.0, 2000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(item(result.left_pier, "masonry")->area, 1.5e6, 1e-3);
  EXPECT_NEAR(item(result.left_pier, "masonry", true)->area, 0.5e6, 1e-3);
}

TEST(Spread, LintelWeighsInPlaceOfMasonry) {
  // 25 kN/m3 x 100 mm = 2.5 kN/m2. Opening 0.8 m wide, lintel 1.1 m x 0.2 m: 0.8 m over the opening
  // and 0.15 m on each side.
  Job job = one_needle_wall();
  job.wall.openings = {{"window", 1600.0, 1500.0, 800.0, 500.0, 0.0}};
  job.wall.lintels = {{"beam", 0, 200.0, 150.0}};
  job.lintels = {{job.wall.lintels[0], "concrete", 25e-6, 25000.0, 0.2, 100.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "beam", true), 0.16e6 * 2.5e-3, exactly);
  EXPECT_NEAR(load_of(result.needles[0], "beam"), 0.06e6 * 2.5e-3, exactly);
  EXPECT_NEAR(item(result.needles[0], "masonry", true)->area, 0.64e6, 1e-3);
  EXPECT_NEAR(result.load_total, 9.38e6 * weight_per_area + 0.22e6 * 2.5e-3, exactly);
}

TEST(Spread, MasonryOverASemicircularHeadIsExact) {
  // Over a round head of radius 0.4 m: the 0.8 m x 1.4 m above the springing less half a circle.
  Job job = one_needle_wall();
  job.wall.openings = {{"arch", 1600.0, 1300.0, 800.0, 700.0, 400.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  const double area = 1.12e6 - 0.5 * std::numbers::pi * 400.0 * 400.0;
  EXPECT_NEAR(item(result.needles[0], "masonry", true)->area, area, 1e-9 * area);
  EXPECT_NEAR(sum_of_parts(result), result.load_total, 1e-9 * result.load_total);
}

TEST(Spread, ArchBringsItsLoadDownAtTheSpringing) {
  // Right jamb at 2.9 m, where the line is 0.8 m up: the springing is 0.7 m up, the crown 0.9 m.
  Job job = weightless_one_needle_wall();
  job.wall.openings = {{"arch", 2300.0, 1200.0, 600.0, 700.0, 200.0}};
  job.point_loads = {{"tie", 2750.0, 2500.0, 100.0, 1000.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  // 750 N on the right jamb, 0.1 m from the cut's jamb, 0.9 m from the needle.
  EXPECT_NEAR(load_of(result.right_pier, "tie", true), 0.9 * 750.0, 0.01);
  EXPECT_NEAR(load_of(result.needles[0], "tie", true), 250.0 + 0.1 * 750.0, 0.01);
}

TEST(Spread, GableIsSharedExactly) {
  // 2 m at the eaves, 4 m at the ridge over the needle: over the cut (1 m to 3 m) heights over the
  // soffit run 2 - 3 - 2 m: 5 m2, less 2 x 0.405 m2. Each pier 1 m x (2 + 3)/2 m.
  Job job = one_needle_wall();
  job.wall.top = {{0.0, 2000.0}, {2000.0, 4000.0}, {4000.0, 2000.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "masonry"), 4.19e6 * weight_per_area, exactly);
  EXPECT_NEAR(load_of(result.left_pier, "masonry"), 2.5e6 * weight_per_area, exactly);
  EXPECT_NEAR(result.load_total, 10.0e6 * weight_per_area, exactly);
}

TEST(Spread, LoadOnARakingTopFollowsIt) {
  // Top from 1.2 m at the left to 2.8 m at the right, y = 1200 + 0.4 x. The left line
  // y = 1000 + (1900 - x) meets it at 1.4 x = 1700; the right one y = 1000 + (x - 2100) never
  // before the jamb. Loaded over the cut: from 1700/1.4 mm to 3000 mm goes to the needle.
  Job job = weightless_one_needle_wall();
  job.wall.top = {{0.0, 1200.0}, {4000.0, 2800.0}};
  job.line_loads = {{"roof", 0.0, true, {0.0, 4000.0}, 1.0, 0.0}};
  const SpreadResult result = spread_at_45_degrees(job);
  EXPECT_NEAR(load_of(result.needles[0], "roof"), 3000.0 - 1700.0 / 1.4, exactly);
  const double outside = 1700.0 / 1.4 - 1000.0;
  EXPECT_NEAR(wedge_of(result.needles[0], "roof"), outside * 0.5e-3 * outside, exactly);
}

// --- Independent checks -------------------------------------------------------------------------

Job mirrored(Job job) {
  const double length = job.wall.length;
  std::reverse(job.wall.top.begin(), job.wall.top.end());
  for (Point& p : job.wall.top) p.x = length - p.x;
  for (mesh::Opening& opening : job.wall.openings) opening.left = length - opening.right();
  job.wall.cut = {length - job.wall.cut.right, length - job.wall.cut.left, job.wall.cut.soffit};
  for (LineLoad& load : job.line_loads) load.x = {length - load.x.to, length - load.x.from};
  for (PointLoad& load : job.point_loads) load.x = length - load.x;
  for (Needle& needle : job.needles) needle.x = length - needle.x;
  return job;
}

TEST(Spread, MirroredJobGivesMirroredSums) {
  const SpreadResult straight = spread_at_45_degrees(mixed_wall());
  const SpreadResult mirror = spread_at_45_degrees(mirrored(mixed_wall()));
  for (std::size_t i = 0; i < straight.needles.size(); ++i)
    EXPECT_NEAR(straight.needles[i].total, mirror.needles[i].total, 1e-9 * straight.load_total);
  EXPECT_NEAR(straight.left_pier.total, mirror.right_pier.total, 1e-9 * straight.load_total);
  EXPECT_NEAR(straight.right_pier.total, mirror.left_pier.total, 1e-9 * straight.load_total);
}

// Chance walls on a coarse grid of sizes, so that edges often fall in line.
Job chance_wall(std::mt19937& chance) {
  const auto pick = [&](int from, int to, double step) {
    return step * std::uniform_int_distribution<int>(from, to)(chance);
  };
  const double cut_left = pick(2, 10, 100.0);
  Job job = wall_with_cut(7000.0, 6000.0, {cut_left, cut_left + pick(20, 40, 100.0), 2000.0});
  job.wall.top = {{0.0, pick(52, 70, 100.0)},
                  {3000.0, pick(52, 70, 100.0)},
                  {3000.0, pick(52, 70, 100.0)},
                  {7000.0, pick(52, 70, 100.0)}};
  for (int storey = 0; storey < 2; ++storey) {
    double from = pick(1, 8, 100.0);
    while (from < 5200.0) {
      const double width = pick(6, 14, 100.0);
      const double rise = pick(0, 1, 0.5 * width) * pick(1, 4, 0.25);
      const double sill = 2200.0 + 1500.0 * storey + pick(0, 3, 100.0);
      job.wall.openings.push_back({std::to_string(job.wall.openings.size()), from, sill, width,
                                   rise + pick(1, 3, 100.0), rise});
      from += width + pick(2, 15, 100.0);
    }
  }
  double x = cut_left + 100.0 + pick(0, 4, 100.0);
  while (x + 100.0 <= job.wall.cut.right) {
    job.needles.push_back(needle_at(fmt::format("N{}", job.needles.size()), x));
    x += pick(3, 14, 100.0);
  }
  job.line_loads = {{"floor", 5000.0, false, {pick(0, 10, 100.0), pick(40, 70, 100.0)}, 5.0, 2.0},
                    {"roof", 0.0, true, {0.0, 7000.0}, 2.0, 1.0}};
  job.point_loads = {{"purlin", pick(5, 60, 100.0), 5200.0, 200.0, 4000.0, 1000.0}};
  return job;
}

TEST(Spread, PartsAddUpToTheWholeOnChanceWalls) {
  std::mt19937 chance(20240607);
  for (int i = 0; i < 200; ++i) {
    const SpreadResult result = spread_at_45_degrees(chance_wall(chance));
    ASSERT_NEAR(sum_of_parts(result), result.load_total, 1e-9 * result.load_total) << "wall " << i;
    ASSERT_EQ(result.on_nothing(), 0.0) << "wall " << i;
  }
}

TEST(Spread, ItemsAddUpToEachSupportAndSharesToOne) {
  const SpreadResult result = spread_at_45_degrees(mixed_wall());
  std::vector<SpreadSum> sums = result.needles;
  sums.insert(sums.end(), {result.left_pier, result.right_pier});
  double purlin = 0.0;
  for (const SpreadSum& sum : sums) {
    double total = 0.0;
    for (const SpreadItem& part : sum.items) {
      total += part.load;
      if (part.name == "purlin") purlin += part.share;
    }
    EXPECT_NEAR(total, sum.total, exactly)
        << (sum.support ? static_cast<int>(sum.support->index) : -1);
  }
  EXPECT_NEAR(purlin, 1.0, 1e-12);
}

// Follows one speck of weight down the wall, as a builder would with a finger on the drawing.
// Shares no code with the strip integration; written for `mixed_wall`, where no edges fall in line.
class Finger {
 public:
  explicit Finger(const Job& job) : job_(job), taken_(job.needles.size() + 2, 0.0) {}

  void put_down(Point p, double weight) {
    const mesh::Opening* under = nullptr;
    for (const mesh::Opening& opening : job_.wall.openings) {
      const bool below = opening.left < p.x && p.x < opening.right() && opening.head(p.x) <= p.y;
      if (below && !gone(opening) && (!under || opening.crown() > under->crown())) under = &opening;
    }
    if (!under) return rest(p, weight);
    const double right_part = (p.x - under->left) / under->width;
    put_down({under->left - 1e-3, under->springing()}, weight * (1.0 - right_part));
    put_down({under->right() + 1e-3, under->springing()}, weight * right_part);
  }

  [[nodiscard]] bool in_wall(Point p) const {
    const mesh::Cut& cut = job_.wall.cut;
    if (p.y > job_.wall.top_at(p.x)) return false;
    if (cut.left < p.x && p.x < cut.right && p.y < cut.soffit) return false;
    return std::none_of(job_.wall.openings.begin(), job_.wall.openings.end(), [&](const auto& o) {
      return !gone(o) && o.left < p.x && p.x < o.right() && o.sill < p.y && p.y < o.head(p.x);
    });
  }

  [[nodiscard]] double taken(std::size_t support) const { return taken_.at(support); }

 private:
  [[nodiscard]] bool gone(const mesh::Opening& opening) const { return opening.name == "gone"; }

  // Over the cut the nearest bearing takes it, if it is no further aside than up; else the lever.
  void rest(Point p, double weight) {
    const std::size_t needles = job_.needles.size();
    const mesh::Cut& cut = job_.wall.cut;
    if (p.x < cut.left) return void(taken_[needles] += weight);
    if (p.x > cut.right) return void(taken_[needles + 1] += weight);
    std::size_t nearest = 0;
    const auto aside = [&](std::size_t i) {
      const Needle& needle = job_.needles[i];
      return std::max(0.0, std::abs(p.x - needle.x) - 0.5 * needle.bearing_width);
    };
    for (std::size_t i = 1; i < needles; ++i)
      if (aside(i) < aside(nearest)) nearest = i;
    if (aside(nearest) <= p.y - cut.soffit) return void(taken_[nearest] += weight);
    std::pair<double, std::size_t> left{cut.left, needles};
    std::pair<double, std::size_t> right{cut.right, needles + 1};
    for (std::size_t i = 0; i < needles; ++i) {
      const double x = job_.needles[i].x;
      if (x <= p.x && x > left.first) left = {x, i};
      if (x > p.x && x < right.first) right = {x, i};
    }
    const double to_right = (p.x - left.first) / (right.first - left.first);
    taken_[left.second] += weight * (1.0 - to_right);
    taken_[right.second] += weight * to_right;
  }

  const Job& job_;
  std::vector<double> taken_;
};

TEST(Spread, AgreesWithSampledPointsFollowedDownTheWall) {
  const Job job = mixed_wall();
  const SpreadResult result = spread_at_45_degrees(job);
  Finger finger(job);
  std::mt19937 chance(7);
  std::uniform_real_distribution<double> within(0.0, 1.0);

  // One chance point in each 10 mm cell of the face; the lintel's rectangle weighs differently.
  constexpr double cell = 10.0;
  const mesh::LintelExtent beam = mesh::extent_of(job.wall.lintels[0], job.wall);
  for (double x = 0.0; x < job.wall.length; x += cell) {
    for (double y = 0.0; y < 6300.0; y += cell) {
      const Point p{x + cell * within(chance), y + cell * within(chance)};
      if (!finger.in_wall(p)) continue;
      const bool in_beam = beam.x.contains(p.x) && beam.y.contains(p.y);
      finger.put_down(p, cell * cell * (in_beam ? 2.5e-3 : weight_per_area));
    }
  }
  for (double x = 0.5; x < job.wall.length; x += 1.0) {
    finger.put_down({x, job.wall.top_at(x)}, 3.5);
    if (x > 200.0 && x < 5700.0) finger.put_down({x, 4200.0}, 9.0);
    if (x > 3600.0 && x < 3800.0) finger.put_down({x, 4600.0}, 35.0);
    if (x > 1975.0 && x < 2125.0) finger.put_down({x, 5000.0}, 6.0);
  }

  // 3e5 stratified points: chance errors of some 1e-5 of the whole.
  const double near = 2e-4 * result.load_total;
  for (std::size_t i = 0; i < job.needles.size(); ++i)
    EXPECT_NEAR(result.needles[i].total, finger.taken(i), near) << job.needles[i].name;
  EXPECT_NEAR(result.left_pier.total, finger.taken(4), near);
  EXPECT_NEAR(result.right_pier.total, finger.taken(5), near);
}

// --- Outline ------------------------------------------------------------------------------------

MATCHER_P2(IsAt, x, y, "") {
  return std::abs(arg.x - x) < 1e-9 && std::abs(arg.y - y) < 1e-9;
}

double area_of(const std::vector<Point>& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return 0.5 * twice;
}

TEST(SpreadOutline, RunsAnticlockwiseFromTheLeftEndOfTheBearing) {
  const SpreadResult result = spread_at_45_degrees(one_needle_wall());
  EXPECT_THAT(result.needles[0].outline,
              testing::ElementsAre(IsAt(1900.0, 1000.0), IsAt(2100.0, 1000.0), IsAt(3000.0, 1900.0),
                                   IsAt(3000.0, 3000.0), IsAt(2000.0, 3000.0), IsAt(1000.0, 3000.0),
                                   IsAt(1000.0, 1900.0)));
  EXPECT_TRUE(result.left_pier.outline.empty());
}

TEST(SpreadOutline, EnclosesTheDirectMasonryWhereThereAreNoOpenings) {
  Job job = mixed_wall();
  job.wall.openings.clear();
  job.wall.lintels.clear();
  job.lintels.clear();
  for (const SpreadSum& needle : some(spread_at_45_degrees(job).needles))
    EXPECT_NEAR(area_of(needle.outline), item(needle, "masonry")->area, 1e-3)
        << needle.support->index;
}

TEST(SpreadOutline, EndsWhereTheLineLeavesThroughTheTop) {
  Job job = one_needle_wall();
  job.wall.top = {{0.0, 1500.0}, {4000.0, 1500.0}};
  const auto outline = spread_at_45_degrees(job).needles[0].outline;
  EXPECT_THAT(outline,
              testing::ElementsAre(IsAt(1900.0, 1000.0), IsAt(2100.0, 1000.0), IsAt(2600.0, 1500.0),
                                   IsAt(2000.0, 1500.0), IsAt(1400.0, 1500.0)));
}

TEST(SpreadAssumptions, AreSentences) {
  for (const std::string& sentence : some(spread_assumptions()))
    EXPECT_TRUE(sentence.ends_with('.'));
}

}  // namespace
}  // namespace deadshore::solver
