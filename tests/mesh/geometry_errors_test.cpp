#include "mesh/error.h"
#include "mesh/wall_mesher.h"
#include "sample_walls.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::mesh {
namespace {

using namespace testing;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::ThrowsMessage;

auto meshing(const WallShape& wall, std::vector<Interval> bearings = {middle_bearing()},
             double size = 100.0) {
  return [=] { (void)mesh_wall(wall, {}, bearings, {size}); };
}

auto refused(const std::string& part) {
  return ThrowsMessage<GeometryError>(HasSubstr(part));
}

TEST(GeometryErrors, ElementSizeMustBePositive) {
  EXPECT_THAT(meshing(plain_wall(), {}, 0.0), refused("element size"));
  EXPECT_THAT(meshing(plain_wall(), {}, -50.0), refused("element size"));
}

TEST(GeometryErrors, TooManyElementsAreRefused) {
  EXPECT_THAT(meshing(plain_wall(), {}, 0.5), refused("take larger ones"));
}

TEST(GeometryErrors, TooManyElementsOfAThinStripAreRefused) {
  constexpr double kilometre = 1e6;
  for (const double height : {0.2, 0.05}) {
    const WallShape strip{
        kilometre, {{0.0, height}, {kilometre, height}}, {}, {}, {800.0, 4400.0, 0.5 * height}};
    EXPECT_THAT(meshing(strip, {}, 0.1), refused("take larger ones")) << height;
  }
}

TEST(GeometryErrors, TopMustRunFromEndToEnd) {
  EXPECT_THAT(meshing(wall_with_top({{0.0, 5000.0}, {5000.0, 5000.0}})), refused("right end"));
  EXPECT_THAT(meshing(wall_with_top({{0.0, 5000.0}})), refused("right end"));
  EXPECT_THAT(
      meshing(wall_with_top({{0.0, 5000.0}, {4000.0, 5200.0}, {3000.0, 5300.0}, {6000.0, 5000.0}})),
      refused("right end"));
}

TEST(GeometryErrors, WallMustHaveHeightEverywhere) {
  EXPECT_THAT(meshing(wall_with_top({{0.0, 0.0}, {3000.0, 5000.0}, {6000.0, 0.0}})),
              refused("no height at x = 0.000 m"));
}

TEST(GeometryErrors, OpeningOutsideTheWallIsNamed) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 5500.0, 3000.0, 900.0, 1200.0, 0.0}};
  EXPECT_THAT(meshing(wall), refused("opening \"A\" lies outside the wall"));
}

TEST(GeometryErrors, OpeningThroughASlopingTopIsNamed) {
  WallShape wall = gable();
  wall.openings = {{"A", 300.0, 2800.0, 900.0, 1200.0, 0.0}};  // comes out of the slope on the left
  EXPECT_THAT(meshing(wall), ThrowsMessage<GeometryError>(
                                 AllOf(HasSubstr("head of opening \"A\""), HasSubstr("the top"))));
}

TEST(GeometryErrors, SlopeThatEndsBelowALowerStretchIsRefused) {
  // The left stretch starts above and ends below the right one: no order of levels fits both.
  EXPECT_THAT(
      meshing(wall_with_top({{0.0, 5200.0}, {3000.0, 4000.0}, {3000.0, 4500.0}, {6000.0, 4500.0}})),
      refused("at x = 3.000 m"));
}

TEST(GeometryErrors, WallWithoutNeedlesOverAFullCutHangsOnNothing) {
  WallShape wall = plain_wall();
  wall.cut = {0.0, 6000.0, 2400.0};
  EXPECT_THAT(meshing(wall, {}),
              ThrowsMessage<GeometryError>(
                  AllOf(HasSubstr("x = 0.000 to 6.000 m"), HasSubstr("y = 2.400 to 5.200 m"))));
}

TEST(GeometryErrors, PieceBetweenSlotsHangsUnlessANeedleBearsUnderIt) {
  // Two slots down to the soffit leave a piece of wall between them.
  WallShape wall = plain_wall();
  wall.openings = {{"S1", 1500.0, 2400.0, 200.0, 2800.0, 0.0},
                   {"S2", 3500.0, 2400.0, 200.0, 2800.0, 0.0}};
  EXPECT_THAT(meshing(wall, {{1000.0, 1150.0}}), refused("x = 1.700 to 3.500 m"));
  EXPECT_NO_THROW(meshing(wall, {{2500.0, 2650.0}})());
}

TEST(GeometryErrors, LintelNeedsItsOpening) {
  WallShape wall = plain_wall();
  wall.lintels = {{"stone", 0, 140.0, 150.0}};
  EXPECT_THAT(meshing(wall), refused("lintel \"stone\""));
}

}  // namespace
}  // namespace deadshore::mesh
