#include "solver/checks/check.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace deadshore::solver {
namespace {

Check compared(double demand, double capacity) {
  Check check;
  check.demand = demand;
  check.capacity = capacity;
  return check;
}

TEST(Check, PassesUpToAUtilisationOfOne) {
  EXPECT_TRUE(compared(10.0, 10.0).passes());
  EXPECT_FALSE(compared(10.1, 10.0).passes());
  EXPECT_DOUBLE_EQ(compared(5.0, 10.0).utilisation(), 0.5);
}

TEST(Check, WithoutCapacityOnlyNoDemandPasses) {
  EXPECT_FALSE(compared(1.0, 0.0).passes());
  EXPECT_TRUE(compared(0.0, 0.0).passes());
}

TEST(Check, WhatIsNoNumberNeverPasses) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(compared(nan, 10.0).passes());
  EXPECT_FALSE(compared(0.0, nan).passes());
}

TEST(Check, WhatIsNotVerifiedNeverPasses) {
  Check check = not_verified("suspended floor", "common practice", "nobody has looked");
  check.capacity = 1e9;
  EXPECT_FALSE(check.passes());
  EXPECT_TRUE(std::isinf(check.utilisation()));
  EXPECT_EQ(check.caution, "nobody has looked");
}

TEST(Check, TheWorstComesFirst) {
  std::vector<Check> checks = {compared(1.0, 2.0), not_verified("a", "b", "c"), compared(3.0, 2.0)};
  sort_worst_first(checks);
  EXPECT_TRUE(checks[0].not_verified);
  EXPECT_EQ(checks[1].demand, 3.0);
  EXPECT_EQ(checks[2].demand, 1.0);
}

TEST(Check, LabelsGoOnEveryCheck) {
  for (const Check& check : labelled({compared(1.0, 2.0), compared(1.0, 3.0)}, "N1", "cut")) {
    EXPECT_EQ(check.member, "N1");
    EXPECT_EQ(check.stage, "cut");
  }
}

}  // namespace
}  // namespace deadshore::solver
