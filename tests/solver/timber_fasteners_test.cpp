// What Johansen's equations must do whatever the numbers; values are in
// tests/published/fasteners_published_test.cpp.
#include "solver/checks/timber_checks.h"
#include "solver/members/error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

const TimberClass c24{"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};
const TimberMember leg{{47.0, 97.0}, c24, LoadDuration::permanent, ServiceClass::two};

SingleShear nail(double diameter, double side, double point) {
  return {.diameter = diameter,
          .tensile_strength = 600.0,
          .side_thickness = side,
          .penetration = point};
}

TEST(SingleShear, TheSameEitherWayRound) {
  const JohansenModes one = johansen_modes(nail(4.0, 20.0, 70.0), 18.0, 25.0, 6600.0);
  const JohansenModes other = johansen_modes(nail(4.0, 70.0, 20.0), 25.0, 18.0, 6600.0);
  const std::vector<std::size_t> turned = {1, 0, 2, 4, 3, 5};
  for (std::size_t i = 0; i < turned.size(); ++i)
    EXPECT_NEAR(one.resistance[i], other.resistance[turned[i]], 1e-9 * one.resistance[i]) << i;
}

TEST(SingleShear, NeverFallsAsTimberGetsThicker) {
  double before = 0.0;
  for (double side = 5.0; side < 100.0; side += 5.0) {
    const double now = johansen_modes(nail(4.0, side, 60.0), 20.0, 20.0, 6600.0).least();
    EXPECT_GE(now, before - 1e-9) << side;
    before = now;
  }
}

TEST(SingleShear, GrowsWithTheSquareOfTheSizeOfEverything) {
  const double small = johansen_modes(nail(3.0, 15.0, 40.0), 20.0, 22.0, 4000.0).least();
  const double large = johansen_modes(nail(6.0, 30.0, 80.0), 20.0, 22.0, 32000.0).least();
  EXPECT_NEAR(large, 4.0 * small, 1e-9 * large);
}

TEST(SingleShear, IsUsedWithDurationAndPartialFactor) {
  const Check check = check_single_shear(nail(3.35, 38.0, 52.0), leg, 200.0, partial_factors());
  const double f_h = embedment_strength(350.0, 3.35, false);
  const double resistance =
      johansen_modes(nail(3.35, 38.0, 52.0), f_h, f_h, nail_yield_moment(600.0, 3.35)).least();
  EXPECT_NEAR(check.capacity, 0.6 * resistance / 1.3 / 1e3, 1e-12);
  EXPECT_NEAR(check.demand, 0.2, 1e-12);
  EXPECT_THAT(check.working, HasSubstr("n_ef = n"));
  TimberMember brief = leg;
  brief.duration = LoadDuration::medium_term;
  const Check more = check_single_shear(nail(3.35, 38.0, 52.0), brief, 200.0, partial_factors());
  EXPECT_NEAR(more.capacity / check.capacity, 0.8 / 0.6, 1e-12);
}

TEST(SingleShear, TooShortOrUndrilledInThinTimberIsNotVerified) {
  const Check shallow = check_single_shear(nail(3.35, 38.0, 26.0), leg, 200.0, partial_factors());
  EXPECT_TRUE(shallow.not_verified);
  EXPECT_THAT(shallow.caution, HasSubstr("8.3.1.2(2)"));
  SingleShear thin = nail(4.0, 27.0, 60.0);  // 7 d is 28 mm
  EXPECT_TRUE(check_single_shear(thin, leg, 200.0, partial_factors()).not_verified);
  thin.predrilled = true;
  EXPECT_FALSE(check_single_shear(thin, leg, 200.0, partial_factors()).not_verified);
}

TEST(SingleShear, RefusesWhatIsNoNail) {
  const SafetyBasis basis = partial_factors();
  for (const SingleShear& bad : {nail(8.1, 60.0, 90.0), nail(0.0, 38.0, 52.0),
                                 nail(3.35, 0.0, 52.0), nail(3.35, 38.0, -1.0)}) {
    EXPECT_THROW(static_cast<void>(check_single_shear(bad, leg, 1.0, basis)), MemberError);
  }
}

}  // namespace
}  // namespace deadshore::solver
