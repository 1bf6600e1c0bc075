// EN 1993-1-5 section 6 in S275, gamma_M1 1.0, worked by hand from the formulas: UC 152x152x23
// inside, s_s 100: l_y 183.3 mm, 292 kN; UB 203x133x25 inside, s_s 150: l_y 257.8, chi_F 0.832,
// 336 kN; at its end, c 0, s_s 100: k_F 5.198, 216 kN. Accepted: half a unit of the last digit
// given.

#include "solver/checks/steel_checks.h"
#include "tests/published/comparison.h"
#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1993{Field::steel_members, Certainty::by_hand, "EN 1993-1-5 6"};

TEST(PatchLoad, InsideAUc152x23) {
  const SteelMember beam = steel_member(testing::uc_152x23, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {100.0}, partial_factors());
  EXPECT_EQ(bearing.k_F, 6.0);
  verify(
      {en1993, "patch load inside UC 152x152x23: l_y", 183.3, bearing.loaded_length, 0.05, "mm"});
  EXPECT_EQ(bearing.factor, 1.0);
  verify({en1993, "patch load inside UC 152x152x23: F_Rd", 292.0, bearing.resistance / 1e3, 0.5,
          "kN"});
}

TEST(PatchLoad, InsideAUb203x25) {
  const SteelMember beam = steel_member(testing::ub_203x25, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {150.0}, partial_factors());
  verify(
      {en1993, "patch load inside UB 203x133x25: l_y", 257.8, bearing.loaded_length, 0.05, "mm"});
  verify({en1993, "patch load inside UB 203x133x25: chi_F", 0.832, bearing.factor, 0.0005, "-"});
  verify({en1993, "patch load inside UB 203x133x25: F_Rd", 336.0, bearing.resistance / 1e3, 0.5,
          "kN"});
}

TEST(PatchLoad, AtTheEndOfAUb203x25) {
  const SteelMember beam = steel_member(testing::ub_203x25, SteelGrade::s275);
  const WebBearing bearing = web_bearing(beam, {100.0, 0.0}, partial_factors());
  verify({en1993, "patch load at the end of UB 203x133x25: k_F", 5.198, bearing.k_F, 0.0005, "-"});
  verify({en1993, "patch load at the end of UB 203x133x25: F_Rd", 216.0, bearing.resistance / 1e3,
          0.5, "kN"});
}

}  // namespace
}  // namespace deadshore::solver
