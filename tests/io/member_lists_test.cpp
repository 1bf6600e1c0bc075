#include "io/commands/name_lists.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class MemberLists : public ::testing::Test {
 protected:
  const MemberTables tables = built_in_member_tables();
};

std::string line_with(const std::string& text, const std::string& part) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with(part)) return line;
  }
  return "";
}

TEST_F(MemberLists, FitEightyColumnsAndNameEveryMember) {
  for (const std::string& text :
       {list_of_sections(tables, ""), list_of_timber(tables, ""), list_of_props(tables, ""),
        list_of_grounds(tables, ""), list_of_sections(tables, "UC 152x152x23")}) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
  }
  const std::string sections = list_of_sections(tables, "");
  for (const SteelRow& row : some(tables.steel))
    EXPECT_NE(line_with(sections, row.section.name), "");
}

// Published: A 29.2 cm2, I_y 1250 cm4, W_el 164 cm3, W_pl 182 cm3 (BS 4-1 tables, from memory,
// unverified).
TEST_F(MemberLists, GiveASectionWithItsProperties) {
  const std::string text = list_of_sections(tables, "uc 152x152x23");
  std::istringstream cells(line_with(text, "UC 152x152x23").substr(13));
  double h = 0.0, b = 0.0, tw = 0.0, tf = 0.0, mass = 0.0, area = 0.0, inertia = 0.0;
  double elastic = 0.0, plastic = 0.0;
  ASSERT_TRUE(cells >> h >> b >> tw >> tf >> mass >> area >> inertia >> elastic >> plastic) << text;
  EXPECT_EQ(h, 152.4);
  EXPECT_EQ(tf, 6.8);
  EXPECT_NEAR(mass, 23.0, 0.23);
  EXPECT_NEAR(area, 29.2, 0.15);
  EXPECT_NEAR(inertia, 1250.0, 6.0);
  EXPECT_NEAR(elastic, 164.0, 0.8);
  EXPECT_NEAR(plastic, 182.0, 0.9);
  EXPECT_THAT(text, HasSubstr("Source: EN 10365 / BS 4-1 universal columns; from memory"));
  EXPECT_THAT(text, HasSubstr("radius of gyration"));  // a single one is given in full
}

// EN 1065: A25 bears 51.0 l_max / l^2 kN, over 1.65; CIRIA TN79 has 17 kN at 2.5 m.
TEST_F(MemberLists, GiveTheSafeLoadOfPropsAlongTheirRange) {
  std::istringstream cells(line_with(list_of_props(tables, "A25"), "A25").substr(3));
  std::string from, to, at_1_5, at_2, at_2_5, at_3;
  ASSERT_TRUE(cells >> from >> to >> at_1_5 >> at_2 >> at_2_5 >> at_3);
  EXPECT_EQ(from, "1.50");
  EXPECT_EQ(to, "2.50");
  EXPECT_NEAR(std::stod(at_2_5), 51.0 * 2.5 / (2.5 * 2.5) / 1.65, 0.05);
  EXPECT_EQ(at_3, "-");
}

TEST_F(MemberLists, SayWhatMayBePresumedOfGroundAndWhatMayNot) {
  const std::string text = list_of_grounds(tables, "clay");
  EXPECT_THAT(line_with(text, "stiff clay"), HasSubstr(" 150 "));
  EXPECT_THAT(line_with(text, "soft clay"), HasSubstr(" none "));
  EXPECT_THAT(text, Not(HasSubstr("gravel ")));
}

TEST(WeightLists, FitEightyColumnsAndGiveUnitsAndSources) {
  const WeightTables tables = built_in_weight_tables();
  const std::string materials = list_of_materials(tables, "");
  const std::string uses = list_of_uses(tables, "");
  for (const std::string& text : {materials, uses}) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
  }
  for (const WeightRow& row : tables.materials) EXPECT_NE(line_with(materials, row.name), "");
  for (const UseRow& row : tables.uses) EXPECT_NE(line_with(uses, row.name), "");
  EXPECT_THAT(line_with(list_of_uses(tables, "domestic"), "domestic"), HasSubstr(" 1.5 "));
  EXPECT_THAT(list_of_materials(tables, "brick"), HasSubstr("Source: BS 648:1964"));
  EXPECT_THAT(list_of_materials(tables, "brick"), HasSubstr("kN/m3    kN/m2\n"));
  EXPECT_THROW((void)list_of_materials(tables, "cheese"), UnknownMember);
}

TEST_F(MemberLists, PatternsMatchPartsOfNames) {
  EXPECT_EQ(line_with(list_of_sections(tables, "UC*x23"), "UC 203"), "");
  EXPECT_NE(line_with(list_of_sections(tables, "uc152"), "UC 152x152x23"), "");
  EXPECT_NE(line_with(list_of_timber(tables, "c2?"), "C24"), "");
  EXPECT_EQ(line_with(list_of_timber(tables, "c2?"), "C16"), "");
  EXPECT_THROW((void)list_of_props(tables, "Z99"), UnknownMember);
}

TEST_F(MemberLists, HaveTheUsersOwn) {
  MemberTables own = tables;
  add_member_tables(
      "[[prop_group]]\nsource = \"the yard\"\nouter = [60.3, 3.2]\ninner = [48.3, 3.2]\n"
      "rows = [ { name = \"yard prop\", shortest = 2000, longest = 3500, capacity = { source = "
      "\"sheet of March\", extension = [2000, 3500], load = [20.0, 8.0] } } ]\n",
      "own.toml", own);
  const std::string text = list_of_props(own, "yard");
  EXPECT_THAT(text, HasSubstr("Source: the yard. Safe loads: sheet of March."));
  EXPECT_THAT(line_with(text, "yard prop"), HasSubstr(" 20.0 "));
  EXPECT_THAT(line_with(text, "yard prop"), HasSubstr(" 8.0 "));
}

}  // namespace
}  // namespace deadshore::io
