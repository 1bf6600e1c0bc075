// The take-down of an invented house, worked by hand line by line below, and its combinations after
// EN 1990 6.4.3.2 with the values of the UK NA (psi_0 of floors and snow read in public guides,
// that of access to roofs from memory, unverified). Roof loads: UK NA to EN 1991-1-1 Table NA.7, EN
// 1991-1-3 Table 5.2 and UK NA to it NA.2.8, all from memory, unverified. That joists simply
// supported share a load by its lever is statics. Accepted: 0.01 kN, rounded.

#include "solver/loads/roof_loads.h"
#include "solver/loads/take_down.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <iterator>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source statics{Field::loads, Certainty::by_hand,
                         "Take-down of an invented house, line by line"};
constexpr Source en1990{Field::loads, Certainty::by_hand,
                        "EN 1990 6.4.3.2, UK NA as in public guides"};
constexpr Source snow{Field::loads, Certainty::memory, "UK NA to EN 1991-1-3 NA.2.8"};

constexpr double kN = 1e3;
constexpr double kN_per_m2 = 1e-3;
constexpr double last_digit = 0.005 * kN;

Layer layer(const std::string& material, double weight) {
  return {material, 0.0, weight * kN_per_m2, "invented"};
}

Floor floor_of(const std::string& name, double level, mesh::Interval x, double span) {
  Floor floor;
  floor.name = name;
  floor.level = level;
  floor.x = x;
  floor.span = span;
  floor.build_up = {layer("boards", 0.13), layer("joists", 0.15), layer("lath and plaster", 0.46)};
  floor.imposed = {"domestic", 1.5 * kN_per_m2, ""};
  return floor;
}

std::vector<Floor> floors() {
  const Floor bedroom = floor_of("bedroom floor", 2600.0, {400.0, 5600.0}, 3800.0);
  Floor landing = floor_of("landing", 2600.0, {0.0, 6000.0}, 400.0);
  landing.joists = JoistDirection::along_wall;
  landing.movable_partitions = 0.8 * kN_per_m2;
  Floor loft = floor_of("loft", 5000.0, {400.0, 5600.0}, 3800.0);
  loft.build_up = {layer("ceiling", 0.25)};
  loft.imposed = {"loft without boards", 0.25 * kN_per_m2, ""};
  return {bedroom, landing, loft};
}

Roof roof() {
  Roof roof;
  roof.name = "front slope";
  roof.level = 5200.0;
  roof.x = {0.0, 6000.0};
  roof.pitch = 35.0;
  roof.run = 2100.0;
  roof.overhang = 300.0;
  roof.on_slope = {layer("clay plain tiles", 0.69), layer("battens", 0.05), layer("felt", 0.05),
                   layer("rafters", 0.08)};
  roof.access = roof_access_load(35.0);
  roof.snow = snow_shape_coefficient(35.0) * ground_snow_uk(3, 100e3);
  roof.purlins = {{"purlin", 3000.0, 5000.0, 200.0, 1800.0, 3600.0}};
  return roof;
}

std::vector<Partition> partitions() {
  Partition along;
  along.name = "bathroom partition";
  along.floor = "bedroom floor";
  along.distance = 900.0;
  along.x = {1000.0, 4000.0};
  along.height = 2400.0;
  along.openings = 1.6e6;
  along.build_up = {layer("studs and plasterboard", 0.5)};
  Partition across;
  across.name = "bedroom partition";
  across.floor = "bedroom floor";
  across.run = PartitionRun::across_wall;
  across.distance = 900.0;
  across.place = 2000.0;
  across.length = 2000.0;
  across.bearing = 400.0;
  across.height = 2400.0;
  across.build_up = {layer("studs, lath and plaster", 1.1)};
  return {along, across};
}

House invented_house() {
  House house;
  house.floors = floors();
  house.roofs = {roof()};
  house.partitions = partitions();
  UpperWall wall;
  wall.name = "parapet wall";
  wall.level = 5200.0;
  wall.x = {0.0, 6000.0};
  wall.height = 1500.0;
  wall.openings = 1.2e6;
  wall.build_up = {layer("one brick", 4.64), layer("plaster", 0.25), layer("plaster", 0.25)};
  house.upper_walls = {wall};
  Chimney chimney;
  chimney.name = "chimney";
  chimney.x = 5000.0;
  chimney.level = 2600.0;
  chimney.width = 1200.0;
  chimney.projection = 350.0;
  chimney.height = 2500.0;
  chimney.stack_width = 900.0;
  chimney.stack_depth = 450.0;
  chimney.stack_height = 1200.0;
  chimney.solid = 0.75;
  chimney.unit_weight = 18e-6;
  house.chimneys = {chimney};
  house.contents = {{"bath", "bedroom floor", 2400.0, 700.0, 600.0, 3.5 * kN}};
  return house;
}

// By hand, kN, m:
//
// Bedroom floor, half of 3.8 x 5.2 = 9.88 m2:
//   boards 9.88 x 0.13 = 1.284, joists x 0.15 = 1.482, lath and plaster x 0.46 = 4.545: dead 7.31
//   imposed x 1.5 = 14.82
// Landing, half of a strip of 0.4 x 6.0 = 1.20 m2:
//   dead x (0.13 + 0.15 + 0.46) = 0.89; imposed x (1.5 + 0.8) = 2.76
// Loft, 9.88 m2: ceiling x 0.25 = 2.47; imposed x 0.25 = 2.47
// Front slope, (2.1/2 + 0.3) x 6.0 = 8.10 m2 on plan, / cos 35 = 8.10 / 0.81915 = 9.888 m2:
//   dead 9.888 x (0.69 + 0.05 + 0.05 + 0.08) = 9.888 x 0.87 = 8.60
//   access 8.10 x 0.6 x 25/30 = 4.05
//   snow 8.10 x 0.8 x 25/30 x 0.50 = 2.70
// Purlin, half of 1.8 x 3.6 = 3.24 m2 on plan, / cos 35 = 3.955 m2:
//   dead 3.955 x 0.87 = 3.44; access 3.24 x 0.5 = 1.62; snow 3.24 x 0.3333 = 1.08
// Bathroom partition, 3.0 x 2.4 - 1.6 = 5.6 m2 x 0.5 = 2.80, x (1 - 0.9/3.8) = x 0.76316: 2.14
// Bedroom partition, 2.0 x 2.4 = 4.8 m2 x 1.1 = 5.28, its middle at 0.9 + 1.0 = 1.9 of 3.8: 2.64
// Parapet wall, 6.0 x 1.5 - 1.2 = 7.8 m2 x (4.64 + 0.25 + 0.25) = 7.8 x 5.14 = 40.09
// Chimney: breast 1.2 x 0.35 x 2.5 = 1.05 m3, stack 0.9 x 0.45 x 1.2 = 0.486 m3, 3/4 masonry at 18:
//   1.05 x 13.5 = 14.18, 0.486 x 13.5 = 6.56: 20.74
// Bath 3.5 x (1 - 0.7/3.8) = 3.5 x 0.81579 = 2.86, imposed
struct ByHand {
  const char* element;
  ActionSums sums;  // kN
  bool line;
};
const ByHand by_hand[] = {
    {"bedroom floor", {7.31, 14.82, 0.0, 0.0}, true},
    {"landing", {0.89, 2.76, 0.0, 0.0}, true},
    {"loft", {2.47, 2.47, 0.0, 0.0}, true},
    {"front slope", {8.60, 0.0, 4.05, 2.70}, true},
    {"purlin", {3.44, 0.0, 1.62, 1.08}, false},
    {"bathroom partition", {2.14, 0.0, 0.0, 0.0}, true},
    {"bedroom partition", {2.64, 0.0, 0.0, 0.0}, false},
    {"parapet wall", {40.09, 0.0, 0.0, 0.0}, true},
    {"chimney", {20.74, 0.0, 0.0, 0.0}, false},
    {"bath", {0.0, 2.86, 0.0, 0.0}, false},
};

TEST(TakeDownByHand, EveryElementOfAHouse) {
  const TakeDown taken = take_down(invented_house());
  ASSERT_EQ(taken.loads.size(), std::size(by_hand));
  for (std::size_t i = 0; i < taken.loads.size(); ++i) {
    const ActionSums& sums = taken.loads[i].sums;
    const ByHand& due = by_hand[i];
    EXPECT_EQ(taken.loads[i].element, due.element);
    EXPECT_EQ(taken.loads[i].line, due.line) << due.element;
    const std::string element = std::string("house, ") + due.element;
    if (due.sums.dead > 0.0)
      verify({statics, element + ": dead", due.sums.dead, sums.dead / kN, last_digit / kN, "kN"});
    else
      EXPECT_NEAR(sums.dead, 0.0, last_digit) << due.element;
    EXPECT_NEAR(sums.floor_imposed, due.sums.floor_imposed * kN, last_digit) << due.element;
    EXPECT_NEAR(sums.roof_access, due.sums.roof_access * kN, last_digit) << due.element;
    EXPECT_NEAR(sums.snow, due.sums.snow * kN, last_digit) << due.element;
  }
}

// Dead 7.3112 + 0.8880 + 2.4700 + 8.6028 + 3.4411 + 2.1368 + 2.6400 + 40.0920 + 20.7360 = 88.3179
// Floors 14.8200 + 2.7600 + 2.4700 + 2.8553 = 22.9053; access 4.05 + 1.62 = 5.67; snow 3.78
// Service: 88.318 + 22.905 + 5.67 (access above snow) = 116.89
// 6.10:  1.35 x 88.318 + 1.5 x (22.905 + 0.7 x 5.67) = 119.229 + 40.311 = 159.54
// 6.10a: 119.229 + 1.5 x (0.7 x 22.905 + 0.7 x 5.67) = 119.229 + 30.004 = 149.23
// 6.10b: 0.925 x 119.229 + 40.311 = 110.287 + 40.311 = 150.60
TEST(TakeDownByHand, TotalAndCombinationsOfAHouse) {
  const ActionSums total = take_down(invented_house()).total();
  verify({statics, "house, all: dead", 88.32, total.dead / kN, last_digit / kN, "kN"});
  verify({statics, "house, all: imposed on floors", 22.91, total.floor_imposed / kN,
          last_digit / kN, "kN"});
  verify({statics, "house, all: access to roofs", 5.67, total.roof_access / kN, last_digit / kN,
          "kN"});
  verify({statics, "house, all: snow", 3.78, total.snow / kN, last_digit / kN, "kN"});
  verify({statics, "house, all: characteristic", 116.89, total.characteristic() / kN,
          last_digit / kN, "kN"});
  const CombinedSums sums = combined(total);
  EXPECT_NEAR(sums.service, 116.89 * kN, last_digit);
  verify({en1990, "house, all: 6.10", 159.54, sums.eq_6_10 / kN, last_digit / kN, "kN"});
  verify({en1990, "house, all: 6.10a", 149.23, sums.eq_6_10a / kN, last_digit / kN, "kN"});
  verify({en1990, "house, all: 6.10b", 150.60, sums.eq_6_10b / kN, last_digit / kN, "kN"});
}

// EN 1990 6.4.3.2 with the UK NA (read in public guides), G 15.58, floors 3.0, snow 1.5 kN/m:
// 6.10 1.35 x 15.58 + 1.5 x 3.0 + 1.5 x 0.5 x 1.5 = 26.66; 6.10a 25.31; 6.10b 25.08; service 20.08.
TEST(TakeDownEn1990, AFloorWithSnowAbove) {
  const CombinedSums sums = combined({15.58, 3.0, 0.0, 1.5});
  verify({en1990, "floor with snow above, by the take-down: 6.10", 26.66, sums.eq_6_10, 0.005,
          "kN/m"});
  verify({en1990, "floor with snow above, by the take-down: 6.10a", 25.31, sums.eq_6_10a, 0.005,
          "kN/m"});
  verify({en1990, "floor with snow above, by the take-down: 6.10b", 25.08, sums.eq_6_10b, 0.005,
          "kN/m"});
  verify({en1990, "floor with snow above, by the take-down: unfactored", 20.08, sums.service, 0.005,
          "kN/m"});
}

// UK NA to EN 1991-1-3 NA.2.8, from memory, unverified: zone 3, 100 m: 0.15 + 0.35 = 0.50 kN/m2.
TEST(RoofLoadsUk, SnowOnTheGround) {
  verify({snow, "snow on the ground, zone 3, 100 m", 0.50, ground_snow_uk(3, 100e3) / kN_per_m2,
          0.005, "kN/m2"});
}

}  // namespace
}  // namespace deadshore::solver
