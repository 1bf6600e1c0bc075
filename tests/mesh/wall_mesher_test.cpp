#include "mesh/wall_mesher.h"

#include "mesh_invariants.h"
#include "sample_walls.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace deadshore::mesh {
namespace {

using namespace testing;
using ::testing::Each;
using ::testing::Field;
using ::testing::IsEmpty;

/// Two windows, one under a lintel and one arched, and a door through the right pier.
WallShape furnished_wall() {
  WallShape wall = plain_wall();
  wall.openings = {{"window", 1100.0, 3000.0, 900.0, 1400.0, 0.0},
                   {"arch", 3000.0, 3300.0, 1000.0, 1000.0, 150.0},
                   {"door", 4900.0, 0.0, 800.0, 2100.0, 0.0}};
  wall.lintels = {{"stone", 0, 140.0, 150.0}};
  return wall;
}

const std::vector<Interval> bearings = {{1324.0, 1476.0}, {2524.0, 2676.0}, {3724.0, 3876.0}};
const std::vector<LevelLine> lines = {{"roof", {0.0, 6000.0}, 5200.0},
                                      {"floor", {500.0, 5500.0}, 2710.0},
                                      {"purlin", {3815.0, 4010.0}, 4700.0}};

WallMesh furnished_mesh(double size, QuadOrder order = QuadOrder::four_node) {
  return mesh_wall(furnished_wall(), lines, bearings, {size, order});
}

TEST(WallMesh, PlainWallIsSoundAndExactInArea) {
  const WallShape wall = plain_wall();
  const WallMesh mesh = mesh_wall(wall, lines, bearings, {50.0});
  expect_sound(mesh);
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), 1e-9 * exact_area(wall));
  EXPECT_LT(mesh.worst_aspect, 2.0);
  EXPECT_THAT(mesh.remarks, IsEmpty());
}

TEST(WallMesh, PlainWallHasExactlyLevelRows) {
  const WallMesh mesh = mesh_wall(plain_wall(), lines, bearings, {50.0});
  for (int quad = 0; quad < mesh.quads.quad_count(); ++quad) {
    const auto c = corners_of(mesh.quads, quad);
    ASSERT_EQ(c[0].y, c[1].y);
    ASSERT_EQ(c[3].y, c[2].y);
  }
}

TEST(WallMesh, EveryEdgeOfTheWallIsALineOfTheMesh) {
  const WallMesh mesh = furnished_mesh(50.0);
  expect_sound(mesh);
  for (const double x :
       {0.0,    800.0,  950.0,  1100.0, 1324.0, 1476.0, 2000.0, 2150.0, 2524.0, 2676.0, 3000.0,
        4000.0, 3724.0, 3876.0, 4400.0, 4900.0, 5700.0, 500.0,  5500.0, 3815.0, 4010.0, 6000.0}) {
    EXPECT_TRUE(has_upright(mesh.quads, x)) << x;
  }
  for (const double y :
       {0.0, 2100.0, 2400.0, 2710.0, 3000.0, 4400.0, 4540.0, 3300.0, 4150.0, 4700.0, 5200.0}) {
    EXPECT_TRUE(has_height(mesh.quads, y)) << y;
  }
}

TEST(WallMesh, NoElementReachesAcrossAnEdge) {
  WallShape wall = furnished_wall();
  wall.openings[1].rise = 0.0;
  const WallMesh mesh = mesh_wall(wall, lines, bearings, {80.0});
  for (int quad = 0; quad < mesh.quads.quad_count(); ++quad) {
    const auto c = corners_of(mesh.quads, quad);
    const Point middle{0.25 * (c[0].x + c[1].x + c[2].x + c[3].x),
                       0.25 * (c[0].y + c[1].y + c[2].y + c[3].y)};
    for (const Point& corner : c) {
      const Point inside{0.99 * corner.x + 0.01 * middle.x, 0.99 * corner.y + 0.01 * middle.y};
      ASSERT_TRUE(is_solid(wall, inside)) << inside.x << ", " << inside.y;
    }
  }
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), 1e-9 * exact_area(wall));
}

TEST(WallMesh, LintelIsARegionOfItsOwnRectangle) {
  const WallMesh mesh = furnished_mesh(50.0);
  ASSERT_EQ(mesh.quads.regions,
            (std::vector<Region>{{RegionKind::masonry}, {RegionKind::lintel, 0}}));
  EXPECT_NEAR(total_area(mesh.quads, 1), 1200.0 * 140.0, 1e-3);
  for (int quad = 0; quad < mesh.quads.quad_count(); ++quad) {
    if (mesh.quads.region_of_quad[static_cast<std::size_t>(quad)] != 1) continue;
    for (const Point& p : corners_of(mesh.quads, quad)) {
      EXPECT_TRUE(p.x > 949.999 && p.x < 2150.001 && p.y > 4399.999 && p.y < 4540.001);
    }
  }
}

TEST(WallMesh, ChainsBoundWhatTheirNamesSay) {
  const QuadMesh mesh = furnished_mesh(50.0).quads;
  const auto length = [&](Chain chain) { return level_length(mesh, mesh.sides_of(chain)); };
  EXPECT_NEAR(length(numbered(ChainKind::base_left)), 800.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::base_right)), 1600.0 - 800.0, 1e-6);  // less the door
  EXPECT_NEAR(length(numbered(ChainKind::soffit)), 3600.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::top)), 6000.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::opening_head, 0)), 900.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::opening_sill, 0)), 900.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::opening_head, 1)), 1000.0, 1e-6);
  EXPECT_NEAR(length(numbered(ChainKind::opening_head, 2)), 800.0, 1e-6);
  EXPECT_TRUE(mesh.sides_of(numbered(ChainKind::opening_sill, 2)).empty());
  EXPECT_THAT(ends_of(mesh, mesh.sides_of(ChainKind::base_left)), Each(Field(&Point::y, 0.0)));
  EXPECT_THAT(ends_of(mesh, mesh.sides_of(ChainKind::soffit)), Each(Field(&Point::y, 2400.0)));
  EXPECT_THAT(ends_of(mesh, mesh.sides_of(ChainKind::top)), Each(Field(&Point::y, 5200.0)));
}

TEST(WallMesh, EndChainsLieAboveTheSoffit) {
  const QuadMesh mesh = mesh_wall(plain_wall(), lines, bearings, {50.0}).quads;
  for (const auto& [end, x] :
       {std::pair(ChainKind::left_end, 0.0), std::pair(ChainKind::right_end, 6000.0)}) {
    const std::vector<Point> ends = ends_of(mesh, mesh.sides_of(end));
    ASSERT_FALSE(ends.empty());
    EXPECT_THAT(ends, Each(Field(&Point::x, x)));
    const auto [low, high] = std::ranges::minmax(ends, {}, &Point::y);
    EXPECT_NEAR(low.y, 2400.0, 1e-6);
    EXPECT_NEAR(high.y, 5200.0, 1e-6);
  }
}

TEST(WallMesh, ArchNodesLieOnTheArc) {
  const WallShape wall = furnished_wall();
  const QuadMesh mesh = furnished_mesh(50.0).quads;
  for (const Point& p : some(ends_of(mesh, mesh.sides_of(numbered(ChainKind::opening_head, 1))))) {
    EXPECT_NEAR(p.y, wall.openings[1].head(p.x), 1e-9);
  }
}

TEST(WallMesh, ArchedAreaConvergesWithTheSquareOfTheSize) {
  WallShape wall = plain_wall();
  wall.openings = {{"arch", 2000.0, 3300.0, 1600.0, 1200.0, 300.0}};
  const auto error = [&](double size) {
    const QuadMesh mesh = mesh_wall(wall, {}, bearings, {size}).quads;
    return total_area(mesh) - exact_area(wall);
  };
  // Chords inside the arc leave the wall too large.
  const double coarse = error(200.0);
  const double fine = error(100.0);
  EXPECT_GT(fine, 0.0);
  EXPECT_NEAR(coarse / fine, 4.0, 0.2);
}

TEST(LevelLineChain, SidesLieJustAboveTheLevel) {
  const QuadMesh mesh = furnished_mesh(50.0).quads;
  const auto chain = mesh.sides_of(numbered(ChainKind::level_line, 1));
  EXPECT_NEAR(level_length(mesh, chain), 5000.0, 1e-6);
  EXPECT_THAT(ends_of(mesh, chain), Each(Field(&Point::y, 2710.0)));
  for (const Side side : chain) {
    EXPECT_EQ(side.side, 0);
    EXPECT_GT(corners_of(mesh, side.quad)[2].y, 2710.0);
  }
}

TEST(LevelLineChain, OnTheTopTakesTheSidesBelow) {
  const QuadMesh mesh = furnished_mesh(50.0).quads;
  const auto chain = mesh.sides_of(numbered(ChainKind::level_line));
  EXPECT_NEAR(level_length(mesh, chain), 6000.0, 1e-6);
  EXPECT_THAT(chain, Each(Field(&Side::side, 2)));
}

TEST(LevelLineChain, OnASillTakesTheSidesBelowAndBesideItThoseAbove) {
  const std::vector<LevelLine> sill = {{"shelf", {900.0, 2200.0}, 3000.0}};
  const QuadMesh mesh = mesh_wall(furnished_wall(), sill, bearings, {50.0}).quads;
  const auto chain = mesh.sides_of(numbered(ChainKind::level_line));
  EXPECT_NEAR(level_length(mesh, chain), 1300.0, 1e-6);
  for (const Side side : chain) {
    const double x = corners_of(mesh, side.quad)[0].x;
    EXPECT_EQ(side.side, x > 1099.0 && x < 1999.0 ? 2 : 0) << x;
  }
}

TEST(LevelLineChain, IsBrokenByAnOpening) {
  const std::vector<LevelLine> across = {{"floor", {500.0, 2500.0}, 3600.0}};
  const QuadMesh mesh = mesh_wall(furnished_wall(), across, bearings, {50.0}).quads;
  EXPECT_NEAR(level_length(mesh, mesh.sides_of(numbered(ChainKind::level_line))), 2000.0 - 900.0,
              1e-6);
}

TEST(LevelLineChain, FollowsASlopingTop) {
  const std::vector<LevelLine> roof = {{"rafters", {1000.0, 5000.0}, 0.0, true}};
  const WallShape wall = gable();
  const QuadMesh mesh = mesh_wall(wall, roof, bearings, {100.0}).quads;
  EXPECT_NEAR(level_length(mesh, mesh.sides_of(numbered(ChainKind::level_line))), 4000.0, 1e-6);
  for (const Point& p : ends_of(mesh, mesh.sides_of(numbered(ChainKind::level_line)))) {
    EXPECT_NEAR(p.y, wall.top_at(p.x), 1e-9);
  }
}

TEST(LevelLineChain, StaysLevelUnderASlopeWhereThereIsRoom) {
  const std::vector<LevelLine> floor = {{"floor", {1000.0, 5000.0}, 2900.0}};
  const WallMesh mesh = mesh_wall(gable(), floor, bearings, {50.0});
  EXPECT_THAT(ends_of(mesh.quads, mesh.quads.sides_of(numbered(ChainKind::level_line))),
              Each(Field(&Point::y, ::testing::DoubleNear(2900.0, 1e-6))));
  EXPECT_THAT(mesh.remarks, IsEmpty());
}

TEST(LevelLineChain, NearAnArchTakesTheNearestSides) {
  // The line runs through the haunches of the arch: over the crown's part there is no wall.
  WallShape wall = plain_wall();
  wall.openings = {{"arch", 2000.0, 3000.0, 1200.0, 1200.0, 300.0}};
  const std::vector<LevelLine> floor = {{"floor", {0.0, 6000.0}, 4100.0}};
  const WallMesh mesh = mesh_wall(wall, floor, bearings, {50.0});
  expect_sound(mesh);
  const auto chain = mesh.quads.sides_of(numbered(ChainKind::level_line));
  const double half_gap = std::sqrt(750.0 * 750.0 - 650.0 * 650.0);  // radius 750, 100 below crown
  EXPECT_NEAR(level_length(mesh.quads, chain), 6000.0 - 2.0 * half_gap, 2.0 * 50.0);
  EXPECT_NEAR(level_length(mesh.quads, chain, {0.0, 2000.0}), 2000.0, 1e-6);
}

TEST(LevelLineChain, OffTheWallIsEmptyAndTold) {
  // Beside the gable's slope, and above its top.
  for (const double level : {5000.0, 6100.0}) {
    const std::vector<LevelLine> high = {{"beam", {100.0, 900.0}, level}};
    const WallMesh mesh = mesh_wall(gable(), high, bearings, {100.0});
    EXPECT_TRUE(mesh.quads.sides_of(numbered(ChainKind::level_line)).empty());
    EXPECT_THAT(mesh.remarks, ::testing::Contains(::testing::HasSubstr("\"beam\"")));
  }
}

TEST(WallMesh, OpeningInsideTheCutIsSwallowed) {
  WallShape wall = plain_wall();
  const WallMesh without = mesh_wall(wall, {}, bearings, {100.0});
  wall.openings = {{"old door", 1003.0, 0.0, 900.0, 2103.0, 0.0}};
  const WallMesh with = mesh_wall(wall, {}, bearings, {100.0});
  EXPECT_EQ(with.quads.quad_count(), without.quads.quad_count());
  EXPECT_THAT(with.remarks, IsEmpty());
}

TEST(WallMesh, WithoutACutStandsOnItsWholeBase) {
  WallShape wall = plain_wall();
  wall.cut = {2000.0, 2000.0, 0.0};
  const WallMesh mesh = mesh_wall(wall, {}, {}, {100.0});
  expect_sound(mesh);
  EXPECT_NEAR(total_area(mesh.quads), 6000.0 * 5200.0, 1e-3);
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(ChainKind::base_left)) +
                  level_length(mesh.quads, mesh.quads.sides_of(ChainKind::base_right)),
              6000.0, 1e-6);
  EXPECT_TRUE(mesh.quads.sides_of(ChainKind::soffit).empty());
}

TEST(WallMesh, CutAcrossTheWholeWallStandsOnItsNeedles) {
  WallShape wall = plain_wall();
  wall.cut = {0.0, 6000.0, 2400.0};
  const WallMesh mesh = mesh_wall(wall, {}, bearings, {100.0});
  expect_sound(mesh);
  EXPECT_TRUE(mesh.quads.sides_of(ChainKind::base_left).empty());
  EXPECT_TRUE(mesh.quads.sides_of(ChainKind::base_right).empty());
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(ChainKind::soffit)), 6000.0, 1e-6);
}

TEST(WallMesh, EightNodeMeshIsTheSameWithMiddles) {
  const WallMesh four = furnished_mesh(100.0);
  const WallMesh eight = furnished_mesh(100.0, QuadOrder::eight_node);
  expect_sound(eight);
  EXPECT_EQ(four.quads.quad_count(), eight.quads.quad_count());
  EXPECT_NEAR(total_area(four.quads), total_area(eight.quads), 1e-3);
}

TEST(WallMesh, MirroredWallHasAMirroredMesh) {
  WallShape wall = gable_with_chimney();
  wall.openings = {{"window", 2500.0, 3900.0, 900.0, 800.0, 120.0}};
  const std::vector<LevelLine> floor = {{"floor", {900.0, 4700.0}, 2900.0}};
  const std::vector<LevelLine> floor_mirrored = {{"floor", {1300.0, 5100.0}, 2900.0}};
  const std::vector<Interval> one = {{2524.0, 2676.0}};
  const std::vector<Interval> one_mirrored = {{3324.0, 3476.0}};
  const auto sorted_nodes = [](QuadMesh mesh) {
    std::ranges::sort(mesh.nodes, [](Point a, Point b) {
      return std::pair(std::llround(a.x * 1e3), a.y) < std::pair(std::llround(b.x * 1e3), b.y);
    });
    return mesh.nodes;
  };
  QuadMesh left = mesh_wall(wall, floor, one, {90.0}).quads;
  for (Point& p : left.nodes) p.x = wall.length - p.x;
  const auto a = sorted_nodes(left);
  const auto b =
      sorted_nodes(mesh_wall(mirrored(wall), floor_mirrored, one_mirrored, {90.0}).quads);
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t k = 0; k < a.size(); ++k) {
    ASSERT_NEAR(a[k].x, b[k].x, 1e-6);
    ASSERT_NEAR(a[k].y, b[k].y, 1e-6);
  }
}

}  // namespace
}  // namespace deadshore::mesh
