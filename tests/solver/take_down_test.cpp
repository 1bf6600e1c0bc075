#include "solver/loads/take_down.h"

#include "solver/result/results.h"
#include "solver/study/study_parts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <string_view>
#include <utility>

namespace deadshore::solver {
namespace {

constexpr double kN_per_m2 = 1e-3;
constexpr double kN = 1e3;
constexpr double m2 = 1e6;

Floor plain_floor() {
  Floor floor;
  floor.name = "floor";
  floor.level = 2600.0;
  floor.x = {500.0, 5700.0};
  floor.span = 3800.0;
  floor.build_up = {{"boards", 22.0, 0.13 * kN_per_m2, "a"},
                    {"joists", 0.0, 0.15 * kN_per_m2, "b"}};
  floor.imposed = {"domestic", 1.5 * kN_per_m2, "c"};
  return floor;
}

Roof plain_roof() {
  Roof roof;
  roof.name = "roof";
  roof.follows_top = true;
  roof.x = {0.0, 5000.0};
  roof.pitch = 60.0;
  roof.run = 3000.0;
  roof.on_slope = {{"slates", 0.0, 0.8 * kN_per_m2, ""}};
  roof.on_plan = {{"ceiling", 0.0, 0.25 * kN_per_m2, ""}};
  roof.access = 0.6 * kN_per_m2;
  roof.snow = 0.4 * kN_per_m2;
  return roof;
}

Partition plain_partition(PartitionRun run) {
  Partition partition;
  partition.name = "partition";
  partition.floor = "floor";
  partition.run = run;
  partition.distance = 950.0;
  partition.x = {1000.0, 3000.0};
  partition.place = 2500.0;
  partition.length = 1900.0;
  partition.bearing = 400.0;
  partition.height = 2400.0;
  partition.build_up = {{"studs", 0.0, 0.5 * kN_per_m2, ""}};
  return partition;
}

House house_of(Roof roof) {
  House house;
  house.roofs = {std::move(roof)};
  return house;
}

/// Reckons what a person would from `working`, in m: + - x / and brackets, "cos 35 deg".
class Reckoner {
 public:
  explicit Reckoner(std::string_view text) : rest_(text) {}

  double value() {
    const double result = sum();
    EXPECT_EQ(rest_, "") << "left over";
    return result;
  }

 private:
  bool eat(std::string_view word) {
    while (rest_.starts_with(' ')) rest_.remove_prefix(1);
    if (!rest_.starts_with(word)) return false;
    rest_.remove_prefix(word.size());
    return true;
  }

  double sum() {
    double result = product();
    while (true) {
      if (eat("+"))
        result += product();
      else if (eat("-"))
        result -= product();
      else
        return result;
    }
  }

  double product() {
    double result = factor();
    while (true) {
      if (eat("x"))
        result *= factor();
      else if (eat("/"))
        result /= factor();
      else
        return result;
    }
  }

  double factor() {
    if (eat("(")) {
      const double result = sum();
      EXPECT_TRUE(eat(")")) << rest_;
      return result;
    }
    if (eat("cos")) {
      const double degrees = factor();
      EXPECT_TRUE(eat("deg")) << rest_;
      return std::cos(degrees * std::numbers::pi / 180.0);
    }
    eat("");
    std::size_t digits = 0;
    const double result = std::stod(std::string(rest_), &digits);
    rest_.remove_prefix(digits);
    if (!eat("m2")) eat("m");
    return result;
  }

  std::string_view rest_;
};

double size_of(Measure measure) {
  switch (measure) {
    case Measure::area:
      return 1e6;
    case Measure::volume:
      return 1e9;
    case Measure::pieces:
      return 1.0;
  }
  return 1.0;
}

House whole_house() {
  House house;
  Floor strip = plain_floor();
  strip.name = "strip";
  strip.joists = JoistDirection::along_wall;
  strip.span = 400.0;
  strip.movable_partitions = 0.8 * kN_per_m2;
  house.floors = {plain_floor(), strip};
  Roof roof = plain_roof();
  roof.overhang = 450.0;
  roof.purlins = {{"purlin", 2000.0, 5000.0, 200.0, 1750.0, 3600.0, 0.5}};
  Roof flat = plain_roof();
  flat.name = "flat roof";
  flat.pitch = 0.0;
  flat.share = 0.625;
  house.roofs = {roof, flat};
  Partition across = plain_partition(PartitionRun::across_wall);
  across.name = "across";
  across.openings = 1.6 * m2;
  Partition along = plain_partition(PartitionRun::along_wall);
  along.openings = 1.5 * m2;
  house.partitions = {along, across};
  UpperWall wall;
  wall.name = "gable";
  wall.x = {0.0, 6000.0};
  wall.height = 1234.5;
  wall.openings = 1.2 * m2;
  wall.build_up = {{"brickwork", 215.0, 4.6 * kN_per_m2, ""}};
  house.upper_walls = {wall};
  Chimney chimney;
  chimney.name = "chimney";
  chimney.x = 4000.0;
  chimney.width = 1300.0;
  chimney.projection = 350.0;
  chimney.height = 2500.0;
  chimney.stack_width = 900.0;
  chimney.stack_depth = 450.0;
  chimney.stack_height = 1200.0;
  chimney.solid = 0.75;
  chimney.share = 0.5;
  chimney.unit_weight = 18e-6;
  house.chimneys = {chimney};
  house.contents = {{"bath", "floor", 1500.0, 700.0, 600.0, 3.5 * kN}};
  return house;
}

TEST(TakeDown, NothingComesOfNoHouse) {
  const TakeDown taken = take_down({});
  EXPECT_TRUE(taken.lines.empty());
  EXPECT_TRUE(taken.loads.empty());
  EXPECT_EQ(taken.total().characteristic(), 0.0);
}

// 3.8 m x 5.2 m = 19.76 m2, half of it; by layers 0.13 and 0.15, imposed 1.5 kN/m2.
TEST(TakeDown, AFloorBringsItsShareLayerByLayer) {
  House house;
  house.floors = {plain_floor()};
  const TakeDown taken = take_down(house);
  ASSERT_EQ(taken.lines.size(), 3U);
  EXPECT_EQ(taken.lines[0].item, "boards, 22 mm");
  EXPECT_EQ(taken.lines[0].working, "3.8 m x 5.2 m x 1/2");
  EXPECT_EQ(taken.lines[0].source, "a");
  EXPECT_DOUBLE_EQ(taken.lines[0].quantity, 19.76 * m2);
  EXPECT_EQ(taken.lines[0].share, 0.5);
  EXPECT_NEAR(taken.lines[0].total, 1.2844 * kN, 1e-6);
  EXPECT_EQ(taken.lines[1].item, "joists");
  EXPECT_EQ(taken.lines[2].item, "imposed load, domestic");
  EXPECT_EQ(taken.lines[2].action, Action::floor_imposed);
  EXPECT_NEAR(taken.lines[2].total, 14.82 * kN, 1e-6);
  ASSERT_EQ(taken.loads.size(), 1U);
  EXPECT_TRUE(taken.loads[0].line);
  EXPECT_EQ(taken.loads[0].floor, "floor");
  EXPECT_EQ(taken.loads[0].level, 2600.0);
  EXPECT_EQ(taken.loads[0].x.from, 500.0);
  EXPECT_NEAR(taken.loads[0].sums.dead, 0.28 * 9.88 * kN, 1e-6);
}

TEST(TakeDown, JoistsAlongTheWallBringAStripOnly) {
  House house = whole_house();
  house.floors.erase(house.floors.begin());
  house.floors[0].share = 1.0;
  house.partitions.clear();
  house.contents.clear();
  const TakeDown taken = take_down(house);
  EXPECT_EQ(taken.lines[0].working, "0.4 m x 5.2 m");
  EXPECT_NEAR(taken.loads[0].sums.floor_imposed, 0.4 * 5.2 * (1.5 + 0.8) * kN, 1e-6);
}

// 2.0 m x 2.4 m - 1.5 m2 = 3.3 m2 at 0.5 kN/m2, a quarter of the way over: three quarters of it.
TEST(TakeDown, APartitionAlongTheWallGoesToItByItsLever) {
  House house;
  house.floors = {plain_floor()};
  house.partitions = {plain_partition(PartitionRun::along_wall)};
  house.partitions[0].openings = 1.5 * m2;
  const TakeDown taken = take_down(house);
  const TakeDownLine& line = taken.lines.back();
  EXPECT_EQ(line.working, "(2 m x 2.4 m - 1.5 m2) x (1 - 0.95/3.8)");
  EXPECT_EQ(line.share, 0.75);
  EXPECT_NEAR(line.total, 3.3 * 0.5 * 0.75 * kN, 1e-6);
  const TakenDown& load = taken.loads.back();
  EXPECT_TRUE(load.line);
  EXPECT_EQ(load.level, 2600.0);
  EXPECT_EQ(load.floor, "floor");
  EXPECT_EQ(load.x.from, 1000.0);
  EXPECT_EQ(load.x.to, 3000.0);
}

// Its middle is 0.95 + 1.9/2 = 1.9 m in, half way: half of 1.9 m x 2.4 m x 0.5 kN/m2.
TEST(TakeDown, APartitionAcrossTheWallIsALoadAtAPoint) {
  House house;
  house.floors = {plain_floor()};
  house.partitions = {plain_partition(PartitionRun::across_wall)};
  const TakeDown taken = take_down(house);
  EXPECT_EQ(taken.lines.back().working, "1.9 m x 2.4 m x (1 - (0.95 + 1.9/2)/3.8)");
  EXPECT_NEAR(taken.lines.back().total, 1.9 * 2.4 * 0.5 * 0.5 * kN, 1e-6);
  const TakenDown& load = taken.loads.back();
  EXPECT_FALSE(load.line);
  EXPECT_EQ(load.x.from, 2300.0);
  EXPECT_EQ(load.x.to, 2700.0);
}

// Two halves of a partition, and one in one piece, bring the same moment about the far bearing.
TEST(TakeDown, APartitionAcrossMayBeCutInTwo) {
  House whole;
  whole.floors = {plain_floor()};
  whole.partitions = {plain_partition(PartitionRun::across_wall)};
  House halves = whole;
  halves.partitions[0].length = 800.0;
  halves.partitions.push_back(whole.partitions[0]);
  halves.partitions[1].distance += 800.0;
  halves.partitions[1].length -= 800.0;
  EXPECT_NEAR(take_down(halves).total().dead, take_down(whole).total().dead, 1e-6);
}

TEST(TakeDown, ContentsAreImposedAndGoByTheirLever) {
  const TakeDown taken = take_down(whole_house());
  const TakeDownLine& line = taken.lines.back();
  EXPECT_EQ(line.element, "bath");
  EXPECT_EQ(line.working, "1 x (1 - 0.7/3.8)");
  EXPECT_EQ(line.action, Action::floor_imposed);
  EXPECT_NEAR(line.total, 3.5 * (1.0 - 0.7 / 3.8) * kN, 1e-6);
}

// Slope area is plan area / cos 60 = twice it.
TEST(TakeDown, CoveringsWeighByTheSlopeAndCeilingSnowAndAccessByThePlan) {
  const TakeDown taken = take_down(house_of(plain_roof()));
  ASSERT_EQ(taken.loads.size(), 1U);
  const ActionSums& sums = taken.loads[0].sums;
  EXPECT_NEAR(sums.dead, (7.5 * 2.0 * 0.8 + 7.5 * 0.25) * kN, 1e-6);
  EXPECT_NEAR(sums.roof_access, 7.5 * 0.6 * kN, 1e-6);
  EXPECT_NEAR(sums.snow, 7.5 * 0.4 * kN, 1e-6);
  EXPECT_EQ(taken.lines[0].working, "3 m x 5 m x 1/2 / cos 60 deg");
  EXPECT_TRUE(taken.loads[0].follows_top);
}

TEST(TakeDown, TheWallHasAllOfAnOverhangButNoCeilingUnderIt) {
  Roof roof = plain_roof();
  roof.overhang = 400.0;
  const TakeDown taken = take_down(house_of(roof));
  EXPECT_EQ(taken.lines[0].working, "(3 m x 1/2 + 0.4 m) x 5 m / cos 60 deg");
  EXPECT_NEAR(taken.lines[0].total, 1.9 * 5.0 * 2.0 * 0.8 * kN, 1e-6);
  EXPECT_NEAR(taken.lines[1].total, 1.5 * 5.0 * 0.25 * kN, 1e-6);
  EXPECT_NEAR(taken.loads[0].sums.snow, 1.9 * 5.0 * 0.4 * kN, 1e-6);
}

TEST(TakeDown, APurlinIsALoadOfItsOwnAndRaftersThatBearElsewhereAreNone) {
  Roof roof = plain_roof();
  roof.run = 0.0;
  roof.purlins = {{"purlin", 2000.0, 5000.0, 200.0, 1750.0, 3600.0, 0.5}};
  const TakeDown taken = take_down(house_of(roof));
  ASSERT_EQ(taken.loads.size(), 1U);
  EXPECT_EQ(taken.loads[0].element, "purlin");
  EXPECT_FALSE(taken.loads[0].line);
  EXPECT_EQ(taken.loads[0].level, 5000.0);
  EXPECT_EQ(taken.loads[0].x.from, 1900.0);
  EXPECT_EQ(taken.lines[0].working, "1.75 m x 3.6 m x 1/2 / cos 60 deg");
  EXPECT_NEAR(taken.loads[0].sums.dead, 3.15 * (2.0 * 0.8 + 0.25) * kN, 1e-6);
}

// Breast 1.3 x 0.35 x 2.5 = 1.1375 m3, stack 0.9 x 0.45 x 1.2 = 0.486 m3; three quarters masonry at
// 18 kN/m3, half of it on this wall.
TEST(TakeDown, AChimneyIsItsBreastAndItsStack) {
  House house;
  house.chimneys = whole_house().chimneys;
  const TakeDown taken = take_down(house);
  ASSERT_EQ(taken.lines.size(), 2U);
  EXPECT_EQ(taken.lines[0].working, "1.3 m x 0.35 m x 2.5 m x 0.75 x 1/2");
  EXPECT_EQ(taken.lines[0].measure, Measure::volume);
  EXPECT_NEAR(taken.lines[0].total, 1.1375 * 0.75 * 18.0 * 0.5 * kN, 1e-6);
  EXPECT_NEAR(taken.lines[1].total, 0.486 * 0.75 * 18.0 * 0.5 * kN, 1e-6);
  EXPECT_EQ(taken.loads[0].x.from, 3350.0);
  EXPECT_EQ(taken.loads[0].x.to, 4650.0);
  house.chimneys[0].stack_height = 0.0;
  EXPECT_EQ(take_down(house).lines.size(), 1U);
}

TEST(TakeDown, EveryWorkingComesToTheQuantityAndShareBesideIt) {
  const TakeDown taken = take_down(whole_house());
  EXPECT_GT(taken.lines.size(), 20U);
  for (const TakeDownLine& line : taken.lines) {
    const double amount = line.quantity * line.share / size_of(line.measure);
    EXPECT_NEAR(Reckoner(line.working).value(), amount, 1e-9 * amount) << line.working;
    EXPECT_DOUBLE_EQ(line.total, line.quantity * line.unit_load * line.share) << line.working;
  }
}

TEST(TakeDown, LinesAreGroupedInTheOrderOfTheLoadsAndAddUpToThem) {
  const TakeDown taken = take_down(whole_house());
  std::size_t next = 0;
  ActionSums total;
  for (const TakenDown& load : taken.loads) {
    double sum = 0.0;
    const std::size_t first = next;
    for (; next < taken.lines.size() && taken.lines[next].element == load.element; ++next)
      sum += taken.lines[next].total;
    EXPECT_GT(next, first) << load.element;
    EXPECT_DOUBLE_EQ(
        sum, load.sums.dead + load.sums.floor_imposed + load.sums.roof_access + load.sums.snow)
        << load.element;
    total.dead += load.sums.dead;
    total.snow += load.sums.snow;
  }
  EXPECT_EQ(next, taken.lines.size());
  EXPECT_DOUBLE_EQ(taken.total().dead, total.dead);
  EXPECT_DOUBLE_EQ(taken.total().snow, total.snow);
}

TEST(TakeDown, WhatWeighsTwiceBringsTwice) {
  House heavy = whole_house();
  for (Floor& floor : heavy.floors)
    for (Layer& layer : floor.build_up) layer.weight *= 2.0;
  const TakeDown once = take_down(whole_house());
  const TakeDown twice = take_down(heavy);
  EXPECT_DOUBLE_EQ(twice.loads[0].sums.dead, 2.0 * once.loads[0].sums.dead);
  EXPECT_EQ(twice.loads[0].sums.floor_imposed, once.loads[0].sums.floor_imposed);
}

TEST(TakeDown, IsAmongTheAnswersOfAJob) {
  JobResult result;
  result.job.house = whole_house();
  add_beam_and_site(result);
  EXPECT_EQ(result.take_down.loads.size(), take_down(whole_house()).loads.size());
}

TEST(ActionSums, SnowAndAccessToTheRoofNeverActTogether) {
  EXPECT_EQ((ActionSums{10.0, 3.0, 2.0, 1.5}.imposed()), 5.0);
  EXPECT_EQ((ActionSums{10.0, 3.0, 1.0, 1.5}.characteristic()), 14.5);
}

// Access 2.0 with psi_0 0.7, snow 2.5 with 0.5: snow leads and counts most in full (6.10
// and 6.10b), access counts more as a companion (0.7 x 2.0 = 1.40 against 0.5 x 2.5 = 1.25).
TEST(CombinedSums, EachCombinationTakesTheWorseOfSnowAndAccess) {
  const CombinedSums sums = combined({10.0, 1.0, 2.0, 2.5});
  EXPECT_DOUBLE_EQ(sums.service, 13.5);
  EXPECT_DOUBLE_EQ(sums.eq_6_10, 13.5 + 1.5 * (2.5 + 0.7));
  EXPECT_DOUBLE_EQ(sums.eq_6_10a, 13.5 + 1.5 * (0.7 + 1.4));
  EXPECT_DOUBLE_EQ(sums.eq_6_10b, 0.925 * 13.5 + 1.5 * (2.5 + 0.7));
}

TEST(CombinedSums, WhateverIsLargestLeads) {
  EXPECT_DOUBLE_EQ(combined({0.0, 5.0, 0.0, 2.0}).eq_6_10, 1.5 * (5.0 + 0.5 * 2.0));
  EXPECT_DOUBLE_EQ(combined({0.0, 2.0, 0.0, 5.0}).eq_6_10, 1.5 * (5.0 + 0.7 * 2.0));
  EXPECT_DOUBLE_EQ(combined({0.0, 2.0, 5.0, 0.0}).eq_6_10, 1.5 * (5.0 + 0.7 * 2.0));
}

}  // namespace
}  // namespace deadshore::solver
