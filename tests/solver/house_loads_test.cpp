// What a house brings down is on the wall of every job that is analysed, once. No outside source:
// the take-down itself is checked in take_down_test.cpp.
#include "solver/loads/house_loads.h"

#include "solver/loads/take_down.h"
#include "solver/study/analyse.h"
#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using testing::ElementsAre;

/// The invented wall with a floor, a bath on it and an upper storey, large elements, uncracked.
Job job_with_house() {
  Job job = invented_wall();
  Floor bedroom;
  bedroom.name = "bedroom";
  bedroom.level = 2600.0;
  bedroom.x = {500.0, 6000.0};
  bedroom.span = 3800.0;
  bedroom.build_up = {{"boards", 22.0, 0.13e-3, ""}};
  bedroom.imposed = {"domestic", 1.5e-3, ""};
  job.house.floors = {bedroom};
  job.house.contents = {{"bath", "bedroom", 2000.0, 700.0, 600.0, 3500.0}};
  UpperWall storey;
  storey.name = "upper storey";
  storey.level = 5200.0;
  storey.x = {0.0, 6000.0};
  storey.height = 2500.0;
  storey.build_up = {{"brick", 102.5, 2e-3, ""}};
  job.house.upper_walls = {storey};
  job.dead_shores = {{"SHORE", LineLoadId{2}, 1.0, {}, {}}};
  job.analysis.mesh_size = 300.0;
  job.analysis.masonry = {MasonryModel::uncracked};
  return job;
}

double characteristic_total(const Job& job) {
  double total = 0.0;
  for (const LineLoad& load : job.line_loads) total += load.characteristic() * load.x.length();
  for (const PointLoad& load : job.point_loads) total += load.characteristic();
  return total;
}

TEST(WithHouseLoads, EveryLoadOfTheTakeDownComesBehindThoseGiven) {
  const Job job = with_house_loads(job_with_house());
  ASSERT_EQ(job.line_loads.size(), 4U);
  EXPECT_EQ(job.line_loads[2].name, "bedroom");
  EXPECT_EQ(job.line_loads[3].name, "upper storey");
  ASSERT_EQ(job.point_loads.size(), 2U);
  EXPECT_EQ(job.point_loads[1].name, "bath");
  const double given = characteristic_total(job_with_house());
  const double house = take_down(job.house).total().characteristic();
  EXPECT_NEAR(characteristic_total(job), given + house, 1e-9 * given);
}

TEST(WithHouseLoads, TwiceIsOnce) {
  const Job once = with_house_loads(job_with_house());
  const Job twice = with_house_loads(once);
  EXPECT_EQ(twice.line_loads.size(), once.line_loads.size());
  EXPECT_EQ(twice.point_loads.size(), once.point_loads.size());
  EXPECT_EQ(characteristic_total(twice), characteristic_total(once));
  EXPECT_EQ(twice.dead_shores[0].along_with, once.dead_shores[0].along_with);
}

TEST(WithHouseLoads, WhatStandsOnAShoredFloorGoesAlong) {
  EXPECT_THAT(with_house_loads(job_with_house()).dead_shores[0].along_with,
              ElementsAre(LoadId{PointLoadId{1}}));
}

TEST(Analyse, PutsWhatTheHouseBringsDownOnTheWall) {
  Job bare = job_with_house();
  bare.house = {};
  bare.dead_shores.clear();
  const JobResult without = analyse(bare);
  const JobResult with = analyse(job_with_house());
  const double house = take_down(with.job.house).total().characteristic();
  ASSERT_GT(house, 1e4);
  EXPECT_NEAR(with.hand.load_total, without.hand.load_total + house, 1e-9 * house);
  EXPECT_NEAR(with.stages[0].analyses.at(0).load_total,
              without.stages[0].analyses.at(0).load_total + house, 1e-9 * house);
}

TEST(Analyse, OfAResultsJobGivesTheSameAgain) {
  const JobResult first = analyse(job_with_house());
  const JobResult again = analyse(first.job);
  EXPECT_EQ(again.hand.load_total, first.hand.load_total);
  EXPECT_EQ(again.stages[0].analyses.at(0).needles[0].force,
            first.stages[0].analyses.at(0).needles[0].force);
}

}  // namespace
}  // namespace deadshore::solver
