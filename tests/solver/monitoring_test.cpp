// Marks on the wall and what they should move. The scale of damage is that of damage_test.cpp; the
// rule of stop values is ours.
#include "solver/site/monitoring.h"

#include "solver/fem/job_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <vector>

namespace deadshore::solver {
namespace {

const mesh::WallMesh& coarse_wall() {
  static const mesh::WallMesh wall = mesh_of(invented_wall(), 400.0);
  return wall;
}

/// An analysis in which the whole wall sinks evenly.
PanelResult sunk_by(MasonryModel model, double settlement) {
  PanelResult analysis;
  analysis.model = model;
  for (int node = 0; node < coarse_wall().quads.node_count(); ++node) {
    analysis.fields.displacement.insert(analysis.fields.displacement.end(), {0.0, -settlement});
  }
  return analysis;
}

/// Stages from the wall as built, each sunk by so much; the cracked wall twice as much.
std::vector<StageResult> stages_sunk_by(std::initializer_list<double> settlements) {
  std::vector<StageResult> stages;
  for (const double settlement : settlements) {
    StageResult& stage = stages.emplace_back();
    if (stages.size() > 1) stage.operations = {{Act::fit, NeedleId{0}}};
    stage.analyses = {sunk_by(MasonryModel::uncracked, settlement),
                      sunk_by(MasonryModel::cracked, 2.0 * settlement)};
  }
  return stages;
}

Monitoring monitoring_of(const std::vector<StageResult>& stages) {
  return solver::monitoring_of(invented_wall(), coarse_wall(), stages);
}

// Needles at 1.1, 2.4, 3.6 and 4.9 m, the cut from 0.6 to 5.4 m.
TEST(Monitoring, MarksAreOverNeedlesMiddleAndPiersFromLeftToRight) {
  const std::vector<MonitoringMark> marks = monitoring_of({}).marks;
  std::vector<double> places;
  std::vector<MarkPlace> kinds;
  for (const MonitoringMark& mark : marks) {
    places.push_back(mark.at.x);
    kinds.push_back(mark.place);
    EXPECT_EQ(mark.at.y, 2400.0);
    EXPECT_TRUE(mark.movement.empty());
  }
  EXPECT_THAT(places, ::testing::ElementsAre(400, 1100, 2400, 3000, 3600, 4900, 5600));
  EXPECT_EQ(kinds.front(), MarkPlace::left_pier);
  EXPECT_EQ(kinds[3], MarkPlace::middle_of_cut);
  EXPECT_EQ(kinds.back(), MarkPlace::right_pier);
  EXPECT_EQ(marks[2].needle, 1U);
}

TEST(Monitoring, MovementCountsFromTheFirstStageAndIsTheLargestOfAllAnalyses) {
  const Monitoring monitoring = monitoring_of(stages_sunk_by({0.2, 0.1, 0.6, 0.7, 0.9}));
  ASSERT_EQ(monitoring.marks.size(), 7U);
  for (const MonitoringMark& mark : monitoring.marks) {
    ASSERT_EQ(mark.movement.size(), 5U);
    EXPECT_EQ(mark.movement[0], 0.0);
    EXPECT_NEAR(mark.movement[1], -0.1, 1e-12);  // raised; the uncracked wall by less
    EXPECT_NEAR(mark.movement[2], 0.8, 1e-12);
    EXPECT_NEAR(mark.movement[4], 1.4, 1e-12);
  }
}

TEST(Monitoring, OfAWallThatDoesNotStandNothingIsExpected) {
  std::vector<StageResult> stages = stages_sunk_by({0.0, 0.5});
  stages[1].analyses[1].no_equilibrium = "it falls";
  const Monitoring monitoring = monitoring_of(stages);
  EXPECT_TRUE(std::isnan(monitoring.marks[0].movement.at(1)));
  EXPECT_TRUE(std::isnan(monitoring.stages.at(1).expected));
  EXPECT_TRUE(std::isnan(monitoring.stages.at(1).stop_at));
}

TEST(Monitoring, NothingIsExpectedOfAWallWhoseFirstStageIsNotAsBuilt) {
  std::vector<StageResult> stages = stages_sunk_by({0.2, 0.1, 0.6});
  stages.front().operations = {{Act::fit, NeedleId{0}}};
  const Monitoring monitoring = monitoring_of(stages);
  ASSERT_EQ(monitoring.stages.size(), 3U);
  for (const StageMovement& stage : monitoring.stages) {
    EXPECT_TRUE(std::isnan(stage.expected));
    EXPECT_TRUE(std::isnan(stage.stop_at));
    EXPECT_FALSE(stage.past_stop);
  }
}

TEST(Monitoring, StopValuesComeByTheRuleAndTheEngineerIsAskedPastIt) {
  const double slight = monitoring_of({}).slight_damage;
  const std::vector<StageMovement> stages =
      monitoring_of(stages_sunk_by({0.0, 0.1, 0.5, slight})).stages;
  EXPECT_TRUE(std::isnan(stages.at(0).stop_at));  // sets the zero
  EXPECT_DOUBLE_EQ(stages.at(1).stop_at, 1.0);
  EXPECT_DOUBLE_EQ(stages.at(2).stop_at, 1.5);
  EXPECT_FALSE(stages.at(2).past_stop);
  EXPECT_NEAR(stages.at(3).expected, 2.0 * slight, 1e-9);
  EXPECT_TRUE(stages.at(3).past_stop);
  EXPECT_FALSE(stages.at(0).past_stop);
}

// A deep beam of 2.0 x 1.5 m over the cut, E / G = 2.4, sagging. By Burland & Wroth 1974 its
// bending strain is (D / L) / (L / 12 t + 3 I E / (2 t L H G)) with t = 0.75 m, I = H^3 /
// 12: 1.4876 D / L. Category 2 begins at 0.075%: Boscardin & Cording 1989.
TEST(Monitoring, SlightDamageComesWithTheStrainOfTheDamageScale) {
  Job job = invented_wall();
  job.wall.cut = {2000.0, 4000.0, 3700.0};
  EXPECT_NEAR(movement_at_slight_damage(job), 0.00075 / 1.4876 * 2000.0, 5e-4);
}

TEST(StopValue, IsHalfAsMuchAgainRoundedUpToHalfAMillimetre) {
  EXPECT_DOUBLE_EQ(stop_value(0.8, 9.0), 1.5);  // 1.2
  EXPECT_DOUBLE_EQ(stop_value(1.0, 9.0), 1.5);
  EXPECT_DOUBLE_EQ(stop_value(1.001, 9.0), 2.0);
}

TEST(StopValue, IsNoLessThanOneMillimetre) {
  EXPECT_DOUBLE_EQ(stop_value(0.2, 9.0), 1.0);
  EXPECT_DOUBLE_EQ(stop_value(0.0, 9.0), 1.0);
  EXPECT_DOUBLE_EQ(stop_value(-0.3, 9.0), 1.0);
}

TEST(StopValue, NeverPassesWhereDamageIsSlight) {
  EXPECT_DOUBLE_EQ(stop_value(2.0, 2.59), 2.5);
  EXPECT_DOUBLE_EQ(stop_value(0.2, 0.78), 0.7);
}

TEST(StopValue, IsNotGivenWhereMoreIsExpectedOrNothingIsKnown) {
  EXPECT_TRUE(std::isnan(stop_value(2.6, 2.59)));
  EXPECT_TRUE(std::isnan(stop_value(not_known, 2.59)));
}

}  // namespace
}  // namespace deadshore::solver
