// EN 1996-1-1, worked by hand from its formulas. 3.6.1.2, f_k = K f_b^0.7 f_m^0.3 (K 0.50 UK NA,
// 0.55 recommended; from memory, unverified); 6.1.3 (read in a public copy): a pad of
// 440 x 215 mm on a wall 215 thick and 2300 high, f_d 6.170 / 3.0 = 2.057 N/mm2, at 0, 500 and 1000
// mm from the end. Accepted: the digits given.

#include "solver/checks/masonry_checks.h"

#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

TEST(MasonryStrength, FollowsFromUnitsAndMortar) {
  EXPECT_NEAR(masonry_strength({0.50, 20.0, 4.0, false}), 6.170, 0.0005);
  EXPECT_NEAR(masonry_strength({0.50, 20.0, 4.0, true}), 4.94, 0.005);
  EXPECT_NEAR(masonry_strength({0.50, 10.0, 2.0, false}), 3.085, 0.0005);
  EXPECT_NEAR(masonry_strength({0.50, 10.0, 1.0, false}), 2.506, 0.0005);
  EXPECT_NEAR(masonry_strength({0.55, 20.0, 4.0, false}), 6.787, 0.0005);
}

TEST(ConcentratedLoad, OnAPadAtThreeDistancesFromTheEnd) {
  struct Row {
    double from_end, spread_length, enhancement, resistance;
  };
  constexpr std::array<Row, 3> rows{{{0.0, 1104.0, 1.0616, 206.6},
                                     {500.0, 1604.0, 1.2764, 248.3},
                                     {1000.0, 1767.9, 1.3862, 269.7}}};
  const SafetyBasis basis = partial_factors();
  for (const Row& row : rows) {
    const ConcentratedLoad load{440.0, 215.0, 215.0, row.from_end, 5000.0, 2300.0, 0.0};
    const ConcentratedResistance result =
        concentrated_resistance(load, masonry_strength({0.50, 20.0, 4.0, false}), basis);
    EXPECT_NEAR(result.spread_length, row.spread_length, 0.05);
    EXPECT_NEAR(result.enhancement, row.enhancement, 0.00005);
    EXPECT_NEAR(result.resistance / 1e3, row.resistance, 0.05);
  }
}

}  // namespace
}  // namespace deadshore::solver
