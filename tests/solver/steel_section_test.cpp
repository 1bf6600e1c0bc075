#include "solver/members/steel_section.h"

#include "solver/members/error.h"
#include "solver/members/steel_member.h"
#include "tests/solver/sample_sections.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

TEST(SteelSection, ASquareHollowSectionIsTheSameAboutBothAxes) {
  const SteelProperties p = properties_of(testing::shs_100x5);
  EXPECT_EQ(p.I_y, p.I_z);
  EXPECT_EQ(p.W_pl_y, p.W_pl_z);
  EXPECT_NEAR(p.A_v, 0.5 * p.A, 1e-9);
}

// Two rectangles and a web without roots: by hand.
TEST(SteelSection, WithoutRootsItIsThreeRectangles) {
  const SteelProperties p =
      properties_of({"plates", SectionKind::i_section, 100.0, 60.0, 4.0, 10.0, 0.0});
  EXPECT_DOUBLE_EQ(p.A, 2 * 600.0 + 80.0 * 4.0);
  EXPECT_NEAR(p.I_y, 2 * (60e3 / 12.0 + 600.0 * 45.0 * 45.0) + 4.0 * 512e3 / 12.0, 1e-6);
  EXPECT_NEAR(p.W_pl_y, 600.0 * 90.0 + 4.0 * 6400.0 / 4.0, 1e-9);
}

TEST(SteelSection, AChannelWithoutRootsIsThreeRectanglesOnItsSide) {
  const SteelProperties p =
      properties_of({"plates", SectionKind::channel, 100.0, 50.0, 5.0, 10.0, 0.0});
  // The axis halves the area: 2 x 10 x (50 - x) = A / 2 = 700.
  constexpr double axis = 15.0;
  const double left = 500.0 * (axis - 2.5) + 20.0 * (axis - 5.0) * 0.5 * (axis - 5.0);
  const double right = 20.0 * 0.5 * (50.0 - axis) * (50.0 - axis);
  EXPECT_DOUBLE_EQ(p.A, 500.0 + 2 * 45.0 * 10.0);
  EXPECT_NEAR(p.W_pl_z, left + right, 1.0);
}

TEST(SteelSection, PlasticModulusIsNeverBelowTheElasticOne) {
  for (const SteelSection& section :
       {testing::uc_152x23, testing::pfc_200x90, testing::shs_100x5,
        SteelSection{"CHS", SectionKind::circular_hollow, 60.3, 60.3, 3.2, 3.2, 0.0}}) {
    const SteelProperties p = properties_of(section);
    EXPECT_GT(p.W_pl_y, p.W_el_y) << section.name;
    EXPECT_GT(p.W_pl_z, p.W_el_z) << section.name;
  }
}

TEST(SteelSection, DimensionsThatMakeNoSectionAreRefused) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const SteelSection& section :
       {SteelSection{"S", SectionKind::i_section, 0.0, 100.0, 5.0, 8.0, 0.0},
        SteelSection{"S", SectionKind::i_section, 100.0, 100.0, 5.0, 50.0, 0.0},
        SteelSection{"S", SectionKind::i_section, 100.0, 100.0, 5.0, nan, 0.0},
        SteelSection{"S", SectionKind::channel, 100.0, 12.0, 5.0, 8.0, 9.0},
        SteelSection{"S", SectionKind::rectangular_hollow, 100.0, 50.0, 5.0, 6.0, 0.0},
        SteelSection{"S", SectionKind::rectangular_hollow, 100.0, 20.0, 5.0, 5.0, 0.0},
        SteelSection{"S", SectionKind::circular_hollow, 48.3, 60.3, 3.2, 3.2, 0.0}})
    EXPECT_THROW((void)properties_of(section), MemberError);
}

TEST(SteelSection, ARefusalNamesTheSectionAndItsDimensions) {
  try {
    (void)properties_of({"own", SectionKind::i_section, 100.0, 100.0, 5.0, 50.0, 0.0});
    FAIL() << "accepted";
  } catch (const MemberError& error) {
    EXPECT_THAT(error.what(), HasSubstr("own: found h 100, b 100, tw 5, tf 50, r 0 mm; "));
  }
}

// EN 10025-2 (from memory, unverified).
TEST(SteelGrade, YieldStrengthFallsWithThickness) {
  EXPECT_EQ(yield_strength(SteelGrade::s275, 16.0), 275.0);
  EXPECT_EQ(yield_strength(SteelGrade::s275, 16.1), 265.0);
  EXPECT_EQ(yield_strength(SteelGrade::s355, 50.0), 335.0);
  EXPECT_EQ(yield_strength(SteelGrade::s235, 100.0), 215.0);
  EXPECT_THROW((void)yield_strength(SteelGrade::s235, 101.0), MemberError);
  EXPECT_THROW((void)yield_strength(SteelGrade::s235, 0.0), MemberError);
}

// Limits of EN 1993-1-1 Table 5.2, at epsilon 1.
TEST(SectionClass, FollowsTheThicknessOfTheFlange) {
  const auto flange_over = [](double c_over_t) {
    SteelSection s{"S", SectionKind::i_section, 200.0, 200.0, 20.0, 10.0, 0.0};
    s.b = s.tw + 2.0 * c_over_t * s.tf;
    return class_in_bending(s, 235.0);
  };
  EXPECT_EQ(flange_over(8.99), 1);
  EXPECT_EQ(flange_over(9.5), 2);
  EXPECT_EQ(flange_over(13.99), 3);
  EXPECT_EQ(flange_over(14.01), 4);
}

TEST(SectionClass, AWebIsWorseOffInCompressionThanInBending) {
  const SteelSection deep{"S", SectionKind::i_section, 620.0, 200.0, 10.0, 20.0, 0.0};
  EXPECT_EQ(class_in_bending(deep, 235.0), 1);
  EXPECT_EQ(class_in_compression(deep, 235.0), 4);
}

TEST(SectionClass, ThinTubesAreClass4) {
  EXPECT_EQ(class_in_bending({"CHS", SectionKind::circular_hollow, 200, 200, 2, 2, 0}, 235.0), 4);
  EXPECT_EQ(class_in_bending(testing::shs_100x5, 355.0), 1);
}

}  // namespace
}  // namespace deadshore::solver
