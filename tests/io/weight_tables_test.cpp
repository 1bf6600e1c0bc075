#include "io/tables/weight_tables.h"

#include "io/error.h"
#include "io/tables/member_tables.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;

std::string refusal(std::string_view text) {
  WeightTables tables;
  try {
    add_weight_tables(text, "own.toml", tables);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

std::string weight_rows(const std::string& rows) {
  return "[[weight_group]]\nsource = \"invented\"\nrows = [\n" + rows + "\n]\n";
}

TEST(WeightTables, TheBuiltInOnesGiveEveryMaterialOneWeightAndASource) {
  const WeightTables tables = built_in_weight_tables();
  EXPECT_GE(tables.materials.size(), 35U);
  EXPECT_GE(tables.uses.size(), 10U);
  for (const WeightRow& row : tables.materials) {
    EXPECT_NE(row.unit_weight.has_value(), row.area_weight.has_value()) << row.name;
    EXPECT_NE(row.source, "") << row.name;
  }
  for (const UseRow& row : tables.uses) EXPECT_NE(row.source, "") << row.name;
}

// A slip of a factor of ten or a unit shows as a material lighter than wool or heavier than lead,
// or as a face heavier than a one-brick wall with plaster on it.
TEST(WeightTables, NothingIsLighterThanWoolOrHeavierThanLead) {
  const WeightTables tables = built_in_weight_tables();
  for (const WeightRow& row : some(tables.materials)) {
    if (row.unit_weight) {
      EXPECT_GE(*row.unit_weight, 0.2e-6) << row.name;
      EXPECT_LE(*row.unit_weight, 114e-6) << row.name;
    } else {
      EXPECT_GE(*row.area_weight, 0.02e-3) << row.name;
      EXPECT_LE(*row.area_weight, 5.2e-3) << row.name;
    }
  }
}

TEST(WeightTables, NamesAreFoundWhateverTheirCaseAndSpaces) {
  const WeightTables tables = built_in_weight_tables();
  EXPECT_DOUBLE_EQ(tables.material("Old brickwork in lime").unit_weight.value(), 18e-6);
  EXPECT_DOUBLE_EQ(tables.material("joists 50x200 at 400").area_weight.value(), 0.15e-3);
  EXPECT_DOUBLE_EQ(tables.use("Domestic").load, 1.5e-3);
  EXPECT_DOUBLE_EQ(tables.use("domestic").concentrated, 2000.0);
  EXPECT_EQ(tables.use("works personnel").concentrated, 0.0);
}

TEST(WeightTables, AnUnknownNameIsAnsweredWithTheNearest) {
  const WeightTables tables = built_in_weight_tables();
  try {
    (void)tables.material("bickwork");
    FAIL() << "found";
  } catch (const UnknownMember& error) {
    EXPECT_EQ(error.nearest(), "brickwork");
    EXPECT_STREQ(error.what(),
                 "found an unknown material \"bickwork\"; the nearest known one is \"brickwork\"");
  }
  EXPECT_THROW((void)tables.use("ballroom"), UnknownMember);
  EXPECT_THROW((void)WeightTables{}.material("brickwork"), UnknownMember);
}

TEST(WeightTables, AFileOfOnesOwnAddsAndReplaces) {
  WeightTables tables = built_in_weight_tables();
  const std::size_t before = tables.materials.size();
  add_weight_tables(weight_rows("{ name = \"Brick Work\", unit_weight = 17.2 },\n"
                                "{ name = \"thatch\", area_weight = 0.45 }") +
                        "[[imposed_group]]\nsource = \"agreed\"\nrows = [{ name = \"domestic\", "
                        "load = 2.0 }]\n",
                    "own.toml", tables);
  EXPECT_EQ(tables.materials.size(), before + 1);
  EXPECT_DOUBLE_EQ(tables.material("brickwork").unit_weight.value(), 17.2e-6);
  EXPECT_EQ(tables.material("brickwork").source, "invented");
  EXPECT_DOUBLE_EQ(tables.material("thatch").area_weight.value(), 0.45e-3);
  EXPECT_DOUBLE_EQ(tables.use("domestic").load, 2e-3);
  EXPECT_EQ(tables.use("domestic").concentrated, 0.0);
}

TEST(WeightTables, WhatIsWrongInAFileIsNamedWithItsLine) {
  EXPECT_THAT(refusal("[[weight_grp]]\n"),
              HasSubstr("own.toml:1: weight_grp: found an unknown key; the nearest known one is "
                        "\"weight_group\""));
  EXPECT_THAT(
      refusal(weight_rows("{ name = \"X\" }")),
      HasSubstr("own.toml:4: weight_group[0].rows[0]: found no weight; either unit_weight"));
  EXPECT_THAT(refusal(weight_rows("{ name = \"X\", unit_weight = 18, area_weight = 0.2 }")),
              HasSubstr("found a weight by volume and one by area"));
  EXPECT_THAT(refusal(weight_rows("{ name = \"X\", unit_weight = -18 }")),
              HasSubstr("weight_group[0].rows[0].unit_weight: found another value"));
  EXPECT_THAT(refusal("[[imposed_group]]\nsource = \"s\"\nrows = [ { name = \"X\" } ]\n"),
              HasSubstr("imposed_group[0].rows[0].load: found nothing"));
  EXPECT_THAT(refusal("[[weight_group]]\nrows = [ { name = \"X\", unit_weight = 18 } ]\n"),
              HasSubstr("weight_group[0].source: found nothing"));
  EXPECT_THAT(refusal("rows = ["), HasSubstr("what is not TOML"));
}

TEST(WeightTables, ARefusedFileLeavesTheTablesAsTheyWere) {
  WeightTables tables = built_in_weight_tables();
  const std::size_t before = tables.materials.size();
  EXPECT_THROW(
      add_weight_tables(weight_rows("{ name = \"A\", unit_weight = 1 },\n{ name = \"B\" }"),
                        "own.toml", tables),
      InputError);
  EXPECT_EQ(tables.materials.size(), before);
}

}  // namespace
}  // namespace deadshore::io
