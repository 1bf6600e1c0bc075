// EN 1995-1-1 and EN 338.
// (a) Worked example of a stud, read in stored pages: 38 x 100 C16, 2750 mm x 0.85 in the plane of
//     100, 8.91 kN, k_mod 0.6 -> lambda 80.97, lambda_rel 1.45, k_c 0.40, utilisation 0.74.
//     Accepted: its digits.
// (b) A 150 x 150 plate on C24, k_mod 0.8, worked by hand: 60.6 kN with k_c90 1.25 and 30 mm spread
//     at each end, 34.6 kN with neither.

#include "solver/checks/timber_checks.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source worked{Field::timber, Certainty::read,
                        "Worked example of a stud, EN 1995-1-1 6.3.2"};
constexpr Source en1995{Field::timber, Certainty::by_hand, "EN 1995-1-1 6.1.5"};

// EN 338; C16 and C24 as in the worked examples.
const TimberClass c16{"C16", 16, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370};
const TimberClass c24{"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};

TEST(TimberStud, TheWorkedExampleComesOut) {
  const TimberMember stud{{38.0, 100.0}, c16, LoadDuration::permanent, ServiceClass::two};
  const TimberBuckling buckling = timber_buckling(c16, 100.0, 0.85 * 2750.0);
  verify({worked, "stud 38x100 C16: lambda", 80.97, buckling.slenderness, 0.005, "-"});
  verify({worked, "stud 38x100 C16: lambda_rel", 1.45, buckling.relative_slenderness, 0.005, "-"});
  verify({worked, "stud 38x100 C16: k_c", 0.40, buckling.factor, 0.005, "-"});
  const Check check = check_timber_compression(stud, 8910.0, 0.85 * 2750.0, 0.0, partial_factors());
  verify({worked, "stud 38x100 C16, 8.91 kN: utilisation", 0.74, check.utilisation(), 0.005, "-"});
}

TEST(TimberAcrossTheGrain, APlateOnC24) {
  const TimberMember sole{{225.0, 75.0}, c24, LoadDuration::medium_term, ServiceClass::two};
  const double load = 10e3;
  const Check spread =
      check_bearing_across_grain(sole, {150.0, 150.0, 30.0, 1.25}, load, partial_factors());
  verify({en1995, "plate 150x150 on C24, spread and k_c,90: load", 60.6,
          load / spread.utilisation() / 1e3, 0.05, "kN"});
  const Check plain =
      check_bearing_across_grain(sole, {150.0, 150.0, 0.0, 1.0}, load, partial_factors());
  verify({en1995, "plate 150x150 on C24, neither: load", 34.6, load / plain.utilisation() / 1e3,
          0.05, "kN"});
}

}  // namespace
}  // namespace deadshore::solver
