// EN 1993-1-1 6.3.1: reduction factors at a relative slenderness of 1.0 (calculated from 6.3.1.2;
// they are also those of its Figure 6.4 and the ECCS tables), and a column UC 203x203x46 in S275
// over 3 m about its weak axis, curve c, worked by hand: 1197 kN. Accepted: the digits given; 0.5%.

#include "solver/checks/flexural_buckling.h"
#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

TEST(BucklingCurves, FactorsAtASlendernessOfOne) {
  EXPECT_NEAR(buckling_factor(1.0, BucklingCurve::a0), 0.7253, 5e-5);
  EXPECT_NEAR(buckling_factor(1.0, BucklingCurve::a), 0.6656, 5e-5);
  EXPECT_NEAR(buckling_factor(1.0, BucklingCurve::b), 0.5970, 5e-5);
  EXPECT_NEAR(buckling_factor(1.0, BucklingCurve::c), 0.5399, 5e-5);
  EXPECT_NEAR(buckling_factor(1.0, BucklingCurve::d), 0.4671, 5e-5);
}

TEST(BucklingCurves, ShortColumnsAreNotReduced) {
  EXPECT_EQ(buckling_factor(0.2, BucklingCurve::d), 1.0);
}

TEST(ColumnBuckling, Uc203x46OverThreeMetres) {
  const SteelMember column = steel_member(testing::uc_203x46, SteelGrade::s275);
  const ColumnBuckling weak = column_buckling(column, SectionAxis::z, 3000.0, partial_factors());
  EXPECT_EQ(weak.curve, BucklingCurve::c);
  EXPECT_NEAR(weak.resistance / 1e3, 1197.0, 0.005 * 1197.0);
}

}  // namespace
}  // namespace deadshore::solver
