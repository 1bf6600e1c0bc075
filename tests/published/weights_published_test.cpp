// The built-in weights and imposed loads against the values that their sources publish. Where a
// source gives a range the table must have its heavy end. Sources and how sure:
//   BS 648:1964: read in a public listing, unverified against a bought copy; kg x 9.81 / 1000;
//   EN 1991-1-1 Annex A: reinforced concrete read in public guides, the rest from memory;
//   Circolare 7/2019 Table C8.5.I: read in a public copy;
//   handbook values, UK NA to EN 1991-1-1, EN 1991-1-1 6.3.1.2(8), EN 1991-1-6: from memory,
//   unverified.
// Accepted: the digits given, or for kg/m2 the second decimal of kN/m2.

#include "io/tables/weight_tables.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <string>

namespace deadshore::io {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source bs648{Field::loads, Certainty::read, "BS 648:1964, in a public listing"};
constexpr Source en1991{Field::loads, Certainty::memory, "EN 1991-1-1 Annex A, heavy end"};
constexpr Source handbook{Field::loads, Certainty::memory, "Handbooks, heavy end"};
constexpr Source imposed{Field::loads, Certainty::memory, "UK NA to EN 1991-1-1; EN 1991-1-6"};
constexpr Source circolare{Field::loads, Certainty::read, "Circolare 7/2019 Table C8.5.I"};

struct Published {
  const char* name;
  double from;
  double to;
};

constexpr double kN_per_m3 = 1e-6;
constexpr double kN_per_m2 = 1e-3;
constexpr double g = 9.81e-3;  // kN of a kg

/// Equal but for rounding.
void same(const Source& source, const std::string& what, double theirs, double ours,
          const char* unit) {
  verify({source, what, theirs, ours, 1e-14 * theirs, unit});
}

TEST(WeightsBs648, KilogramsAsListed) {
  const WeightTables tables = built_in_weight_tables();
  const auto unit = [&](const char* name) {
    return tables.material(name).unit_weight.value() / kN_per_m3;
  };
  const auto area = [&](const char* name) {
    return tables.material(name).area_weight.value() / kN_per_m2;
  };
  verify({bs648, "brickwork: weight", 55.0 * g / 0.025, unit("brickwork"), 0.05, "kN/m3"});
  verify({bs648, "brick wall, half brick, no plaster: weight", 55.0 * g * 102.5 / 25.0,
          area("brick wall, half brick, no plaster"), 0.005, "kN/m2"});
  verify({bs648, "brick wall, one brick, no plaster: weight", 55.0 * g * 215.0 / 25.0,
          area("brick wall, one brick, no plaster"), 0.005, "kN/m2"});
  verify({bs648, "gypsum plaster, 13 mm: weight", 22.0 * g, area("gypsum plaster, 13 mm"), 0.005,
          "kN/m2"});
  verify({bs648, "cement render, 13 mm: weight", 30.0 * g, area("cement render, 13 mm"), 0.005,
          "kN/m2"});
  verify({bs648, "screed: weight", 30.0 * g / 0.013, unit("screed"), 0.05, "kN/m3"});
  verify({bs648, "clay plain tiles: weight", 70.0 * g, area("clay plain tiles"), 0.005, "kN/m2"});
  verify({bs648, "slates: weight", 78.0 * g, area("slates"), 0.01, "kN/m2"});
  verify({bs648, "softwood: weight", 590.0 * g, unit("softwood"), 0.005, "kN/m3"});
}

TEST(WeightsEn1991, HeavyEndsOfAnnexA) {
  const WeightTables tables = built_in_weight_tables();
  const Published published[] = {
      {"reinforced concrete", 25.0, 25.0},  // A.1
      {"concrete", 24.0, 24.0},
      {"cement mortar", 19.0, 23.0},
      {"lime-cement mortar", 18.0, 20.0},
      {"lime mortar", 12.0, 18.0},
      {"granite", 27.0, 30.0},  // A.2
      {"sandstone", 21.0, 27.0},
      {"limestone", 20.0, 29.0},
      {"C16 timber", 3.7, 3.7},  // A.3
      {"C24 timber", 4.2, 4.2},
      {"D30 hardwood", 6.4, 6.4},
      {"chipboard", 7.0, 8.0},
      {"oriented strand board", 7.0, 7.0},
      {"steel", 77.0, 78.5},  // A.4
      {"cast iron", 71.0, 72.5},
      {"lead", 112.0, 114.0},
      {"glass", 25.0, 25.0},  // A.5
  };
  for (const Published& value : published)
    same(en1991, value.name, value.to, tables.material(value.name).unit_weight.value() / kN_per_m3,
         "kN/m3");
}

TEST(WeightsCircolare2019, OldBrickInLime) {
  const WeightTables tables = built_in_weight_tables();
  same(circolare, "old brickwork in lime", 18.0,
       tables.material("old brickwork in lime").unit_weight.value() / kN_per_m3, "kN/m3");
}

TEST(WeightsOfHandbooks, HeavyEndsOfWholeFloorsRoofsAndWalls) {
  const WeightTables tables = built_in_weight_tables();
  const Published published[] = {
      {"timber floor with plasterboard ceiling", 0.5, 0.5},
      {"timber floor with lath and plaster ceiling", 0.7, 0.7},
      {"tiled roof overall, on plan", 0.9, 1.1},
      {"slated roof overall, on plan", 0.6, 0.8},
      {"ceiling with joists and insulation", 0.25, 0.25},
      {"plaster a face", 0.22, 0.25},
  };
  for (const Published& value : published)
    same(handbook, value.name, value.to,
         tables.material(value.name).area_weight.value() / kN_per_m2, "kN/m2");
}

// Brick walls by BS 648 lie where handbooks have them, to one decimal: half brick 2.0 to 2.2, one
// brick 4.3 to 4.7.
TEST(WeightsOfHandbooks, BrickWallsByTheirBricksLieInTheirRange) {
  const WeightTables tables = built_in_weight_tables();
  const double half = tables.material("brick wall, half brick, no plaster").area_weight.value();
  EXPECT_NEAR(half, 2.1 * kN_per_m2, 0.15 * kN_per_m2);
  const double one = tables.material("brick wall, one brick, no plaster").area_weight.value();
  EXPECT_NEAR(one, 4.5 * kN_per_m2, 0.25 * kN_per_m2);
}

TEST(ImposedLoadsEn1991, AsInTheNationalAnnexAndFromPart16) {
  const WeightTables tables = built_in_weight_tables();
  struct Use {
    const char* name;
    double load;          // kN/m2
    double concentrated;  // kN
  };
  const Use uses[] = {
      {"domestic", 1.5, 2.0},                    // UK NA Table NA.3
      {"loft with access", 1.5, 2.0},            // UK practice: as domestic where boarded
      {"loft without boards", 0.25, 0.9},        // UK practice
      {"roof, for repair only", 0.6, 0.9},       // UK NA Table NA.7
      {"works personnel", 1.0, 0.0},             // EN 1991-1-6 Table 4.1
      {"movable partitions to 1 kN/m", 0.5, 0},  // EN 1991-1-1 6.3.1.2(8)
      {"movable partitions to 2 kN/m", 0.8, 0},
      {"movable partitions to 3 kN/m", 1.2, 0},
  };
  for (const Use& use : uses) {
    same(imposed, std::string("imposed, ") + use.name, use.load,
         tables.use(use.name).load / kN_per_m2, "kN/m2");
    EXPECT_DOUBLE_EQ(tables.use(use.name).concentrated, use.concentrated * 1e3) << use.name;
  }
}

}  // namespace
}  // namespace deadshore::io
