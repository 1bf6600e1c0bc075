#include "viz/page/round_number.h"

#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::viz {
namespace {

TEST(RoundNumber, IsTheLargestOfItsSeriesThatIsNotAbove) {
  EXPECT_DOUBLE_EQ(largest_round(0.18), 0.1);
  EXPECT_DOUBLE_EQ(largest_round(0.2), 0.2);
  EXPECT_DOUBLE_EQ(largest_round(4.99), 2.0);
  EXPECT_DOUBLE_EQ(largest_round(5.0), 5.0);
  EXPECT_DOUBLE_EQ(largest_round(870.0), 500.0);
}

TEST(RoundNumber, GoesDownItsSeries) {
  EXPECT_DOUBLE_EQ(next_round_below(1.0), 0.5);
  EXPECT_DOUBLE_EQ(next_round_below(0.5), 0.2);
  EXPECT_DOUBLE_EQ(next_round_below(0.2), 0.1);
}

TEST(RoundNumber, OfNothingIsOne) {
  for (const double value : {0.0, -2.0, std::nan(""), HUGE_VAL})
    EXPECT_DOUBLE_EQ(largest_round(value), 1.0);
}

}  // namespace
}  // namespace deadshore::viz
