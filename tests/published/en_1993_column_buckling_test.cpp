// EN 1993-1-1 6.3.1: reduction factors at a relative slenderness of 1.0 (calculated from 6.3.1.2;
// they are also those of its Figure 6.4 and the ECCS tables), and a column UC 203x203x46 in S275
// over 3 m about its weak axis, curve c, worked by hand: 1197 kN. Accepted: the digits given; 0.5%.

#include "solver/checks/member_buckling.h"
#include "tests/published/comparison.h"
#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1993{Field::steel_members, Certainty::by_hand, "EN 1993-1-1 6.3.1"};

TEST(BucklingCurves, FactorsAtASlendernessOfOne) {
  verify({en1993, "curve a0 at a slenderness of 1: chi", 0.7253,
          buckling_factor(1.0, BucklingCurve::a0), 5e-5, "-"});
  verify({en1993, "curve a at a slenderness of 1: chi", 0.6656,
          buckling_factor(1.0, BucklingCurve::a), 5e-5, "-"});
  verify({en1993, "curve b at a slenderness of 1: chi", 0.5970,
          buckling_factor(1.0, BucklingCurve::b), 5e-5, "-"});
  verify({en1993, "curve c at a slenderness of 1: chi", 0.5399,
          buckling_factor(1.0, BucklingCurve::c), 5e-5, "-"});
  verify({en1993, "curve d at a slenderness of 1: chi", 0.4671,
          buckling_factor(1.0, BucklingCurve::d), 5e-5, "-"});
}

TEST(BucklingCurves, ShortColumnsAreNotReduced) {
  EXPECT_EQ(buckling_factor(0.2, BucklingCurve::d), 1.0);
}

TEST(ColumnBuckling, Uc203x46OverThreeMetres) {
  const SteelMember column = steel_member(testing::uc_203x46, SteelGrade::s275);
  const ColumnBuckling weak = column_buckling(column, SectionAxis::z, 3000.0, partial_factors());
  EXPECT_EQ(weak.curve, BucklingCurve::c);
  verify({en1993, "UC 203x203x46, S275, 3 m, weak axis: N_b,Rd", 1197.0, weak.resistance / 1e3,
          0.005 * 1197.0, "kN"});
}

}  // namespace
}  // namespace deadshore::solver
