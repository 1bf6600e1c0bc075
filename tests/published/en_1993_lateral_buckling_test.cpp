// Lateral-torsional buckling.
// (a) Worked example of the European "Multi-storey steel buildings" guide, part 4 (MSB04), p. 70
// on:
//     a secondary beam IPE 330 in S235 over 5.7 m, C_1 1.127, C_2 z_g 74.91 mm, N_cr,z 502.75 kN ->
//     M_cr 113.9 kNm, lambda 1.288, Phi 1.340, chi_LT 0.480 by 6.3.2.3, curve c. Read in a stored
//     copy. Accepted: 0.5% for M_cr (its I_t and I_w are rounded, its G is 81 GPa's neighbour),
//     0.005 for the rest.
// (b) M_b,Rd of four sections in S275 under uniform moment, calculated by hand from the formulas of
//     6.3.2.3 with UK values. Accepted: 1%.

#include "solver/checks/member_buckling.h"
#include "solver/checks/steel_checks.h"
#include "tests/published/comparison.h"
#include "tests/solver/sample_sections.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source msb04{Field::steel_members, Certainty::read,
                       "Worked example in Multi-storey steel buildings, part 4, p. 70"};
constexpr Source en1993{Field::steel_members, Certainty::by_hand, "EN 1993-1-1 6.3.2.3"};

TEST(LateralBucklingMsb04, TheWorkedExampleComesOut) {
  const SteelMember beam = steel_member(testing::ipe_330, SteelGrade::s235);
  LateralSpan span;
  span.length = 5700.0;
  span.C_1 = 1.127;
  span.C_2 = 0.454;
  span.z_g = 165.0;
  const LateralBuckling buckling = lateral_buckling(beam, span, partial_factors());
  verify({msb04, "IPE 330, S235, 5.7 m: M_cr", 113.9, buckling.M_cr / 1e6, 0.005 * 113.9, "kNm"});
  EXPECT_EQ(buckling.curve, BucklingCurve::c);
  verify({msb04, "IPE 330, S235, 5.7 m: lambda", 1.288, buckling.slenderness, 0.005, "-"});
  verify({msb04, "IPE 330, S235, 5.7 m: Phi", 1.340, buckling.phi, 0.005, "-"});
  verify({msb04, "IPE 330, S235, 5.7 m: chi_LT", 0.480, buckling.factor, 0.005, "-"});
}

TEST(LateralBucklingUniformMoment, ResistancesAreThoseWorkedByHand) {
  struct Row {
    SteelSection section;
    std::array<double, 3> resistance;  // kNm at 1.5, 2.0 and 3.0 m
  };
  const std::array<Row, 4> rows{{{testing::uc_152x23, {45.1, 43.2, 39.0}},
                                 {testing::uc_152x30, {68.1, 65.2, 59.5}},
                                 {testing::ub_203x25, {68.5, 64.0, 54.5}},
                                 {testing::ub_254x31, {105.9, 99.5, 85.5}}}};
  constexpr std::array<double, 3> lengths = {1500.0, 2000.0, 3000.0};
  for (const Row& row : rows) {
    const SteelMember beam = steel_member(row.section, SteelGrade::s275);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
      LateralSpan span;
      span.length = lengths[i];
      verify({en1993,
              fmt::format("{}, S275, {} m, uniform moment: M_b,Rd", row.section.name,
                          lengths[i] / 1e3),
              row.resistance[i], lateral_buckling(beam, span, partial_factors()).resistance / 1e6,
              0.01 * row.resistance[i], "kNm"});
    }
  }
}

// c/t_f 9.65 is over 10 epsilon = 9.24: class 3 in S275, so 164 cm3 x 275, not 182 x 275 = 50.0.
TEST(BendingOfUc152x23, IsElasticInS275) {
  const SteelMember needle = steel_member(testing::uc_152x23, SteelGrade::s275);
  EXPECT_EQ(needle.class_in_bending, 3);
  verify({en1993, "UC 152x152x23, S275, class 3: M_c,Rd", 45.1,
          bending_resistance(needle, partial_factors()) / 1e6, 0.1, "kNm"});
}

}  // namespace
}  // namespace deadshore::solver
