// EN 1993-1-5 section 6 in S275, gamma_M1 1.0, worked by hand from the formulas: UC 152x152x23
// inside, s_s 100: l_y 183.3 mm, 292 kN; UB 203x133x25 inside, s_s 150: l_y 257.8, chi_F 0.832,
// 336 kN; at its end, c 0, s_s 100: k_F 5.198, 216 kN. Accepted: half a unit of the last digit
// given.

#include "solver/checks/web_bearing.h"
#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

TEST(PatchLoad, InsideAUc152x23) {
  const SteelMember beam = steel_member(testing::uc_152x23, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {100.0}, partial_factors());
  EXPECT_EQ(bearing.k_F, 6.0);
  EXPECT_NEAR(bearing.loaded_length, 183.3, 0.05);
  EXPECT_EQ(bearing.factor, 1.0);
  EXPECT_NEAR(bearing.resistance / 1e3, 292.0, 0.5);
}

TEST(PatchLoad, InsideAUb203x25) {
  const SteelMember beam = steel_member(testing::ub_203x25, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {150.0}, partial_factors());
  EXPECT_NEAR(bearing.loaded_length, 257.8, 0.05);
  EXPECT_NEAR(bearing.factor, 0.832, 0.0005);
  EXPECT_NEAR(bearing.resistance / 1e3, 336.0, 0.5);
}

TEST(PatchLoad, AtTheEndOfAUb203x25) {
  const SteelMember beam = steel_member(testing::ub_203x25, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {100.0, 0.0}, partial_factors());
  EXPECT_NEAR(bearing.k_F, 5.198, 0.0005);
  EXPECT_NEAR(bearing.resistance / 1e3, 216.0, 0.5);
}

}  // namespace
}  // namespace deadshore::solver
