// How a job's house is read, and what it brings down among the job's loads. Sums are worked by
// hand beside each check; no outside source but where one is named.
#include "io/job/job_reader.h"
#include "io/tables/weight_tables.h"
#include "solver/loads/house_loads.h"
#include "tests/io/core_keys.h"
#include "tests/io/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using ::testing::UnorderedElementsAre;

std::string house_keys() {
  return test_data("house_keys.toml");
}

solver::Job read() {
  return parse_job(house_keys(), "yard.toml");
}

solver::Job read_with(const std::string& old_part, const std::string& new_part) {
  return parse_job(with(house_keys(), old_part, new_part), "yard.toml");
}

template <class Loads>
auto load_named(const Loads& loads, const std::string& name) {
  const auto found = std::ranges::find(loads, name, [](const auto& load) { return load.name; });
  EXPECT_NE(found, loads.end()) << name;
  return found == loads.end() ? typename Loads::value_type{} : *found;
}

TEST(HouseReader, AJobWithoutAHouseHasNone) {
  const solver::Job job = parse_job(core_keys(), "yard.toml");
  EXPECT_THAT(job.house.floors, IsEmpty());
  EXPECT_THAT(job.house.roofs, IsEmpty());
  EXPECT_THAT(job.line_loads, SizeIs(1));
}

TEST(HouseReader, ReadsAFloorWithItsDefaults) {
  const solver::House house = read().house;
  ASSERT_THAT(house.floors, SizeIs(3));
  const solver::Floor& floor = house.floors[0];
  EXPECT_EQ(floor.name, "first floor");
  EXPECT_EQ(floor.level, 2700.0);
  EXPECT_EQ(floor.x.from, 0.0);
  EXPECT_EQ(floor.x.to, 5000.0);
  EXPECT_EQ(floor.joists, solver::JoistDirection::onto_wall);
  EXPECT_EQ(floor.span, 4000.0);
  EXPECT_EQ(floor.share, 0.5);
  EXPECT_EQ(floor.movable_partitions, 0.0);
}

TEST(HouseReader, ReadsAFloorWithEveryKey) {
  const solver::House house = read().house;
  ASSERT_THAT(house.floors, SizeIs(3));
  const solver::Floor& floor = house.floors[1];
  EXPECT_EQ(floor.x.from, 3000.0);
  EXPECT_EQ(floor.x.to, 4500.0);
  EXPECT_EQ(floor.joists, solver::JoistDirection::along_wall);
  EXPECT_EQ(floor.span, 400.0);
  EXPECT_EQ(floor.share, 0.6);
  ASSERT_THAT(floor.build_up, SizeIs(1));
  EXPECT_DOUBLE_EQ(floor.build_up[0].weight, 0.5e-3);
  EXPECT_EQ(floor.build_up[0].source, "as given in the job file");
  EXPECT_DOUBLE_EQ(floor.imposed.load, 3e-3);
  EXPECT_EQ(floor.imposed.use, "as given");
  EXPECT_EQ(floor.imposed.source, "as given in the job file");
  EXPECT_DOUBLE_EQ(floor.movable_partitions, 0.8e-3);
}

TEST(HouseReader, WeighsLayersByTheTablesOrAsGiven) {
  const WeightTables tables = built_in_weight_tables();
  const solver::House house = read().house;
  ASSERT_THAT(house.floors, SizeIs(3));
  const solver::BuildUp& layers = house.floors[0].build_up;
  ASSERT_THAT(layers, SizeIs(4));
  const WeightRow& boards = tables.material("softwood");
  EXPECT_EQ(layers[0].material, boards.name);
  EXPECT_EQ(layers[0].thickness, 22.0);
  EXPECT_DOUBLE_EQ(layers[0].weight, 22.0 * boards.unit_weight.value());
  EXPECT_EQ(layers[0].source, boards.source);
  const WeightRow& ceiling = tables.material("plasterboard and skim");
  EXPECT_EQ(layers[1].thickness, 0.0);
  EXPECT_DOUBLE_EQ(layers[1].weight, ceiling.area_weight.value());
  EXPECT_EQ(layers[1].source, ceiling.source);
  EXPECT_EQ(layers[2].material, "joists");
  EXPECT_DOUBLE_EQ(layers[2].weight, 0.12e-3);
  EXPECT_EQ(layers[3].thickness, 50.0);
  EXPECT_DOUBLE_EQ(layers[3].weight, 0.6e-3);  // 50 mm of 12 kN/m3
  EXPECT_EQ(layers[3].source, "as given in the job file");
}

TEST(HouseReader, AFileOfYourOwnMayHoldMembersAndWeights) {
  const test::ScratchFolder folder;
  std::ofstream(folder.path() / "own.toml")
      << "[[weight_group]]\nsource = \"weighed on site\"\n"
         "rows = [{ name = \"softwood\", unit_weight = 6.5 }]\n"
         "[[imposed_group]]\nsource = \"the owner\"\n"
         "rows = [{ name = \"domestic\", load = 2.0 }]\n"
         "[[ground_group]]\nsource = \"a trial pit\"\n"
         "rows = [{ name = \"made ground\", presumed = 50 }]\n";
  std::ofstream(folder.path() / "yard.toml") << "tables = [\"own.toml\"]\n" << house_keys();
  const solver::House house = read_job(folder.path() / "yard.toml").house;
  ASSERT_THAT(house.floors, SizeIs(3));
  EXPECT_DOUBLE_EQ(house.floors[0].build_up.at(0).weight, 22.0 * 6.5e-6);
  EXPECT_EQ(house.floors[0].build_up.at(0).source, "weighed on site");
  EXPECT_DOUBLE_EQ(house.floors[0].imposed.load, 2.0e-3);
}

TEST(HouseReader, InTheUnitedKingdomTheMapSaysHowMuchSnowFalls) {
  const solver::House house =
      read_with("ground_snow = \"0.5 kN/m2\"", "snow_zone = 3\naltitude = \"205 m\"").house;
  // UK NA to EN 1991-1-3 NA.2.8 (from memory, unverified): 0.15 + 0.35 + 105/525 = 0.7 kN/m2
  EXPECT_NEAR(house.roofs.at(1).snow, 0.8 * 0.7e-3, 1e-12);
  EXPECT_THAT(house.roofs.at(1).snow_source, HasSubstr("zone 3 at 205 m"));
}

TEST(HouseReader, AUseIsOfTheTables) {
  const UseRow domestic = built_in_weight_tables().use("domestic");
  const solver::House house = read().house;
  ASSERT_THAT(house.floors, SizeIs(3));
  EXPECT_EQ(house.floors[0].imposed.use, domestic.name);
  EXPECT_EQ(house.floors[0].imposed.load, domestic.load);
  EXPECT_EQ(house.floors[0].imposed.source, domestic.source);
}

TEST(HouseReader, ALoftIsAFloorWhoseBoardsSayWhatItBears) {
  const solver::House house = read().house;
  ASSERT_THAT(house.floors, SizeIs(3));
  EXPECT_EQ(house.floors[2].name, "loft");
  EXPECT_EQ(house.floors[2].level, 5200.0);
  const solver::House bare = read_with("boarded = true", "boarded = false").house;
  EXPECT_LT(bare.floors.at(2).imposed.load, house.floors[2].imposed.load);
  const solver::House said = read_with("boarded = true", "imposed = \"0.7 kN/m2\"").house;
  EXPECT_DOUBLE_EQ(said.floors.at(2).imposed.load, 0.7e-3);
}

TEST(HouseReader, ReadsARoofWithItsPurlins) {
  const solver::House house = read().house;
  ASSERT_THAT(house.roofs, SizeIs(2));
  const solver::Roof& roof = house.roofs[0];
  EXPECT_EQ(roof.name, "front slope");
  EXPECT_TRUE(roof.follows_top);
  EXPECT_DOUBLE_EQ(roof.pitch, 60.0);
  EXPECT_EQ(roof.run, 2000.0);
  EXPECT_EQ(roof.share, 0.5);
  EXPECT_EQ(roof.overhang, 300.0);
  EXPECT_DOUBLE_EQ(solver::weight_of(roof.on_slope), 0.6e-3);
  EXPECT_DOUBLE_EQ(solver::weight_of(roof.on_plan), 0.2e-3);
  EXPECT_DOUBLE_EQ(roof.access, 0.4e-3);
  EXPECT_DOUBLE_EQ(roof.snow, 0.3e-3);
  ASSERT_THAT(roof.purlins, SizeIs(1));
  EXPECT_EQ(roof.purlins[0].name, "front purlin");
  EXPECT_EQ(roof.purlins[0].x, 4600.0);
  EXPECT_EQ(roof.purlins[0].level, 5600.0);
  EXPECT_EQ(roof.purlins[0].bearing, 100.0);
  EXPECT_EQ(roof.purlins[0].width, 2400.0);
  EXPECT_EQ(roof.purlins[0].span, 3000.0);
  EXPECT_EQ(roof.purlins[0].share, 0.5);
}

// EN 1991-1-3 Table 5.2: mu_1 = 0.8 up to 30 degrees. UK NA to EN 1991-1-1 Table NA.7: 0.6 kN/m2
// below 30 degrees, less above, 0 from 60 (from memory, unverified).
TEST(HouseReader, APitchSaysHowMuchSnowLiesAndWhatAccessLoads) {
  const solver::House house = read().house;
  ASSERT_THAT(house.roofs, SizeIs(2));
  const solver::Roof& roof = house.roofs[1];
  EXPECT_FALSE(roof.follows_top);
  EXPECT_EQ(roof.level, 5800.0);
  EXPECT_EQ(roof.x.to, 2000.0);
  EXPECT_DOUBLE_EQ(roof.pitch, 30.0);
  EXPECT_EQ(roof.share, 0.7);
  EXPECT_NEAR(roof.snow, 0.8 * 0.5e-3, 1e-12);
  EXPECT_THAT(roof.snow_source, HasSubstr("0.8"));
  EXPECT_THAT(roof.snow_source, HasSubstr("0.5 kN/m2 on the ground"));
  EXPECT_NEAR(roof.access, 0.6e-3, 1e-12);
  const solver::House steep = read_with("\"30 deg\"", "\"60 deg\"").house;
  EXPECT_EQ(steep.roofs.at(1).access, 0.0);
  EXPECT_EQ(steep.roofs.at(1).snow, 0.0);
}

TEST(HouseReader, ReadsPartitionsThatRunEitherWay) {
  const solver::House house = read().house;
  ASSERT_THAT(house.partitions, SizeIs(2));
  const solver::Partition& along = house.partitions[0];
  EXPECT_EQ(along.run, solver::PartitionRun::along_wall);
  EXPECT_EQ(along.floor, "first floor");
  EXPECT_EQ(along.distance, 1000.0);
  EXPECT_EQ(along.x.from, 1000.0);
  EXPECT_EQ(along.x.to, 4000.0);
  EXPECT_EQ(along.height, 2400.0);
  EXPECT_DOUBLE_EQ(along.openings, 1.6e6);
  const solver::Partition& across = house.partitions[1];
  EXPECT_EQ(across.run, solver::PartitionRun::across_wall);
  EXPECT_EQ(across.distance, 0.0);
  EXPECT_EQ(across.place, 2000.0);
  EXPECT_EQ(across.length, 3000.0);
  EXPECT_EQ(across.bearing, 400.0);
  EXPECT_EQ(across.openings, 0.0);
}

TEST(HouseReader, ReadsWallsChimneysAndContents) {
  const solver::House house = read().house;
  ASSERT_THAT(house.upper_walls, SizeIs(1));
  EXPECT_TRUE(house.upper_walls[0].follows_top);
  EXPECT_EQ(house.upper_walls[0].height, 900.0);
  EXPECT_DOUBLE_EQ(house.upper_walls[0].openings, 0.2e6);
  ASSERT_THAT(house.chimneys, SizeIs(1));
  const solver::Chimney& chimney = house.chimneys[0];
  EXPECT_EQ(chimney.width, 1000.0);
  EXPECT_EQ(chimney.projection, 350.0);
  EXPECT_EQ(chimney.height, 3000.0);
  EXPECT_EQ(chimney.stack_width, 900.0);
  EXPECT_EQ(chimney.stack_depth, 500.0);
  EXPECT_EQ(chimney.stack_height, 1000.0);
  EXPECT_EQ(chimney.solid, 0.8);
  EXPECT_DOUBLE_EQ(chimney.unit_weight, 19e-6);
  EXPECT_EQ(chimney.share, 0.9);
  EXPECT_EQ(chimney.source, "as given in the job file");
  ASSERT_THAT(house.contents, SizeIs(1));
  EXPECT_EQ(house.contents[0].floor, "first floor");
  EXPECT_DOUBLE_EQ(house.contents[0].weight, 300.0 * 9.80665);  // a mass, under standard gravity
  const solver::House force = read_with("\"300 kg\"", "\"3 kN\"").house;
  EXPECT_EQ(force.contents.at(0).weight, 3000.0);
}

TEST(HouseReader, AChimneyMayNameItsMaterial) {
  const WeightRow brick = built_in_weight_tables().material("old brickwork in lime");
  const solver::House house =
      read_with("unit_weight  = \"19 kN/m3\"\nshare", "material = \"old brickwork in lime\"\nshare")
          .house;
  EXPECT_EQ(house.chimneys.at(0).unit_weight, brick.unit_weight.value());
  EXPECT_EQ(house.chimneys.at(0).source, brick.source);
}

TEST(HouseReader, LoadsGivenComeFirstThenThoseOfTheHouse) {
  const solver::Job job = read();
  std::vector<std::string> lines;
  for (const solver::LineLoad& load : job.line_loads) lines.push_back(load.name);
  EXPECT_EQ(lines.front(), "canopy");
  EXPECT_THAT(lines, UnorderedElementsAre("canopy", "first floor", "landing", "loft", "front slope",
                                          "back slope", "bathroom wall", "parapet"));
  std::vector<std::string> points;
  for (const solver::PointLoad& load : job.point_loads) points.push_back(load.name);
  EXPECT_EQ(points.front(), "winch");
  EXPECT_THAT(points, UnorderedElementsAre("winch", "front purlin", "box room wall",
                                           "chimney breast", "bath"));
  EXPECT_THAT(solver::find_faults(job), IsEmpty());
}

TEST(HouseReader, AFloorBecomesALineLoadAtItsLevel) {
  const solver::LineLoad landing = load_named(read().line_loads, "landing");
  EXPECT_EQ(landing.level, 2700.0);
  EXPECT_FALSE(landing.follows_top);
  EXPECT_EQ(landing.x.from, 3000.0);
  EXPECT_EQ(landing.x.to, 4500.0);
  EXPECT_NEAR(landing.dead, 0.5 * 0.4 * 0.6, 1e-9);             // kN/m2 x m x share
  EXPECT_NEAR(landing.imposed, (3.0 + 0.8) * 0.4 * 0.6, 1e-9);  // with movable partitions
}

TEST(HouseReader, ARoofBringsItsSlopeOnPlanAndTheLargerOfSnowAndAccess) {
  const solver::LineLoad roof = load_named(read().line_loads, "front slope");
  EXPECT_TRUE(roof.follows_top);
  // cos 60 = 0.5: 0.6 on the slope is 1.2 on plan; the ceiling ends at the wall. 2 m x 0.5 + 0.3 m.
  EXPECT_NEAR(roof.dead, 1.2 * 1.3 + 0.2 * 1.0, 1e-9);
  EXPECT_NEAR(roof.imposed, 0.4 * 1.3, 1e-9);  // access 0.4, not snow 0.3 too
}

TEST(HouseReader, WhatStandsOnJoistsComesByItsLever) {
  const solver::Job job = read();
  // 3 m x 2.4 m less 1.6 m2 of doors, 0.5 kN/m2, 1 m from the wall on joists of 4 m; over 3 m.
  const solver::LineLoad along = load_named(job.line_loads, "bathroom wall");
  EXPECT_NEAR(along.dead, (3.0 * 2.4 - 1.6) * 0.5 * (1.0 - 1.0 / 4.0) / 3.0, 1e-9);
  EXPECT_EQ(along.imposed, 0.0);
  EXPECT_EQ(along.level, 2700.0);
  // 3 m from the wall inwards, its middle 1.5 m away.
  const solver::PointLoad across = load_named(job.point_loads, "box room wall");
  EXPECT_NEAR(across.dead, 1e3 * 3.0 * 2.4 * 0.5 * (1.0 - 1.5 / 4.0), 1e-6);
  EXPECT_EQ(across.x, 2000.0);
  EXPECT_EQ(across.bearing, 400.0);
  const solver::PointLoad bath = load_named(job.point_loads, "bath");
  EXPECT_NEAR(bath.imposed, 300.0 * 9.80665 * (1.0 - 1.0 / 4.0), 1e-6);
  EXPECT_EQ(bath.dead, 0.0);
}

TEST(HouseReader, PurlinsWallsAndChimneysBringTheirWeight) {
  const solver::Job job = read();
  const solver::PointLoad purlin = load_named(job.point_loads, "front purlin");
  EXPECT_EQ(purlin.x, 4600.0);
  EXPECT_EQ(purlin.level, 5600.0);
  EXPECT_EQ(purlin.bearing, 100.0);
  EXPECT_NEAR(purlin.imposed, 1e3 * 0.4 * 2.4 * 3.0 * 0.5, 1e-6);
  const solver::LineLoad parapet = load_named(job.line_loads, "parapet");
  EXPECT_NEAR(parapet.dead, 0.102 * 18.0 * (3.0 * 0.9 - 0.2) / 3.0, 1e-9);
  const solver::PointLoad chimney = load_named(job.point_loads, "chimney breast");
  EXPECT_NEAR(chimney.dead, 1e3 * (1.0 * 0.35 * 3.0 + 0.9 * 0.5 * 1.0) * 0.8 * 19.0 * 0.9, 1e-6);
  EXPECT_NEAR(chimney.bearing, 1000.0, 1e-9);
}

TEST(HouseReader, ADeadShoreUnderAFloorTakesWhatStandsOnIt) {
  const solver::Job job = read();
  ASSERT_THAT(job.dead_shores, SizeIs(1));
  std::vector<std::string> along_with;
  for (const solver::LoadId load : job.dead_shores[0].along_with) {
    along_with.push_back(name_of(job, target_of(load)));
  }
  EXPECT_THAT(along_with, UnorderedElementsAre("bathroom wall", "box room wall", "bath"));
}

TEST(HouseReader, ADeadShoreUnderALineLoadTakesNothingElse) {
  const solver::Job job = read_with("carries = \"first floor\"", "carries = \"canopy\"");
  ASSERT_THAT(job.dead_shores, SizeIs(1));
  EXPECT_THAT(job.dead_shores[0].along_with, IsEmpty());
}

}  // namespace
}  // namespace deadshore::io
