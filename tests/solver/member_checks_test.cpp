#include "solver/checks/ground_checks.h"
#include "solver/checks/masonry_checks.h"
#include "solver/checks/timber_checks.h"
#include "solver/members/error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

const SafetyBasis limit_state = partial_factors();
const SafetyBasis permissible = permissible_stresses();

// EN 338.
const TimberClass c24{"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};

TimberMember board(double b, double h) {
  return {{b, h}, c24, LoadDuration::medium_term, ServiceClass::two};
}

TEST(TimberStrength, FallsWithTimeDampAndOverallFactor) {
  TimberMember member = board(225.0, 75.0);
  EXPECT_DOUBLE_EQ(usable_strength(member, 24.0, limit_state), 0.8 * 24.0 / 1.3);
  EXPECT_DOUBLE_EQ(usable_strength(member, 24.0, permissible), 0.8 * 24.0 / 1.95);
  member.service = ServiceClass::three;
  member.duration = LoadDuration::permanent;
  EXPECT_DOUBLE_EQ(usable_strength(member, 24.0, limit_state), 0.5 * 24.0 / 1.3);
}

TEST(TimberBending, IsMomentOverModulus) {
  const Check check = check_timber_bending(board(75.0, 225.0), 5e6, limit_state);
  EXPECT_NEAR(check.demand, 5e6 / (75.0 * 225.0 * 225.0 / 6.0), 1e-12);
  EXPECT_NEAR(check.capacity, 14.77, 0.005);
}

TEST(TimberShear, CountsOnlyTheUncrackedWidth) {
  const Check check = check_timber_shear(board(75.0, 225.0), 10e3, limit_state);
  EXPECT_NEAR(check.demand, 1.5 * 10e3 / (0.67 * 75.0 * 225.0), 1e-12);
}

// 6.3.3: 1 up to 0.75, 1.56 - 0.75 lambda to 1.4, 1 / lambda^2 above.
TEST(TimberLateralBuckling, HasNoJumpBetweenItsBranches) {
  const TimberMember deep = board(50.0, 300.0);
  const double critical = 0.78 * 50.0 * 50.0 * 7400.0 / 300.0;  // times 1 mm of length
  const auto factor_at = [&](double slenderness) {
    return timber_lateral_factor(deep, slenderness * slenderness * critical / 24.0);
  };
  EXPECT_EQ(factor_at(0.7), 1.0);
  EXPECT_NEAR(factor_at(0.7501), 1.0, 0.003);
  EXPECT_NEAR(factor_at(1.4), 0.51, 0.001);
  EXPECT_NEAR(factor_at(1.4001), 0.51, 0.001);
  EXPECT_NEAR(factor_at(2.0), 0.25, 1e-12);
}

TEST(TimberCompression, HeldThroughoutItDoesNotBuckle) {
  const Check held = check_timber_compression(board(100.0, 100.0), 50e3, 0.0, 0.0, limit_state);
  EXPECT_NEAR(held.capacity, 0.8 * 21.0 / 1.3, 1e-12);
  EXPECT_LT(check_timber_compression(board(100.0, 100.0), 50e3, 0.0, 3000.0, limit_state).capacity,
            held.capacity);
}

TEST(TimberBearing, ASpreadOver30MillimetresIsRefused) {
  EXPECT_THROW((void)check_bearing_across_grain(board(225.0, 75.0), {150.0, 150.0, 31.0, 1.0}, 1e3,
                                                limit_state),
               MemberError);
  EXPECT_THROW((void)check_bearing_across_grain(board(225.0, 75.0), {150.0, 150.0, 0.0, 2.0}, 1e3,
                                                limit_state),
               MemberError);
}

TEST(MasonryStrength, MortarCountsOnlyUpToTwiceTheUnits) {
  EXPECT_EQ(masonry_strength({0.5, 5.0, 12.0, false}), masonry_strength({0.5, 5.0, 10.0, false}));
  EXPECT_THROW((void)masonry_strength({0.5, 0.0, 2.0, false}), MemberError);
}

TEST(ConcentratedLoad, OutsideTheLimitsOfItsClauseIsNotVerified) {
  ConcentratedLoad load{440.0, 215.0, 215.0, 500.0, 5000.0, 2300.0, 0.0};
  EXPECT_TRUE(check_concentrated_load(load, 100e3, 6.17, limit_state).passes());
  load.eccentricity = 54.0;  // over 215 / 4
  EXPECT_FALSE(check_concentrated_load(load, 1.0, 6.17, limit_state).passes());
  load.eccentricity = 0.0;
  load.bearing_depth = 89.0;
  EXPECT_FALSE(check_concentrated_load(load, 1.0, 6.17, limit_state).passes());
}

TEST(ConcentratedLoad, ABearingDeeperThanTheWallIsRefused) {
  EXPECT_THROW((void)concentrated_resistance({440.0, 216.0, 215.0, 0.0, 500.0, 2300.0, 0.0}, 6.17,
                                             limit_state),
               MemberError);
}

TEST(Sole, SpreadsTwoToOneAlongAndOneToOneAcrossTheGrain) {
  const GroundContact wide = ground_contact({board(400.0, 75.0), 900.0, 150.0});
  EXPECT_EQ(wide.length, 450.0);
  EXPECT_EQ(wide.width, 300.0);
  const GroundContact small = ground_contact({board(225.0, 75.0), 400.0, 150.0});
  EXPECT_EQ(small.length, 400.0);
  EXPECT_EQ(small.width, 225.0);
}

// 20 kN over 450 mm: 44.4 N/mm on a cantilever of 150 mm, 0.5 kNm on 225 x 75^2 / 6.
TEST(Sole, BendsAsACantileverBeyondTheBase) {
  const Check check = check_sole_bending({board(225.0, 75.0), 600.0, 150.0}, 20e3, limit_state);
  EXPECT_NEAR(check.demand, 0.5e6 / 210937.5, 1e-9);
}

TEST(Sole, OneShorterThanTheBaseDoesNotBend) {
  EXPECT_EQ(check_sole_bending({board(225.0, 75.0), 140.0, 150.0}, 20e3, limit_state).demand, 0.0);
}

TEST(GroundPressure, IsSetAgainstThePresumedBearing) {
  const SolePlate sole{board(225.0, 75.0), 600.0, 150.0};
  const Ground clay{"stiff clay", 0.150, false, "BS 8004:1986 Table 1"};
  const Check check = check_ground_pressure(sole, clay, 10e3);
  EXPECT_NEAR(check.demand, 10.0 / (0.450 * 0.225), 1e-9);
  EXPECT_DOUBLE_EQ(check.capacity, 150.0);
  EXPECT_TRUE(check.passes());
  EXPECT_THAT(check.caution, HasSubstr("below the topsoil"));
}

TEST(GroundPressure, SmallSolesOnSandAreMarked) {
  const SolePlate sole{board(225.0, 75.0), 600.0, 150.0};
  const Ground sand{"compact sand", 0.300, true, "BS 8004:1986 Table 1"};
  EXPECT_THAT(check_ground_pressure(sole, sand, 10e3).caution, HasSubstr("narrow sole"));
}

TEST(GroundPressure, WithoutAPresumedBearingIsNotVerified) {
  const SolePlate sole{board(225.0, 75.0), 600.0, 150.0};
  const Check check = check_ground_pressure(sole, {"made ground", {}, false, "BS 8004"}, 1.0);
  EXPECT_TRUE(check.not_verified);
  EXPECT_FALSE(check.passes());
}

TEST(SuspendedFloor, IsNeverPassed) {
  const Check check = check_suspended_floor("the ground-floor joists", 100.0);
  EXPECT_TRUE(check.not_verified);
  EXPECT_FALSE(check.passes());
  EXPECT_THAT(check.caution, HasSubstr("the ground-floor joists"));
}

}  // namespace
}  // namespace deadshore::solver
