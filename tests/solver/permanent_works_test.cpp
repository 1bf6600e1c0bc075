#include "solver/job/permanent_works.h"

#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

constexpr DryPacking packing{25.0, 15000.0, 20.0, 0.25};

TEST(DryPacking, HasNoStrengthBeforeItIsRammedInAndGainsNoneAfterFourWeeks) {
  EXPECT_EQ(hardened_strength_share(packing, 0.0), 0.0);
  EXPECT_EQ(hardened_strength_share(packing, -1.0), 0.0);
  EXPECT_EQ(hardened_strength_share(packing, 28.0), 1.0);
  EXPECT_EQ(hardened_strength_share(packing, 365.0), 1.0);
}

TEST(DryPacking, HardensSteadilyAndSlowCementLags) {
  DryPacking slow = packing;
  slow.hardening = 0.38;
  double before = 0.0;
  for (double age = 0.25; age < 28.0; age += 0.25) {
    const double share = hardened_strength_share(packing, age);
    EXPECT_GT(share, before);
    EXPECT_LT(hardened_strength_share(slow, age), share);
    before = share;
  }
}

TEST(DryPacking, BedIsModulusOverThicknessWhenHardened) {
  EXPECT_DOUBLE_EQ(packing_bed(packing, 28.0), 15000.0 / 25.0);
}

TEST(DryPacking, BearsAtOnceAsIfHalfADayOld) {
  EXPECT_GT(packing_bed(packing, 0.0), 0.0);
  EXPECT_EQ(packing_bed(packing, 0.0), packing_bed(packing, 0.5));
  EXPECT_LT(packing_bed(packing, 0.5), packing_bed(packing, 0.6));
}

TEST(PermanentBeam, TwoSectionsSideBySideAreTwiceOne) {
  PermanentBeam one;
  one.member = steel_member(testing::ub_254x31, SteelGrade::s275);
  PermanentBeam two = one;
  two.count = 2;
  EXPECT_DOUBLE_EQ(two.weight(), 2.0 * one.weight());
  EXPECT_DOUBLE_EQ(two.bending_stiffness(), 2.0 * one.bending_stiffness());
  EXPECT_DOUBLE_EQ(two.shear_stiffness(), 2.0 * one.shear_stiffness());
  EXPECT_DOUBLE_EQ(two.flange_width(), 2.0 * one.flange_width());
}

// UB 254x146x31: 31.1 kg/m, I_y 4413 cm4, from the dimensions (see sample_sections.h).
TEST(PermanentBeam, TakesWeightAndStiffnessFromItsSection) {
  PermanentBeam beam;
  beam.member = steel_member(testing::ub_254x31, SteelGrade::s275);
  EXPECT_NEAR(beam.weight(), 31.1 * 9.81 / 1000.0, 0.005 * 0.305);
  EXPECT_NEAR(beam.bending_stiffness(), 210000.0 * 4413e4, 0.002 * 210000.0 * 4413e4);
}

}  // namespace
}  // namespace deadshore::solver
