// EN 1995-1-1 and EN 338.
// (a) Worked example of a stud, read in stored pages: 38 x 100 C16, 2750 mm x 0.85 in the plane of
//     100, 8.91 kN, k_mod 0.6 -> lambda 80.97, lambda_rel 1.45, k_c 0.40, utilisation 0.74.
//     Accepted: its digits.
// (b) A 150 x 150 plate on C24, k_mod 0.8, worked by hand: 60.6 kN with k_c90 1.25 and 30 mm spread
//     at each end, 34.6 kN with neither.

#include "solver/checks/timber_checks.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

// EN 338; C16 and C24 as in the worked examples.
const TimberClass c16{"C16", 16, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370};
const TimberClass c24{"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};

TEST(TimberStud, TheWorkedExampleComesOut) {
  const TimberMember stud{{38.0, 100.0}, c16, LoadDuration::permanent, ServiceClass::two};
  const TimberBuckling buckling = timber_buckling(c16, 100.0, 0.85 * 2750.0);
  EXPECT_NEAR(buckling.slenderness, 80.97, 0.005);
  EXPECT_NEAR(buckling.relative_slenderness, 1.45, 0.005);
  EXPECT_NEAR(buckling.factor, 0.40, 0.005);
  const Check check = check_timber_compression(stud, 8910.0, 0.85 * 2750.0, 0.0, partial_factors());
  EXPECT_NEAR(check.utilisation(), 0.74, 0.005);
}

TEST(TimberAcrossTheGrain, APlateOnC24) {
  const TimberMember sole{{225.0, 75.0}, c24, LoadDuration::medium_term, ServiceClass::two};
  const double load = 10e3;
  const Check spread =
      check_bearing_across_grain(sole, {150.0, 150.0, 30.0, 1.25}, load, partial_factors());
  EXPECT_NEAR(load / spread.utilisation() / 1e3, 60.6, 0.05);
  const Check plain =
      check_bearing_across_grain(sole, {150.0, 150.0, 0.0, 1.0}, load, partial_factors());
  EXPECT_NEAR(load / plain.utilisation() / 1e3, 34.6, 0.05);
}

}  // namespace
}  // namespace deadshore::solver
