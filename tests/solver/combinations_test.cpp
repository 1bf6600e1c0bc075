#include "solver/checks/safety_basis.h"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace deadshore::solver {
namespace {

TEST(Combinations, TheActionThatAddsMostLeads) {
  // Led by the second: 1.5 x (0.7 x 2 + 3); by the first it would be 1.5 x (2 + 0.5 x 3).
  const std::vector<VariableAction> actions = {{2.0, 0.7}, {3.0, 0.5}};
  EXPECT_DOUBLE_EQ(combine(Combination::eq_6_10, 0.0, actions), 1.5 * 4.4);
}

TEST(Combinations, WithoutVariableActionsOnlyThePermanentOneCounts) {
  EXPECT_DOUBLE_EQ(combine(Combination::eq_6_10, 10.0, {}), 13.5);
  EXPECT_DOUBLE_EQ(combine(Combination::eq_6_10b, 10.0, {}), 0.925 * 13.5);
  EXPECT_DOUBLE_EQ(combine(Combination::unfactored, 10.0, {}), 10.0);
}

TEST(Combinations, Eq610IsNeverBelowTheOtherTwo) {
  const std::vector<VariableAction> actions = {{3.0, 0.7}, {1.5, 0.5}};
  for (const double G : {0.0, 1.0, 5.0, 50.0})
    EXPECT_GE(combine(Combination::eq_6_10, G, actions),
              combine(Combination::eq_6_10a_or_b, G, actions));
}

TEST(Combinations, OwnFactorsAreTaken) {
  const std::vector<VariableAction> actions = {{2.0, 0.7}};
  EXPECT_DOUBLE_EQ(combine(Combination::eq_6_10, 10.0, actions, {1.4, 1.6, 1.0}), 14.0 + 3.2);
}

}  // namespace
}  // namespace deadshore::solver
