// How far apart needles stand: 0.9 to 1.2 m. Common practice, no source. An ordinary house of two
// storeys, invented, its weights from the tables of io/data, must be held by a needle on two props
// at the wide end of that, and must not be at twice as far, or the sum would not be that of the
// trade. Safe loads of props: EN 1065 and CIRIA TN79 as in solver/members/prop.h.

#include "io/tables/member_tables.h"
#include "io/tables/weight_tables.h"
#include "solver/loads/roof_loads.h"
#include "solver/loads/take_down.h"
#include "solver/members/prop.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <limits>
#include <string_view>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source trade{Field::damage, Certainty::practice, "The trade: needles 0.9 to 1.2 m apart"};

Layer by_area(const io::WeightTables& tables, std::string_view name) {
  const io::WeightRow& row = tables.material(name);
  return {row.name, 0.0, row.area_weight.value(), row.source};
}

/// Two storeys, floor and roof bearing on 1 m of the wall.
House ordinary_house() {
  const io::WeightTables tables = io::built_in_weight_tables();
  const mesh::Interval one_metre{0.0, 1000.0};
  House house;
  Floor& floor = house.floors.emplace_back();
  floor.name = "bedroom floor";
  floor.x = one_metre;
  floor.span = 4000.0;
  floor.build_up = {by_area(tables, "lath and plaster"), by_area(tables, "joists 50 x 200 at 400")};
  floor.imposed = {"domestic", tables.use("domestic").load, ""};
  Roof& roof = house.roofs.emplace_back();
  roof.name = "roof";
  roof.x = one_metre;
  roof.pitch = 35.0;
  roof.run = 4000.0;
  roof.on_slope = {by_area(tables, "clay plain tiles")};
  roof.access = roof_access_load(roof.pitch);
  UpperWall& wall = house.upper_walls.emplace_back();
  wall.name = "brickwork over the soffit";
  wall.x = one_metre;
  wall.height = 3000.0;
  wall.build_up = {{"brickwork", 215.0, 215.0 * tables.material("brickwork").unit_weight.value(),
                    tables.material("brickwork").source}};
  return house;
}

/// Everything above the stretch of wall that goes to one needle, shared by its two props, N.
double on_each_prop(double spacing) {
  return 0.5 * take_down(ordinary_house()).total().characteristic() * spacing / 1000.0;
}

TEST(NeedleSpacing, OfTheTradeIsHeldByTwoPropsAndTwiceOfItIsNot) {
  constexpr double extension = 2200.0;
  const double prop = safe_load(io::built_in_member_tables().prop("B35"), extension).load;
  constexpr double any = std::numeric_limits<double>::infinity();
  verify({trade,
          "ordinary house, needles 0.9 m apart: load of a prop over its safe load",
          0.8,
          on_each_prop(900.0) / prop,
          {any, 0.0},
          "-"});
  verify({trade,
          "ordinary house, needles 1.2 m apart: load of a prop over its safe load",
          1.0,
          on_each_prop(1200.0) / prop,
          {any, 0.0},
          "-"});
  verify({trade,
          "ordinary house, needles 2.4 m apart: load of a prop over its safe load",
          1.0,
          on_each_prop(2400.0) / prop,
          {0.0, any},
          "-"});
}

}  // namespace
}  // namespace deadshore::solver
