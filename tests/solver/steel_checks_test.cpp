#include "solver/checks/steel_checks.h"

#include "solver/checks/member_buckling.h"
#include "solver/members/error.h"
#include "tests/solver/sample_sections.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

const SafetyBasis limit_state = partial_factors();
const SafetyBasis permissible = permissible_stresses();

SteelMember s275(const SteelSection& section) {
  return steel_member(section, SteelGrade::s275);
}

LateralSpan span_of(double length) {
  LateralSpan span;
  span.length = length;
  return span;
}

TEST(SteelBending, PermissibleStressesGoWithTheElasticSection) {
  const SteelMember beam = s275(testing::ub_203x25);
  EXPECT_LE(beam.class_in_bending, 2);
  EXPECT_DOUBLE_EQ(bending_resistance(beam, limit_state), beam.properties.W_pl_y * 275.0);
  EXPECT_DOUBLE_EQ(bending_resistance(beam, permissible), beam.properties.W_el_y * 275.0 / 1.65);
}

TEST(SteelBending, Class4IsRefused) {
  const SteelMember thin = s275({"thin", SectionKind::i_section, 200.0, 200.0, 5.0, 5.0, 0.0});
  EXPECT_THROW((void)check_bending(thin, 1e6, limit_state), MemberError);
}

TEST(SteelBending, ShowsTheNumbersSubstituted) {
  const Check check = check_bending(s275(testing::uc_152x23), -5.625e6, limit_state);
  EXPECT_DOUBLE_EQ(check.demand, 5.625);
  EXPECT_EQ(check.working, "UC 152x152x23 S275 class 3: W_el 164.0 cm3 x f_y 275 N/mm2 / 1.00");
}

TEST(SteelShear, IsTheShearAreaAtTheYieldInShear) {
  const SteelMember needle = s275(testing::uc_152x23);
  EXPECT_NEAR(shear_resistance(needle, limit_state), needle.properties.A_v * 275.0 / std::sqrt(3.0),
              1e-6);
  EXPECT_NEAR(shear_resistance(needle, permissible) * 1.65, shear_resistance(needle, limit_state),
              1e-6);
}

TEST(SteelShear, ASlenderWebIsNotVerified) {
  const Check check =
      check_shear(s275({"plate girder", SectionKind::i_section, 520.0, 200.0, 5.0, 10.0, 0.0}), 1e3,
                  limit_state);
  EXPECT_TRUE(check.not_verified);
}

TEST(SteelBendingWithShear, UpToHalfTheShearNothingIsLost) {
  const SteelMember beam = s275(testing::ub_203x25);
  const double shear = shear_resistance(beam, limit_state);
  const double alone = bending_resistance(beam, limit_state);
  EXPECT_EQ(bending_resistance_with_shear(beam, 0.5 * shear, limit_state), alone);
  EXPECT_LT(bending_resistance_with_shear(beam, 0.6 * shear, limit_state), alone);
}

// 6.2.8(3) and (5): at full shear the web is gone and the flanges, with their roots, remain.
TEST(SteelBendingWithShear, AtFullShearTheWebIsGone) {
  const auto at_full_shear = [](const SteelMember& beam) {
    return bending_resistance_with_shear(beam, shear_resistance(beam, limit_state), limit_state);
  };
  const SteelMember plastic = s275(testing::ub_203x25);
  const double plastic_web = 5.7 * std::pow(203.2 - 2.0 * 7.8, 2) / 4.0;
  EXPECT_NEAR(at_full_shear(plastic), (plastic.properties.W_pl_y - plastic_web) * 275.0, 1.0);
  const SteelMember elastic = s275(testing::uc_152x23);
  const double elastic_web = 5.8 * std::pow(152.4 - 2.0 * 6.8, 3) / 12.0 / (152.4 / 2.0);
  EXPECT_NEAR(at_full_shear(elastic), (elastic.properties.W_el_y - elastic_web) * 275.0, 1.0);
}

TEST(LateralBuckling, ShortSpansAreFreeOfIt) {
  const SteelMember beam = s275(testing::ub_203x25);
  EXPECT_EQ(lateral_buckling(beam, span_of(500.0), limit_state).factor, 1.0);
  EXPECT_LT(lateral_buckling(beam, span_of(3000.0), limit_state).factor, 1.0);
}

TEST(LateralBuckling, ALoadAboveTheShearCentreTakesFromIt) {
  const SteelMember beam = s275(testing::ub_203x25);
  LateralSpan above = span_of(3000.0);
  above.C_2 = 0.45;
  above.z_g = 101.6;
  EXPECT_LT(critical_moment(beam, above), critical_moment(beam, span_of(3000.0)));
}

TEST(LateralBuckling, TheGeneralCurvesAreLower) {
  const SteelMember beam = s275(testing::ub_203x25);
  const LateralSpan span = span_of(3000.0);
  EXPECT_LT(lateral_buckling(beam, span, limit_state, LateralCurves::general).resistance,
            lateral_buckling(beam, span, limit_state, LateralCurves::rolled).resistance);
}

TEST(LateralBuckling, SquareHollowSectionsAreFreeOfIt) {
  const SteelMember beam = s275(testing::shs_100x5);
  const LateralBuckling buckling = lateral_buckling(beam, span_of(4000.0), limit_state);
  EXPECT_EQ(buckling.factor, 1.0);
  EXPECT_EQ(buckling.resistance, bending_resistance(beam, limit_state));
}

TEST(LateralBuckling, AChannelIsMarked) {
  const Check check =
      check_lateral_buckling(s275(testing::pfc_200x90), span_of(2000.0), 1e6, limit_state);
  EXPECT_THAT(check.caution, HasSubstr("shear centre"));
}

TEST(LateralBuckling, ALengthThatIsNotAboveZeroIsRefused) {
  EXPECT_THROW((void)critical_moment(s275(testing::ub_203x25), span_of(0.0)), MemberError);
}

TEST(FlexuralBuckling, TheWeakAxisGivesWayFirst) {
  const SteelMember column = s275(testing::uc_203x46);
  EXPECT_LT(column_buckling(column, SectionAxis::z, 3000.0, limit_state).resistance,
            column_buckling(column, SectionAxis::y, 3000.0, limit_state).resistance);
}

TEST(FlexuralBuckling, PermissibleLoadsAreThoseOver165) {
  const SteelMember column = s275(testing::uc_203x46);
  EXPECT_NEAR(column_buckling(column, SectionAxis::z, 3000.0, permissible).resistance * 1.65,
              column_buckling(column, SectionAxis::z, 3000.0, limit_state).resistance, 1e-6);
}

TEST(FrameBuckling, PassesFromItsLeastFactorUp) {
  EXPECT_TRUE(check_frame_buckling(3.0).passes());
  EXPECT_FALSE(check_frame_buckling(2.9).passes());
  EXPECT_DOUBLE_EQ(check_frame_buckling(6.0).utilisation(), 0.5);
}

TEST(WebBearing, GrowsWithTheDistanceFromTheEnd) {
  const SteelMember beam = s275(testing::ub_203x25);
  const double at_end = web_bearing(beam, {100.0, 0.0}, limit_state).resistance;
  const double near_end = web_bearing(beam, {100.0, 60.0}, limit_state).resistance;
  const double inside = web_bearing(beam, {100.0}, limit_state).resistance;
  EXPECT_LT(at_end, near_end);
  EXPECT_LE(near_end, inside);
  EXPECT_DOUBLE_EQ(web_bearing(beam, {100.0, 5000.0}, limit_state).resistance, inside);
}

TEST(WebBearing, OfAHollowSectionIsNotVerified) {
  const SteelMember hollow = s275(testing::shs_100x5);
  EXPECT_TRUE(check_web_bearing(hollow, {100.0}, 1e3, "over the prop", limit_state).not_verified);
  EXPECT_TRUE(check_web_bearing_with_bending(hollow, {100.0}, 1e3, 1e6, limit_state).not_verified);
}

TEST(WebBearing, WithBendingItIsTheSumOfTheTwo) {
  const SteelMember beam = s275(testing::ub_203x25);
  const double force = 0.5 * web_bearing(beam, {150.0}, limit_state).resistance;
  const double moment = 0.6 * beam.properties.W_el_y * 275.0;
  const Check check = check_web_bearing_with_bending(beam, {150.0}, force, moment, limit_state);
  EXPECT_NEAR(check.demand, 0.5 + 0.8 * 0.6, 1e-12);
  EXPECT_EQ(check.capacity, 1.4);
}

TEST(WebBearing, ABearingWithoutLengthIsRefused) {
  EXPECT_THROW((void)web_bearing(s275(testing::ub_203x25), {0.0}, limit_state), MemberError);
  EXPECT_THROW((void)web_bearing(s275(testing::ub_203x25), {100.0, -1.0}, limit_state),
               MemberError);
}

TEST(Deflection, IsHeldToAPartOfTheSpan) {
  EXPECT_TRUE(check_deflection(2.0, 1200.0).passes());
  EXPECT_FALSE(check_deflection(2.1, 1200.0).passes());
  EXPECT_TRUE(check_deflection(-2.1, 1200.0, brittle_finish_limit).passes());
}

}  // namespace
}  // namespace deadshore::solver
