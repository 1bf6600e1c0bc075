#include "mesh/wall_shape.h"

#include "mesh/error.h"
#include "sample_walls.h"

#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::mesh {
namespace {

using testing::stepped_parapet;

TEST(SegmentalHead, PassesThroughSpringingsAndCrown) {
  const Opening opening{"A", 1000.0, 500.0, 1200.0, 1500.0, 200.0};
  EXPECT_NEAR(opening.head(1000.0), 1800.0, 1e-9);
  EXPECT_NEAR(opening.head(2200.0), 1800.0, 1e-9);
  EXPECT_DOUBLE_EQ(opening.head(1600.0), 2000.0);
}

TEST(SegmentalHead, IsACircle) {
  // Chord c and rise h have the radius (c^2/4 + h^2) / (2 h), from the chord theorem.
  const Opening opening{"A", 0.0, 0.0, 1200.0, 1500.0, 200.0};
  const double radius = (600.0 * 600.0 + 200.0 * 200.0) / 400.0;
  for (const double x : {0.0, 130.0, 470.0, 900.0, 1200.0}) {
    EXPECT_NEAR(std::hypot(x - 600.0, opening.head(x) - (1500.0 - radius)), radius, 1e-9);
  }
}

TEST(SegmentalHead, WithoutRiseIsFlat) {
  const Opening opening{"A", 1000.0, 500.0, 1200.0, 1500.0, 0.0};
  EXPECT_DOUBLE_EQ(opening.head(1100.0), 2000.0);
}

TEST(WallShape, TopAtAStepIsTheLowerSide) {
  const WallShape wall = stepped_parapet();
  EXPECT_DOUBLE_EQ(wall.top_at(1500.0), 4000.0);
  EXPECT_DOUBLE_EQ(wall.top_at(1500.1), 4600.0);
  EXPECT_DOUBLE_EQ(wall.top_at(4000.0), 4600.0);
  EXPECT_DOUBLE_EQ(wall.height(), 5200.0);
}

TEST(WallShape, TopOfASlopeIsInterpolated) {
  EXPECT_DOUBLE_EQ(testing::gable().top_at(1500.0), 4600.0);
}

TEST(WallShape, SolidMeansInsideTheOutlineAndInNoHole) {
  WallShape wall = stepped_parapet();
  wall.openings = {{"A", 2000.0, 3000.0, 800.0, 900.0, 100.0}};
  EXPECT_TRUE(is_solid(wall, {400.0, 1000.0}));
  EXPECT_FALSE(is_solid(wall, {2600.0, 1000.0}));  // in the cut
  EXPECT_TRUE(is_solid(wall, {2600.0, 2400.0}));   // on the soffit
  EXPECT_FALSE(is_solid(wall, {2400.0, 3890.0}));  // under the crown
  EXPECT_TRUE(is_solid(wall, {2010.0, 3890.0}));   // in the haunch
  EXPECT_FALSE(is_solid(wall, {1400.0, 4300.0}));  // above the low part
  EXPECT_TRUE(is_solid(wall, {1500.0, 4300.0}));   // on the step's face
  EXPECT_FALSE(is_solid(wall, {-1.0, 100.0}));
}

TEST(WallShape, LintelLiesOnTheHeadAndBearsOnBothSides) {
  WallShape wall = stepped_parapet();
  wall.openings = {{"A", 2000.0, 3000.0, 800.0, 900.0, 0.0}};
  const LintelExtent extent = extent_of({"L", 0, 140.0, 150.0}, wall);
  EXPECT_DOUBLE_EQ(extent.x.from, 1850.0);
  EXPECT_DOUBLE_EQ(extent.x.to, 2950.0);
  EXPECT_DOUBLE_EQ(extent.y.from, 3900.0);
  EXPECT_DOUBLE_EQ(extent.y.to, 4040.0);
  EXPECT_THROW((void)extent_of({"L", 1, 140.0, 150.0}, wall), GeometryError);
}

}  // namespace
}  // namespace deadshore::mesh
