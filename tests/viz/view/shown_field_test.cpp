#include "viz/view/shown_field.h"

#include "tests/viz/view/shown_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace deadshore::viz {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

ShownField field_from(double lowest, double highest) {
  ShownField field;
  field.lowest = lowest;
  field.highest = highest;
  return field;
}

TEST(ShownField, FieldsHaveTheUnitsOfTheFilesAndTheCompressionLeads) {
  const test::ShownFolder folder;
  std::vector<std::string> titles;
  for (const ShownField& field : fields_of(read_result(folder.path()))) {
    titles.push_back(title_of(field));
  }
  EXPECT_EQ(titles.front(), "principal stress, minor [N/mm2]");
  for (const char* title : {"displacement y [mm]", "stress xy [N/mm2]", "largest crack strain"}) {
    EXPECT_THAT(titles, Contains(title));
  }
  EXPECT_THAT(titles, Not(Contains(HasSubstr("direction"))));
  EXPECT_THAT(titles, Not(Contains(HasSubstr("displacement z"))));
  EXPECT_THAT(titles, Not(Contains("loose")));
}

// The made-up displacement is -5e-4 y up to y = 3000 mm in every stage.
TEST(ShownField, TheScaleIsThatOfAllStagesTogether) {
  const test::ShownFolder folder;
  for (const ShownField& field : fields_of(read_result(folder.path()))) {
    if (field.name != "displacement y") continue;
    EXPECT_DOUBLE_EQ(field.lowest, -1.5);
    EXPECT_EQ(field.highest, 0.0);
    const FieldScale scale = scale_of(field);
    EXPECT_LE(scale.from, -1.5);
    EXPECT_EQ(scale.to(), 0.0);
    EXPECT_TRUE(scale.dark_at_lowest);
    return;
  }
  FAIL() << "no displacement y";
}

TEST(FieldScale, HasFewEvenBandsThatHoldTheRangeAndZero) {
  for (const auto& [low, high] : std::vector<std::pair<double, double>>{
           {-0.37, 0.02}, {0.0, 3e-4}, {-7.0, 9.0}, {2.0, 5.0}, {-120.0, -50.0}}) {
    const FieldScale scale = scale_of(field_from(low, high));
    EXPECT_LE(scale.from, low + 1e-9 * scale.step);
    EXPECT_GE(scale.to(), high - 1e-9 * scale.step);
    EXPECT_LE(scale.from, 0.0);
    EXPECT_GE(scale.to(), 0.0);
    EXPECT_GE(scale.bands, 5);
    EXPECT_LE(scale.bands, 10);
  }
}

TEST(FieldScale, AFieldThatIsZeroEverywhereHasOneBand) {
  EXPECT_EQ(scale_of(field_from(0.0, 0.0)).bands, 1);
}

// In grey the order must hold: what is farther from zero is darker.
TEST(FieldScale, LightnessGoesOneWayOnly) {
  for (const auto& [low, high] :
       std::vector<std::pair<double, double>>{{-0.37, 0.02}, {0.0, 0.37}, {-7.0, 9.0}}) {
    const FieldScale scale = scale_of(field_from(low, high));
    const double way = scale.dark_at_lowest ? 1.0 : -1.0;
    for (int band = 1; band < scale.bands; ++band) {
      EXPECT_GT(way * luminance(tone_of(scale, band)), way * luminance(tone_of(scale, band - 1)));
    }
  }
}

TEST(FieldScale, LimitsHaveTheDecimalsOfTheirStep) {
  EXPECT_EQ(limit_text(-0.05, scale_of(field_from(-0.37, 0.02))), "-0.05");
  EXPECT_EQ(limit_text(-1e-18, scale_of(field_from(-0.37, 0.02))), "0.00");
  EXPECT_EQ(limit_text(20.0, scale_of(field_from(0.0, 160.0))), "20");
  EXPECT_EQ(limit_text(2e-7, scale_of(field_from(0.0, 1e-6))), "2.0e-07");
}

}  // namespace
}  // namespace deadshore::viz
