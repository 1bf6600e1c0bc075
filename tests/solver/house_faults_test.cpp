// What find_faults refuses in a house, at which key, and what it lets pass. The rules are ours; no
// outside source.
#include "tests/solver/fault_cases.h"
#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

#include <limits>

namespace deadshore::solver {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

const BuildUp boards = {{"boards", 22.0, 0.13e-3, ""}};

Partition partition(const std::string& name, PartitionRun run) {
  Partition partition;
  partition.name = name;
  partition.floor = "bedroom";
  partition.run = run;
  partition.distance = 900.0;
  partition.x = {1000.0, 4000.0};
  partition.place = 3000.0;
  partition.length = 2000.0;
  partition.bearing = 400.0;
  partition.height = 2400.0;
  partition.build_up = boards;
  return partition;
}

// The wall is 6 m long; see invented_wall.cpp.
Job sound_job() {
  Job job = invented_wall();
  House& house = job.house;
  Floor bedroom;
  bedroom.name = "bedroom";
  bedroom.level = 2600.0;
  bedroom.x = {500.0, 6000.0};
  bedroom.span = 3800.0;
  bedroom.build_up = boards;
  Floor landing = bedroom;
  landing.name = "landing";
  landing.x = {0.0, 500.0};
  landing.joists = JoistDirection::along_wall;
  landing.span = 400.0;
  house.floors = {bedroom, landing};
  Roof slope;
  slope.name = "slope";
  slope.level = 5200.0;
  slope.x = {0.0, 6000.0};
  slope.pitch = 40.0;
  slope.run = 2000.0;
  slope.on_slope = boards;
  Roof on_purlins = slope;
  on_purlins.name = "on purlins";
  on_purlins.run = 0.0;
  on_purlins.x = {};
  on_purlins.purlins = {{"front purlin", 3000.0, 5000.0, 200.0, 1800.0, 3600.0}};
  house.roofs = {slope, on_purlins};
  house.partitions = {partition("along", PartitionRun::along_wall),
                      partition("across", PartitionRun::across_wall)};
  UpperWall wall;
  wall.name = "upper storey";
  wall.level = 5200.0;
  wall.x = {0.0, 6000.0};
  wall.height = 2500.0;
  wall.build_up = boards;
  house.upper_walls = {wall};
  Chimney chimney;
  chimney.name = "chimney";
  chimney.level = 5200.0;
  chimney.x = 1000.0;
  chimney.width = 1200.0;
  chimney.projection = 350.0;
  chimney.height = 2500.0;
  chimney.unit_weight = 18e-6;
  house.chimneys = {chimney};
  house.contents = {{"bath", "bedroom", 2000.0, 700.0, 600.0, 3500.0}};
  return job;
}

class HouseFaults : public testing::TestWithParam<BadJob> {};

TEST_P(HouseFaults, AreFoundAtTheirKeyFirst) {
  expect_fault(sound_job(), GetParam());
}

const BadJob bad_floors[] = {
    {"floor[0].span", "0 mm", [](Job& j) { j.house.floors[0].span = 0.0; }},
    {"floor[1].span", "-400 mm", [](Job& j) { j.house.floors[1].span = -400.0; }},
    {"floor[0].share", "0", [](Job& j) { j.house.floors[0].share = 0.0; }},
    {"floor[0].share", "1.25", [](Job& j) { j.house.floors[0].share = 1.25; }},
    {"floor[0].level", "nan", [](Job& j) { j.house.floors[0].level = nan; }},
    {"floor[0].from", "-1 mm, past the wall's left end",
     [](Job& j) { j.house.floors[0].x.from = -1.0; }},
    {"floor[0].to", "6.1 m, past the wall's right end at 6 m",
     [](Job& j) { j.house.floors[0].x.to = 6100.0; }},
    {"floor[1].to", "not right of where the load begins",
     [](Job& j) {
       j.house.floors[1].x = {500.0, 500.0};
     }},
    {"floor[0].imposed", "-1.5 kN/m2", [](Job& j) { j.house.floors[0].imposed.load = -1.5e-3; }},
    {"floor[0].movable_partitions", "inf",
     [](Job& j) { j.house.floors[0].movable_partitions = infinity; }},
    {"floor[0].build_up", "nothing that weighs", [](Job& j) { j.house.floors[0].build_up = {}; }},
    {"floor[0].build_up[0].weight", "-0.13 kN/m2",
     [](Job& j) { j.house.floors[0].build_up[0].weight = -0.13e-3; }},
    {"floor[0].build_up[0].thickness", "nan",
     [](Job& j) { j.house.floors[0].build_up[0].thickness = nan; }},
};
INSTANTIATE_TEST_SUITE_P(InFloors, HouseFaults, testing::ValuesIn(bad_floors));

const BadJob bad_roofs[] = {
    {"roof[0].pitch", "90 degrees", [](Job& j) { j.house.roofs[0].pitch = 90.0; }},
    {"roof[0].pitch", "-5 degrees", [](Job& j) { j.house.roofs[0].pitch = -5.0; }},
    {"roof[0].run", "0 mm, and no purlins", [](Job& j) { j.house.roofs[0].run = 0.0; }},
    {"roof[0].run", "-2 m", [](Job& j) { j.house.roofs[0].run = -2000.0; }},
    {"roof[0].overhang", "nan", [](Job& j) { j.house.roofs[0].overhang = nan; }},
    {"roof[0].share", "1.5", [](Job& j) { j.house.roofs[0].share = 1.5; }},
    {"roof[0].snow", "-0.4 kN/m2", [](Job& j) { j.house.roofs[0].snow = -0.4e-3; }},
    {"roof[0].access", "-0.6 kN/m2", [](Job& j) { j.house.roofs[0].access = -0.6e-3; }},
    {"roof[0].to", "past the wall's right end", [](Job& j) { j.house.roofs[0].x.to = 6500.0; }},
    {"roof[0].coverings", "nothing that weighs", [](Job& j) { j.house.roofs[0].on_slope = {}; }},
    {"roof[0].ceiling[0].weight", "nan",
     [](Job& j) {
       j.house.roofs[0].on_plan = {{"ceiling", 0.0, nan, ""}};
     }},
    {"roof[1].purlin[0].x", "5.95 m, so that it bears from 5.85 m to 6.05 m, on a wall 6 m long",
     [](Job& j) { j.house.roofs[1].purlins[0].x = 5950.0; }},
    {"roof[1].purlin[0].bearing", "0 mm",
     [](Job& j) { j.house.roofs[1].purlins[0].bearing = 0.0; }},
    {"roof[1].purlin[0].width", "0 mm", [](Job& j) { j.house.roofs[1].purlins[0].width = 0.0; }},
    {"roof[1].purlin[0].span", "inf", [](Job& j) { j.house.roofs[1].purlins[0].span = infinity; }},
    {"roof[1].purlin[0].share", "0", [](Job& j) { j.house.roofs[1].purlins[0].share = 0.0; }},
};
INSTANTIATE_TEST_SUITE_P(InRoofs, HouseFaults, testing::ValuesIn(bad_roofs));

const BadJob bad_partitions[] = {
    {"partition[0].on", "\"attic\"", [](Job& j) { j.house.partitions[0].floor = "attic"; }},
    {"partition[0].on", "\"landing\", whose joists run along the wall",
     [](Job& j) { j.house.partitions[0].floor = "landing"; }},
    {"partition[0].distance", "3.9 m from the wall, past the end of the joists of \"bedroom\"",
     [](Job& j) { j.house.partitions[0].distance = 3900.0; }},
    {"partition[0].distance", "-900 mm", [](Job& j) { j.house.partitions[0].distance = -900.0; }},
    {"partition[0].from", "400 mm, where floor \"bedroom\" is from 500 mm to 6 m",
     [](Job& j) { j.house.partitions[0].x.from = 400.0; }},
    {"partition[0].to", "past the wall's right end",
     [](Job& j) { j.house.partitions[0].x.to = 6001.0; }},
    {"partition[0].to", "not right of", [](Job& j) { j.house.partitions[0].x.to = 1000.0; }},
    {"partition[0].height", "0 mm", [](Job& j) { j.house.partitions[0].height = 0.0; }},
    {"partition[0].openings", "8 m2, in a wall of 7.2 m2",
     [](Job& j) { j.house.partitions[0].openings = 8e6; }},
    {"partition[0].build_up", "nothing that weighs",
     [](Job& j) { j.house.partitions[0].build_up = {}; }},
    {"partition[1].distance", "4 m from the wall",
     [](Job& j) { j.house.partitions[1].distance = 4000.0; }},
    {"partition[1].length", "4.1 m from the wall, past the end of the joists",
     [](Job& j) { j.house.partitions[1].length = 3200.0; }},
    {"partition[1].place", "450 mm, where floor \"bedroom\" is from",
     [](Job& j) { j.house.partitions[1].place = 450.0; }},
    {"partition[1].place", "so that it bears from",
     [](Job& j) { j.house.partitions[1].place = 5900.0; }},
    {"partition[1].bearing", "nan", [](Job& j) { j.house.partitions[1].bearing = nan; }},
    {"partition[1].openings", "5 m2, in a wall of 4.8 m2",
     [](Job& j) { j.house.partitions[1].openings = 5e6; }},
    {"contents[0].on", "\"\"", [](Job& j) { j.house.contents[0].floor = ""; }},
    {"contents[0].on", "whose joists run along",
     [](Job& j) { j.house.contents[0].floor = "landing"; }},
    {"contents[0].distance", "5 m from the wall",
     [](Job& j) { j.house.contents[0].distance = 5000.0; }},
    {"contents[0].x", "450 mm, where floor", [](Job& j) { j.house.contents[0].x = 450.0; }},
    {"contents[0].weight", "-3.5 kN", [](Job& j) { j.house.contents[0].weight = -3500.0; }},
    {"contents[0].bearing", "0 mm", [](Job& j) { j.house.contents[0].bearing = 0.0; }},
};
INSTANTIATE_TEST_SUITE_P(OnFloors, HouseFaults, testing::ValuesIn(bad_partitions));

const BadJob bad_walls[] = {
    {"upper_wall[0].height", "nan", [](Job& j) { j.house.upper_walls[0].height = nan; }},
    {"upper_wall[0].openings", "16 m2, in a wall of 15 m2",
     [](Job& j) { j.house.upper_walls[0].openings = 16e6; }},
    {"upper_wall[0].from", "past the wall's left end",
     [](Job& j) { j.house.upper_walls[0].x.from = -100.0; }},
    {"upper_wall[0].build_up", "nothing that weighs",
     [](Job& j) { j.house.upper_walls[0].build_up[0].weight = 0.0; }},
    {"chimney[0].x", "500 mm, so that it bears from -100 mm",
     [](Job& j) { j.house.chimneys[0].x = 500.0; }},
    {"chimney[0].solid", "0", [](Job& j) { j.house.chimneys[0].solid = 0.0; }},
    {"chimney[0].solid", "1.1", [](Job& j) { j.house.chimneys[0].solid = 1.1; }},
    {"chimney[0].share", "-0.5", [](Job& j) { j.house.chimneys[0].share = -0.5; }},
    {"chimney[0].unit_weight", "-18 kN/m3",
     [](Job& j) { j.house.chimneys[0].unit_weight = -18e-6; }},
    {"chimney[0].stack_width", "0 mm", [](Job& j) { j.house.chimneys[0].stack_height = 1000.0; }},
    {"chimney[0].projection", "0 mm", [](Job& j) { j.house.chimneys[0].projection = 0.0; }},
};
INSTANTIATE_TEST_SUITE_P(InWallsAndChimneys, HouseFaults, testing::ValuesIn(bad_walls));

const BadJob bad_names[] = {
    {"floor[0].name", "no name",
     [](Job& j) {
       j.house.floors[0].name = "";
       j.house.partitions.clear();
       j.house.contents.clear();
     }},
    {"roof[0].name", "\"landing\", also the name at floor[1].name",
     [](Job& j) { j.house.roofs[0].name = "landing"; }},
    {"roof[1].purlin[0].name", "\"slope\", also the name at roof[0].name",
     [](Job& j) { j.house.roofs[1].purlins[0].name = "slope"; }},
    {"contents[0].name", "\"chimney\"", [](Job& j) { j.house.contents[0].name = "chimney"; }},
};
INSTANTIATE_TEST_SUITE_P(InNames, HouseFaults, testing::ValuesIn(bad_names));

TEST(FindHouseFaults, ComeBeforeThoseOfTheLoadsThatTheHouseWouldMake) {
  Job job = sound_job();
  job.house.floors[0].span = nan;
  job.line_loads[0].dead = nan;
  const std::vector<Fault> faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, "floor[0].span");
}

TEST(FindHouseFaults, AWallWithoutALengthIsTheFirstFault) {
  Job job = sound_job();
  job.wall.length = -1.0;
  const std::vector<Fault> faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, "wall.length");
}

TEST(FindHouseFaults, WhatTheHouseBringsDownIsLookedAtLikeOtherLoads) {
  Job job = sound_job();
  job.house.floors[0].level = 3500.0;  // through both windows
  std::vector<Fault> faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, "line_load[2].level");

  job = sound_job();
  job.house.floors[0].name = job.line_loads[0].name;
  for (Partition& on_it : job.house.partitions) on_it.floor = job.line_loads[0].name;
  job.house.contents[0].floor = job.line_loads[0].name;
  faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, "line_load[2].name");
}

TEST(FindHouseFaults, ADeadShoreCarriesTheFloorAndNotWhatStandsOnIt) {
  Job job = sound_job();
  const std::vector<LineLoad> loads = with_house_loads(job).line_loads;
  const auto load_called = [&](const char* name) {
    return LineLoadId(std::ranges::find(loads, name, &LineLoad::name) - loads.begin());
  };
  job.dead_shores = {{"SHORE", load_called("bedroom"), 1.0, {}, {}}};
  expect_no_fault(job);
  job.dead_shores[0].carries = load_called("along");
  const std::vector<Fault> faults = find_faults(job);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].key, "dead_shore[0].carries");
  EXPECT_EQ(faults[0].found, "\"along\", which stands on \"bedroom\"");
}

class SoundHouse : public testing::TestWithParam<GoodJob> {};

TEST_P(SoundHouse, HasNoFaults) {
  Job job = sound_job();
  GetParam().change(job);
  expect_no_fault(job);
}

const GoodJob good_houses[] = {
    {"as it is", [](Job&) {}},
    {"no house", [](Job& j) { j.house = {}; }},
    {"all of a floor on the wall", [](Job& j) { j.house.floors[0].share = 1.0; }},
    {"no imposed load", [](Job& j) { j.house.floors[0].imposed.load = 0.0; }},
    {"a flat roof", [](Job& j) { j.house.roofs[0].pitch = 0.0; }},
    {"an overhang alone",
     [](Job& j) {
       j.house.roofs[0].run = 0.0;
       j.house.roofs[0].overhang = 300.0;
     }},
    {"a partition at the far end of the joists",
     [](Job& j) { j.house.partitions[0].distance = 3800.0; }},
    {"a partition from end to end of the joists",
     [](Job& j) {
       j.house.partitions[1].distance = 0.0;
       j.house.partitions[1].length = 3800.0;
     }},
    {"a partition that is all opening", [](Job& j) { j.house.partitions[0].openings = 7.2e6; }},
    {"a solid breast", [](Job& j) { j.house.chimneys[0].solid = 1.0; }},
    {"a chimney at the wall's end", [](Job& j) { j.house.chimneys[0].x = 600.0; }},
};
INSTANTIATE_TEST_SUITE_P(AtTheLimits, SoundHouse, testing::ValuesIn(good_houses));

}  // namespace
}  // namespace deadshore::solver
