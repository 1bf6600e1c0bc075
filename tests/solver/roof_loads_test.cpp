#include "solver/loads/roof_loads.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

TEST(RoofLoads, NobodyStandsOnASteepRoof) {
  EXPECT_DOUBLE_EQ(roof_access_load(0.0), 0.6e-3);
  EXPECT_DOUBLE_EQ(roof_access_load(30.0), 0.6e-3);
  EXPECT_DOUBLE_EQ(roof_access_load(45.0), 0.3e-3);
  EXPECT_EQ(roof_access_load(60.0), 0.0);
  EXPECT_EQ(roof_access_load(75.0), 0.0);
}

TEST(RoofLoads, SnowSlidesOffASteepRoof) {
  EXPECT_DOUBLE_EQ(snow_shape_coefficient(0.0), 0.8);
  EXPECT_DOUBLE_EQ(snow_shape_coefficient(30.0), 0.8);
  EXPECT_DOUBLE_EQ(snow_shape_coefficient(52.5), 0.2);
  EXPECT_EQ(snow_shape_coefficient(60.0), 0.0);
  EXPECT_EQ(snow_shape_coefficient(89.0), 0.0);
}

TEST(RoofLoads, SnowOnTheGroundGrowsWithZoneAndHeight) {
  constexpr double metre = 1000.0;
  EXPECT_DOUBLE_EQ(ground_snow_uk(3, 100.0 * metre), 0.50e-3);
  EXPECT_DOUBLE_EQ(ground_snow_uk(4, 100.0 * metre), 0.60e-3);
  EXPECT_DOUBLE_EQ(ground_snow_uk(3, 625.0 * metre), 1.50e-3);
  EXPECT_EQ(ground_snow_uk(1, -100.0 * metre), 0.0);
}

}  // namespace
}  // namespace deadshore::solver
