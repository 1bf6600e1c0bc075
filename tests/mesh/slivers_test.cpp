#include "mesh/error.h"
#include "mesh_invariants.h"
#include "sample_walls.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::mesh {
namespace {

using namespace testing;
using ::testing::AllOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::ThrowsMessage;

const std::vector<Interval> bearings = {middle_bearing()};

/// Shortest side of any element, mm.
double shortest_side(const QuadMesh& mesh) {
  double shortest = 1e9;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto c = corners_of(mesh, quad);
    shortest = std::min({shortest, c[1].x - c[0].x, c[3].y - c[0].y, c[2].y - c[1].y});
  }
  return shortest;
}

auto refusal_of(const WallShape& wall, double size) {
  return [wall, size] { (void)mesh_wall(wall, {}, bearings, {size}); };
}

TEST(Slivers, LoadEndThreeMillimetresFromAnOpeningIsNotFollowed) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 2000.0, 3000.0, 900.0, 1200.0, 0.0}};
  const std::vector<LevelLine> lines = {{"roof", {2003.0, 5000.0}, 5200.0}};
  const WallMesh mesh = mesh_wall(wall, lines, bearings, {50.0});
  expect_sound(mesh);
  EXPECT_GE(shortest_side(mesh.quads), 5.0 - 1e-6);
  EXPECT_THAT(mesh.remarks, Contains(AllOf(HasSubstr("left end of \"roof\""), HasSubstr("3 mm"))));
  // The whole load still lies on the chain.
  const auto chain = mesh.quads.sides_of(numbered(ChainKind::level_line));
  EXPECT_NEAR(level_length(mesh.quads, chain, {2003.0, 5000.0}), 2997.0, 1e-6);
  EXPECT_LT(level_length(mesh.quads, chain), 2997.0 + 50.0);
}

TEST(Slivers, LevelThreeMillimetresFromASillIsPutOnTheSill) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 2000.0, 3000.0, 900.0, 1200.0, 0.0}};
  for (const double level : {2997.0, 3003.0}) {
    const std::vector<LevelLine> lines = {{"floor", {1000.0, 4000.0}, level}};
    const WallMesh mesh = mesh_wall(wall, lines, bearings, {50.0});
    EXPECT_FALSE(has_height(mesh.quads, level));
    const auto chain = mesh.quads.sides_of(numbered(ChainKind::level_line));
    EXPECT_NEAR(level_length(mesh.quads, chain), 3000.0, 1e-6);
    for (const Point& p : some(ends_of(mesh.quads, chain))) EXPECT_DOUBLE_EQ(p.y, 3000.0);
    EXPECT_THAT(mesh.remarks, Contains(AllOf(HasSubstr("level of \"floor\""), HasSubstr("3 mm"))));
  }
}

TEST(Slivers, OfTwoHardLinesTheLaterMovesAndIsTold) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 803.0, 3000.0, 900.0, 1200.0, 0.0}};  // 3 mm beside the cut's edge
  const WallMesh mesh = mesh_wall(wall, {}, bearings, {50.0});
  expect_sound(mesh);
  EXPECT_TRUE(has_upright(mesh.quads, 800.0));
  EXPECT_FALSE(has_upright(mesh.quads, 803.0));
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall) - 3.0 * 1200.0, 1e-3);
  EXPECT_THAT(mesh.remarks, Contains(AllOf(HasSubstr("left side of opening \"A\""),
                                           HasSubstr("3 mm"), HasSubstr("the cut"))));
}

TEST(Slivers, SameJobWithFinerElementsMovesNothing) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 803.0, 3000.0, 900.0, 1200.0, 0.0}};
  const WallMesh mesh = mesh_wall(wall, {}, bearings, {30.0});
  EXPECT_THAT(mesh.remarks, IsEmpty());
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), 1e-9 * exact_area(wall));
}

TEST(Slivers, RoundingErrorsAreNotTold) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 800.0 + 1e-9, 2400.0 + 600.0 - 1e-9, 900.0, 1200.0, 0.0}};
  EXPECT_THAT(mesh_wall(wall, {}, bearings, {50.0}).remarks, IsEmpty());
}

TEST(Slivers, NarrowPierIsRefusedWithTheSizeThatFits) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 1000.0, 3000.0, 900.0, 1200.0, 0.0},
                   {"B", 1903.0, 3100.0, 900.0, 1200.0, 0.0}};
  EXPECT_THAT(refusal_of(wall, 50.0),
              ThrowsMessage<GeometryError>(AllOf(HasSubstr("right side of opening \"A\""),
                                                 HasSubstr("left side of opening \"B\""),
                                                 HasSubstr("3 mm"), HasSubstr("30 mm or less"))));
  expect_sound(mesh_wall(wall, {}, bearings, {30.0}));
}

TEST(Slivers, NarrowPierBesideTheCutIsRefused) {
  WallShape wall = plain_wall();
  wall.cut.left = 4.0;
  EXPECT_THAT(refusal_of(wall, 50.0),
              ThrowsMessage<GeometryError>(
                  AllOf(HasSubstr("the wall's left end"), HasSubstr("left side of the cut"))));
}

TEST(Slivers, NarrowOpeningIsRefusedByName) {
  WallShape wall = plain_wall();
  wall.openings = {{"slit", 2000.0, 3000.0, 8.0, 1200.0, 0.0}};
  EXPECT_THAT(refusal_of(wall, 100.0), ThrowsMessage<GeometryError>(AllOf(
                                           HasSubstr("opening \"slit\""), HasSubstr("80 mm"))));
}

TEST(Slivers, ThinLintelIsRefusedByName) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 2000.0, 3000.0, 900.0, 1200.0, 0.0}};
  wall.lintels = {{"flat steel", 0, 8.0, 150.0}};
  EXPECT_THAT(refusal_of(wall, 100.0),
              ThrowsMessage<GeometryError>(HasSubstr("lintel \"flat steel\"")));
}

TEST(Slivers, ThinBandOverTheCutIsRefused) {
  WallShape wall = plain_wall();
  wall.openings = {{"A", 2000.0, 2404.0, 900.0, 1200.0, 0.0}};
  EXPECT_THAT(refusal_of(wall, 50.0),
              ThrowsMessage<GeometryError>(
                  AllOf(HasSubstr("the soffit of the cut"), HasSubstr("sill of opening \"A\""))));
}

TEST(Slivers, NarrowChimneyIsRefused) {
  WallShape wall = wall_with_top({{0.0, 5200.0},
                                  {2000.0, 5200.0},
                                  {2000.0, 6000.0},
                                  {2006.0, 6000.0},
                                  {2006.0, 5200.0},
                                  {6000.0, 5200.0}});
  EXPECT_THAT(refusal_of(wall, 100.0), ThrowsMessage<GeometryError>(HasSubstr("6 mm")));
}

}  // namespace
}  // namespace deadshore::mesh
