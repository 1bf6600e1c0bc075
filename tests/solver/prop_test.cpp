#include "solver/members/prop.h"

#include "solver/checks/prop_checks.h"
#include "solver/members/error.h"
#include "solver/members/prop_second_order.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

Prop b35() {
  return {"B35", 2000.0, 3500.0, {60.3, 3.2}, {48.3, 3.2}, PropClass::b, {}, "EN 1065"};
}

CapacityTable invented_sheet() {
  return {"supplier's sheet (invented)", {{2000.0, 24e3}, {3000.0, 14e3}, {3500.0, 9e3}}};
}

TEST(Prop, OutsideItsRangeItIsRefusedWithTheRange) {
  try {
    (void)characteristic_strength(b35(), 3600.0);
    FAIL() << "accepted";
  } catch (const MemberError& error) {
    EXPECT_STREQ(error.what(), "B35: found an extension of 3.600 m; 2.00 m to 3.50 m is due");
  }
  EXPECT_THROW((void)safe_load(b35(), 1999.0), MemberError);
  EXPECT_THROW((void)axial_stiffness(b35(), 3501.0), MemberError);
  EXPECT_THROW((void)check_prop(b35(), std::numeric_limits<double>::quiet_NaN(), 10e3),
               MemberError);
}

TEST(Prop, AtTheEndsOfItsRangeItIsAccepted) {
  EXPECT_NO_THROW((void)safe_load(b35(), 2000.0));
  EXPECT_NO_THROW((void)safe_load(b35(), 3500.0));
}

TEST(Prop, ByDefaultTheLowerOfTheTwoSafeLoadsCounts) {
  // EN 1065 / 1.65 gives 30.9 kN, CIRIA TN79 17.0 kN at 2.0 m; 11.77 and 11.0 kN at 3.5 m, where a
  // second-order sum of the prop 25 mm off its axis gives less.
  EXPECT_DOUBLE_EQ(safe_load(b35(), 2000.0).load, 17e3);
  EXPECT_DOUBLE_EQ(safe_load(b35(), 3500.0).load,
                   eccentric_strength(b35(), 3500.0, prop_eccentricity) / en_1065_divisor);
  EXPECT_LT(safe_load(b35(), 3500.0).load, 11e3);
  // Class A is weaker than the old sizes: 17.0 kN / 1.65 at 3.0 m.
  Prop a30 = b35();
  a30.prop_class = PropClass::a;
  a30.longest = 3000.0;
  EXPECT_NEAR(safe_load(a30, 3000.0).load, 17e3 / 1.65, 1e-6);
  EXPECT_THAT(safe_load(a30, 3000.0).clause, HasSubstr("EN 1065"));
}

TEST(Prop, ASuppliersTableGoesBeforeTheFormulas) {
  Prop prop = b35();
  prop.supplier_table = invented_sheet();
  EXPECT_DOUBLE_EQ(safe_load(prop, 2500.0).load, 19e3);
  EXPECT_DOUBLE_EQ(safe_load(prop, 2500.0, SafeLoadBasis::ciria_tn79).load, 17e3);
  EXPECT_THROW((void)safe_load(b35(), 2500.0, SafeLoadBasis::supplier_table), MemberError);
}

TEST(Prop, AnOldPropHasNoStrengthByEn1065) {
  Prop old = b35();
  old.prop_class.reset();
  EXPECT_THROW((void)safe_load(old, 2500.0, SafeLoadBasis::en_1065), MemberError);
}

TEST(CapacityTable, IsLinearBetweenItsRowsAndRefusesBeyond) {
  const CapacityTable table = invented_sheet();
  EXPECT_EQ(capacity_at(table, 2000.0), 24e3);
  EXPECT_EQ(capacity_at(table, 3000.0), 14e3);
  EXPECT_EQ(capacity_at(table, 3250.0), 11.5e3);
  EXPECT_EQ(capacity_at(table, 3500.0), 9e3);
  EXPECT_THROW((void)capacity_at(table, 1999.9), MemberError);
  EXPECT_THROW((void)capacity_at(table, 3500.1), MemberError);
  EXPECT_THROW((void)capacity_at({"empty", {}}, 2000.0), MemberError);
}

TEST(CapacityTable, MustRiseInExtensionAndStayAboveZero) {
  Prop prop = b35();
  prop.supplier_table = CapacityTable{"sheet", {{3000.0, 14e3}, {2000.0, 24e3}}};
  EXPECT_THROW(require_sound(prop), MemberError);
  prop.supplier_table = CapacityTable{"sheet", {{2000.0, 24e3}, {3000.0, 0.0}}};
  EXPECT_THROW(require_sound(prop), MemberError);
}

TEST(Prop, TubesThatDoNotFitAreRefused) {
  Prop prop = b35();
  EXPECT_NO_THROW(require_sound(prop));
  prop.inner.diameter = 55.0;
  EXPECT_THROW(require_sound(prop), MemberError);
}

TEST(Prop, IsSofterTheFurtherItIsOut) {
  const Prop prop = b35();
  EXPECT_DOUBLE_EQ(axial_stiffness(prop, 2000.0), 210000.0 * prop.outer.area() / 2000.0);
  const double compliance =
      2000.0 / (210000.0 * prop.outer.area()) + 1000.0 / (210000.0 * prop.inner.area());
  EXPECT_DOUBLE_EQ(axial_stiffness(prop, 3000.0), 1.0 / compliance);
}

TEST(Prop, LeansWithAFortiethOfItsLoadAtOneAndAHalfDegrees) {
  EXPECT_NEAR(lean_force(10e3), 262.0, 0.5);
}

TEST(PropCheck, SetsTheUnfactoredLoadAgainstTheSafeLoad) {
  const Check check = check_prop(b35(), 3000.0, 12e3, SafeLoadBasis::ciria_tn79);
  EXPECT_DOUBLE_EQ(check.demand, 12.0);
  EXPECT_DOUBLE_EQ(check.capacity, 15.0);
  EXPECT_DOUBLE_EQ(check.utilisation(), 0.8);
  EXPECT_TRUE(check.passes());
  EXPECT_FALSE(check_prop(b35(), 3500.0, 12e3).passes());
}

}  // namespace
}  // namespace deadshore::solver
