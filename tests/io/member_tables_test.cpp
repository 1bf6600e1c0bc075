#include "io/tables/member_tables.h"

#include "io/error.h"
#include "solver/members/prop.h"
#include "tests/io/scratch_folder.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;

std::string refusal(std::string_view text) {
  MemberTables tables;
  try {
    add_member_tables(text, "own.toml", tables);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

std::string steel_rows(const std::string& rows) {
  return "[[steel_group]]\nkind = \"I\"\nsource = \"invented\"\nrows = [\n" + rows + "\n]\n";
}

// Reading them also compares every steel section with its published values, within 1%.
TEST(MemberTables, TheBuiltInOnesAreReadAndSound) {
  const MemberTables tables = built_in_member_tables();
  EXPECT_GT(tables.steel.size(), 150U);
  EXPECT_GT(tables.timber.size(), 5U);
  EXPECT_GT(tables.props.size(), 30U);
  EXPECT_GT(tables.grounds.size(), 10U);
}

TEST(MemberTables, EveryRowSaysWhereItComesFrom) {
  const MemberTables tables = built_in_member_tables();
  for (const SteelRow& row : some(tables.steel)) EXPECT_NE(row.source, "");
  for (const TimberRow& row : some(tables.timber)) EXPECT_NE(row.source, "");
  for (const solver::Prop& prop : some(tables.props)) EXPECT_NE(prop.source, "");
  for (const solver::Ground& ground : some(tables.grounds)) EXPECT_NE(ground.source, "");
}

TEST(MemberTables, NamesAreFoundWhateverTheirCaseAndSpaces) {
  const MemberTables tables = built_in_member_tables();
  EXPECT_EQ(tables.steel_section("uc152x152x23").section.tf, 6.8);
  EXPECT_EQ(tables.steel_section("IPE330").section.r, 18.0);
  EXPECT_EQ(tables.timber_class("c24").strength_class.f_m_k, 24.0);
  EXPECT_EQ(tables.prop("b35").longest, 3500.0);
  EXPECT_DOUBLE_EQ(tables.ground("stiff clay").presumed_bearing.value(), 0.150);
}

TEST(MemberTables, AnUnknownNameIsAnsweredWithTheNearest) {
  const MemberTables tables = built_in_member_tables();
  try {
    (void)tables.steel_section("UC 152x152x24");
    FAIL() << "found";
  } catch (const UnknownMember& error) {
    EXPECT_EQ(error.nearest(), "UC 152x152x23");
    EXPECT_STREQ(error.what(),
                 "found an unknown steel section \"UC 152x152x24\"; the nearest known one is \"UC "
                 "152x152x23\"");
  }
  EXPECT_THROW((void)tables.prop("Z99"), UnknownMember);
  EXPECT_THROW((void)MemberTables{}.ground("peat"), UnknownMember);
}

TEST(MemberTables, NothingIsPresumedOfSoftAndMadeGround) {
  const MemberTables tables = built_in_member_tables();
  for (const char* name : {"soft clay", "made ground", "peat", "loose sand"})
    EXPECT_FALSE(tables.ground(name).presumed_bearing.has_value()) << name;
}

TEST(MemberTables, EveryPropHasASafeLoadInTheMiddleOfItsRange) {
  for (const solver::Prop& prop : built_in_member_tables().props)
    EXPECT_GT(solver::safe_load(prop, 0.5 * (prop.shortest + prop.longest)).load, 0.0) << prop.name;
}

TEST(MemberTables, AFileOfOnesOwnAddsAndReplaces) {
  const test::ScratchFolder folder;
  const auto path = folder.path() / "own.toml";
  std::ofstream(path) << steel_rows(
                             R"({ name = "own 160", h = 160, b = 100, tw = 6, tf = 10, r = 8 },
         { name = "ipe 330", h = 331, b = 160, tw = 7.5, tf = 11.5, r = 18 })")
                      << R"([[prop_group]]
source = "invented"
outer = [60.3, 3.2]
inner = [48.3, 3.2]
[[prop_group.rows]]
name = "own prop"
shortest = 2000
longest = 3500
capacity = { source = "sheet", extension = [2000, 3500], load = [20.0, 8.0] }
)";
  MemberTables tables = built_in_member_tables();
  const std::size_t before = tables.steel.size();
  add_member_file(path, tables);
  EXPECT_EQ(tables.steel.size(), before + 1);
  EXPECT_EQ(tables.steel_section("own 160").section.h, 160.0);
  EXPECT_EQ(tables.steel_section("IPE 330").section.h, 331.0);
  EXPECT_DOUBLE_EQ(solver::safe_load(tables.prop("own prop"), 2750.0).load, 14e3);
}

TEST(MemberTables, WhatIsWrongInAFileIsNamedWithItsLine) {
  EXPECT_THAT(refusal("[[steel_grp]]\n"),
              HasSubstr("own.toml:1: steel_grp: found an unknown key; the nearest known one is "
                        "\"steel_group\""));
  EXPECT_THAT(refusal(steel_rows("{ name = \"X\", h = 160, b = 100, tw = 6, tf = -1, r = 8 }")),
              HasSubstr("own.toml:5: steel_group[0].rows[0].tf: found another value; a number "
                        "above 0 is due"));
  EXPECT_THAT(refusal(steel_rows("{ name = \"X\", h = 160, b = 100, tw = 6, tf = 80, r = 8 }")),
              HasSubstr("flanges, web and root radii must fit"));
  EXPECT_THAT(refusal(steel_rows("{ name = \"X\", h = 160, b = 100, tw = 6, tf = 10 }")),
              HasSubstr("steel_group[0].rows[0].r: found nothing"));
  EXPECT_THAT(refusal("[[steel_group]]\nkind = \"T\"\nsource = \"s\"\nrows = [ {} ]\n"),
              HasSubstr("found \"T\"; one of \"I\", \"channel\""));
  EXPECT_THAT(refusal("[[ground_group]]\nrows = 3\nsource = \"s\"\n"),
              HasSubstr("a list of tables is due"));
  EXPECT_THAT(refusal("rows = ["), HasSubstr("what is not TOML"));
}

TEST(MemberTables, PublishedValuesThatTheDimensionsDoNotGiveAreRefused) {
  EXPECT_THAT(
      refusal(steel_rows("{ name = \"X\", h = 152.4, b = 152.2, tw = 5.8, tf = 6.8, r = 7.6, "
                         "published = [29.2, 1250, 174] }")),
      HasSubstr("found 174 as modulus in cm3; the dimensions give 164"));
}

TEST(MemberTables, ARefusedFileLeavesTheTablesAsTheyWere) {
  MemberTables tables = built_in_member_tables();
  const std::size_t before = tables.steel.size();
  EXPECT_THROW(
      add_member_tables(steel_rows("{ name = \"A\", h = 160, b = 100, tw = 6, tf = 10, r = 8 },\n"
                                   "{ name = \"B\", h = 0, b = 100, tw = 6, tf = 10, r = 8 }"),
                        "own.toml", tables),
      InputError);
  EXPECT_EQ(tables.steel.size(), before);
}

TEST(MemberTables, AMissingFileIsRefused) {
  MemberTables tables;
  EXPECT_THROW(add_member_file("/nonexistent/own.toml", tables), FileError);
  EXPECT_THROW(add_member_file("/", tables), FileError);
}

}  // namespace
}  // namespace deadshore::io
