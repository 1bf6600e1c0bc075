#include "mesh/error.h"
#include "mesh/mesh_part.h"
#include "mesh_invariants.h"
#include "sample_walls.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace deadshore::mesh {
namespace {

using namespace testing;
using ::testing::AllOf;
using ::testing::Contains;
using ::testing::Each;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::ThrowsMessage;

const std::vector<Interval> bearings = {{1324.0, 1476.0}, {2524.0, 2676.0}, {3724.0, 3876.0}};
const std::vector<LevelLine> lines = {{"floor", {500.0, 5500.0}, 2710.0}};

constexpr std::size_t pockets = 0;  // groups of blocks
constexpr std::size_t padstones = 1;

/// Beam ends 150 mm into the piers beside a cut, and padstones under them.
std::vector<WallBlock> bearings_beside(const Cut& cut) {
  const double bed = cut.soffit - 225.0;
  return {{pockets, "pockets", {cut.left - 150.0, cut.left}, {bed, cut.soffit}},
          {pockets, "pockets", {cut.right, cut.right + 150.0}, {bed, cut.soffit}},
          {padstones, "padstones", {cut.left - 440.0, cut.left}, {bed - 140.0, bed}},
          {padstones, "padstones", {cut.right, cut.right + 440.0}, {bed - 140.0, bed}}};
}

/// A door and a window under a lintel each, both inside the cut, and a window above it.
WallShape wall_to_widen() {
  WallShape wall = plain_wall();
  wall.openings = {{"door", 1000.0, 0.0, 900.0, 2100.0, 0.0},
                   {"window", 2600.0, 900.0, 1200.0, 1200.0, 0.0},
                   {"upper", 2000.0, 3300.0, 1000.0, 1200.0, 0.0}};
  wall.lintels = {{"upper lintel", 2, 140.0, 150.0},
                  {"door lintel", 0, 140.0, 150.0},
                  {"window lintel", 1, 100.0, 150.0}};
  return wall;
}

WallMesh whole(const WallShape& wall, double size = 80.0, QuadOrder order = QuadOrder::four_node) {
  return mesh_whole_wall(wall, bearings_beside(wall.cut), lines, bearings, {size, order});
}

std::vector<std::pair<double, double>> places(const std::vector<Point>& points) {
  std::vector<std::pair<double, double>> made;
  for (const Point& p : points) made.emplace_back(p.x, p.y);
  return made;
}

TEST(WholeWall, RegionsComeInOrder) {
  const WallMesh mesh = whole(wall_to_widen());
  EXPECT_EQ(mesh.quads.regions, (std::vector<Region>{{RegionKind::masonry},
                                                     {RegionKind::lintel, 0},
                                                     {RegionKind::lintel, 1},
                                                     {RegionKind::lintel, 2},
                                                     {RegionKind::cut},
                                                     {RegionKind::block, pockets},
                                                     {RegionKind::block, padstones}}));
}

TEST(WholeWall, RegionsAreExactInArea) {
  const WallShape wall = wall_to_widen();
  const WallMesh mesh = whole(wall);
  expect_sound(mesh);
  EXPECT_THAT(mesh.remarks, IsEmpty());
  EXPECT_NEAR(total_area(mesh.quads, 1), 1300.0 * 140.0, 1e-3);
  EXPECT_NEAR(total_area(mesh.quads, 2), 1200.0 * 140.0, 1e-3);
  EXPECT_NEAR(total_area(mesh.quads, 3), 1500.0 * 100.0, 1e-3);
  EXPECT_NEAR(total_area(mesh.quads, 4),
              3600.0 * 2400.0 - 900.0 * 2100.0 - 1200.0 * 1200.0 - 1200.0 * 140.0 - 1500.0 * 100.0,
              1e-3);
  EXPECT_NEAR(total_area(mesh.quads, 5), 2.0 * 150.0 * 225.0, 1e-3);
  EXPECT_NEAR(total_area(mesh.quads, 6), 2.0 * 440.0 * 140.0, 1e-3);
  EXPECT_NEAR(total_area(mesh.quads),
              6000.0 * 5200.0 - 1000.0 * 1200.0 - 900.0 * 2100.0 - 1200.0 * 1200.0, 1e-3);
}

TEST(WholeWall, EveryElementOfARegionLiesInItsRectangles) {
  const WallShape wall = wall_to_widen();
  const QuadMesh mesh = whole(wall).quads;
  const std::vector<WallBlock> blocks = bearings_beside(wall.cut);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto c = corners_of(mesh, quad);
    const Point middle{0.5 * (c[0].x + c[2].x), 0.5 * (c[0].y + c[2].y)};
    const Region region = mesh.region_of(quad);
    const auto holds = [&](const WallBlock& block) {
      return region == Region{RegionKind::block, block.group} && block.x.contains(middle.x) &&
             block.y.contains(middle.y);
    };
    ASSERT_EQ(region.kind == RegionKind::block, std::ranges::any_of(blocks, holds))
        << middle.x << ", " << middle.y;
    const bool door_or_window_lintel = region.kind == RegionKind::lintel && region.index > 0;
    const bool comes_out = region.kind == RegionKind::cut || door_or_window_lintel;
    ASSERT_EQ(comes_out, !is_solid(wall, middle)) << middle.x << ", " << middle.y;
  }
}

TEST(WholeWall, ChainsBoundWhatTheirNamesSay) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const auto length = [&](Chain chain) { return level_length(mesh, mesh.sides_of(chain)); };
  const auto expect_level = [&](Chain chain, double y, double expected) {
    EXPECT_NEAR(length(chain), expected, 1e-6) << in_words(chain);
    EXPECT_THAT(ends_of(mesh, mesh.sides_of(chain)),
                Each(Field(&Point::y, ::testing::DoubleNear(y, 1e-6))))
        << in_words(chain);
  };
  expect_level(numbered(ChainKind::base_left), 0.0, 800.0);
  expect_level(numbered(ChainKind::base_cut), 0.0, 3600.0 - 900.0);  // less the door
  expect_level(numbered(ChainKind::base_right), 0.0, 1600.0);
  expect_level(numbered(ChainKind::soffit), 2400.0, 3600.0);
  expect_level(numbered(ChainKind::block_top, pockets), 2400.0, 300.0);
  expect_level(numbered(ChainKind::block_upper, pockets), 2400.0, 300.0);
  expect_level(numbered(ChainKind::block_bed, pockets), 2175.0, 300.0);
  expect_level(numbered(ChainKind::block_top, padstones), 2175.0, 880.0);
  expect_level(numbered(ChainKind::block_upper, padstones), 2175.0, 880.0);
  expect_level(numbered(ChainKind::block_bed, padstones), 2035.0, 880.0);
  expect_level(numbered(ChainKind::opening_head, 0), 2100.0, 900.0);
  expect_level(numbered(ChainKind::opening_sill, 0), 0.0, 0.0);
  expect_level(numbered(ChainKind::opening_sill, 1), 900.0, 1200.0);
  expect_level(numbered(ChainKind::opening_head, 1), 2100.0, 1200.0);
  expect_level(numbered(ChainKind::top), 5200.0, 6000.0);
}

TEST(WholeWall, BlockChainsBelongToWhatTheirNamesSay) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const auto expect_sides = [&](Chain chain, int side, auto in_region) {
    for (const Side s : mesh.sides_of(chain)) {
      EXPECT_EQ(s.side, side) << in_words(chain);
      EXPECT_TRUE(in_region(mesh.region_of_quad[static_cast<std::size_t>(s.quad)]))
          << in_words(chain);
    }
  };
  expect_sides(numbered(ChainKind::block_top, pockets), 0, [](int r) { return r == 0; });
  expect_sides(numbered(ChainKind::block_upper, pockets), 2, [](int r) { return r == 5; });
  expect_sides(numbered(ChainKind::block_bed, pockets), 2, [](int r) { return r == 6; });
  expect_sides(numbered(ChainKind::block_top, padstones), 0,
               [](int r) { return r == 0 || r == 5; });
  expect_sides(numbered(ChainKind::block_upper, padstones), 2, [](int r) { return r == 6; });
  expect_sides(numbered(ChainKind::block_bed, padstones), 2, [](int r) { return r == 0; });
  expect_sides(numbered(ChainKind::soffit), 0, [](int r) { return r == 0; });
}

TEST(WholeWall, BearingEdgesAreFollowedOnTheSoffit) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const std::vector<Point> ends = ends_of(mesh, mesh.sides_of(ChainKind::soffit));
  for (const Interval& bearing : bearings) {
    for (const double x : {bearing.from, bearing.to}) {
      EXPECT_THAT(ends, Contains(Field(&Point::x, ::testing::DoubleNear(x, 1e-6))));
    }
  }
}

TEST(WholeWall, WithoutWhatComesOutIsTheWallAsCut) {
  for (WallShape wall : {wall_to_widen(), gable(), raking_top(), stepped_parapet()}) {
    const QuadMesh mesh = whole(wall).quads;
    const QuadMesh left = part_of(mesh, regions_left_by_cut(wall, mesh)).quads;
    expect_sound(left);
    EXPECT_NEAR(total_area(left), exact_area(wall), 1e-9 * exact_area(wall));
    EXPECT_TRUE(left.sides_of(ChainKind::base_cut).empty());
    const QuadMesh as_cut = mesh_wall(wall, lines, bearings, {80.0}).quads;
    for (const ChainKind kind :
         {ChainKind::base_left, ChainKind::base_right, ChainKind::soffit, ChainKind::top}) {
      EXPECT_NEAR(level_length(left, left.sides_of(kind)),
                  level_length(as_cut, as_cut.sides_of(kind)), 1e-6)
          << in_words(numbered(kind));
    }
    EXPECT_THAT(ends_of(left, left.sides_of(ChainKind::soffit)), Each(Field(&Point::y, 2400.0)));
  }
}

TEST(WholeWall, WithoutNewLinesLeavesTheVeryMeshOfTheWallAsCut) {
  const WallShape wall = plain_wall();
  const QuadMesh mesh = mesh_whole_wall(wall, {}, lines, bearings, {80.0}).quads;
  const QuadMesh left = part_of(mesh, regions_left_by_cut(wall, mesh)).quads;
  const QuadMesh as_cut = mesh_wall(wall, lines, bearings, {80.0}).quads;
  EXPECT_EQ(left.connectivity.size(), as_cut.connectivity.size());
  EXPECT_EQ(left.region_of_quad, as_cut.region_of_quad);
  for (const ChainSides& sides : as_cut.chains) {
    EXPECT_EQ(places(ends_of(left, left.sides_of(sides.chain))),
              places(ends_of(as_cut, sides.sides)))
        << in_words(sides.chain);
  }
}

TEST(WholeWall, WithoutAPierHasABlockOnTheOtherSideOnly) {
  WallShape wall = plain_wall();
  wall.cut.left = 0.0;
  std::vector<WallBlock> blocks = bearings_beside(wall.cut);
  std::erase_if(blocks, [](const WallBlock& block) { return block.x.from < 0.0; });
  const WallMesh mesh = mesh_whole_wall(wall, blocks, lines, bearings, {80.0});
  expect_sound(mesh);
  EXPECT_TRUE(mesh.quads.sides_of(ChainKind::base_left).empty());
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(ChainKind::base_cut)), 4400.0, 1e-6);
  EXPECT_NEAR(
      level_length(mesh.quads, mesh.quads.sides_of(numbered(ChainKind::block_upper, padstones))),
      440.0, 1e-6);
}

TEST(WholeWall, EightNodeMeshIsTheSameWithMiddles) {
  const WallShape wall = wall_to_widen();
  const WallMesh four = whole(wall);
  const WallMesh eight = whole(wall, 80.0, QuadOrder::eight_node);
  expect_sound(eight);
  EXPECT_EQ(four.quads.region_of_quad, eight.quads.region_of_quad);
  const QuadMesh left = part_of(eight.quads, regions_left_by_cut(wall, eight.quads)).quads;
  expect_sound(left);
  EXPECT_NEAR(total_area(left), exact_area(wall), 1e-3);
}

TEST(WholeWall, ArchInsideTheCutIsAHole) {
  WallShape wall = plain_wall();
  wall.openings = {{"arch", 1500.0, 800.0, 1200.0, 1300.0, 200.0}};
  const QuadMesh mesh = whole(wall).quads;
  expect_sound(mesh);
  const auto head = mesh.sides_of(numbered(ChainKind::opening_head, 0));
  EXPECT_NEAR(level_length(mesh, head), 1200.0, 1e-6);
  for (const Point& p : ends_of(mesh, head)) EXPECT_NEAR(p.y, wall.openings[0].head(p.x), 1e-9);
  EXPECT_THAT(ends_of(mesh, mesh.sides_of(ChainKind::soffit)), Each(Field(&Point::y, 2400.0)));
}

TEST(WholeWall, BlocksStayStraightUnderASlope) {
  WallShape wall = gable();
  std::vector<WallBlock> blocks = bearings_beside(wall.cut);
  constexpr std::size_t hole = 2;
  blocks.push_back({hole, "needle hole", {2524.0, 2676.0}, {2400.0, 2620.0}});
  const WallMesh mesh = mesh_whole_wall(wall, blocks, {}, bearings, {80.0});
  expect_sound(mesh);
  for (const auto& [sides, y] : {std::pair(numbered(ChainKind::block_top, pockets), 2400.0),
                                 std::pair(numbered(ChainKind::block_bed, pockets), 2175.0),
                                 std::pair(numbered(ChainKind::block_bed, padstones), 2035.0),
                                 std::pair(numbered(ChainKind::block_top, hole), 2620.0)}) {
    const std::vector<Point> ends = ends_of(mesh.quads, mesh.quads.sides_of(sides));
    EXPECT_FALSE(ends.empty());
    EXPECT_THAT(ends, Each(Field(&Point::y, y))) << in_words(sides);
  }
}

TEST(WholeWall, LoadInsideTheCutLiesOnItsMasonry) {
  const std::vector<LevelLine> low = {{"low floor", {500.0, 4700.0}, 2250.0}};
  const WallMesh mesh = mesh_whole_wall(wall_to_widen(), {}, low, bearings, {80.0});
  EXPECT_THAT(mesh.remarks, IsEmpty());
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(numbered(ChainKind::level_line, 0))),
              4200.0, 1e-6);
}

TEST(WholeWall, SliverOfTheCutBesideADoorVanishes) {
  WallShape wall = plain_wall();
  wall.openings = {{"door", 803.0, 0.0, 900.0, 2397.0, 0.0}};
  const WallMesh mesh = mesh_whole_wall(wall, {}, {}, bearings, {100.0});
  expect_sound(mesh);
  EXPECT_THAT(mesh.remarks,
              Contains(AllOf(HasSubstr("left side of opening \"door\""), HasSubstr("by 3 mm"))));
  EXPECT_THAT(mesh.remarks,
              Contains(AllOf(HasSubstr("head of opening \"door\""), HasSubstr("by 3 mm"))));
  const QuadMesh left = part_of(mesh.quads, regions_left_by_cut(wall, mesh.quads)).quads;
  EXPECT_NEAR(total_area(left), exact_area(wall), 1e-3);
}

TEST(WholeWall, LintelHalvedByTheCutIsMasonryOfTheCutThere) {
  WallShape wall = plain_wall();
  wall.openings = {{"door", 900.0, 0.0, 900.0, 2000.0, 0.0}};
  wall.lintels = {{"stone", 0, 140.0, 150.0}};
  const WallMesh mesh = mesh_whole_wall(wall, {}, {}, bearings, {80.0});
  expect_sound(mesh);
  EXPECT_NEAR(total_area(mesh.quads, 1), 50.0 * 140.0, 1e-3);
  EXPECT_THAT(mesh.remarks, Contains(AllOf(HasSubstr("\"stone\""), HasSubstr("masonry"))));
}

// Refusals.

auto meshing(const WallShape& wall, std::vector<WallBlock> blocks,
             std::vector<Interval> bearing = bearings) {
  return [=] { (void)mesh_whole_wall(wall, blocks, {}, bearing, {80.0}); };
}

auto refused(const std::string& part) {
  return ThrowsMessage<GeometryError>(AllOf(HasSubstr("\"pockets\""), HasSubstr(part)));
}

TEST(MisplacedBlock, IsNamedWithWhatItMeets) {
  const WallShape wall = wall_to_widen();
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {700.0, 900.0}, {2175.0, 2400.0}}}),
              refused("reaches into the cut"));
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {1900.0, 2100.0}, {3500.0, 3700.0}}}),
              refused("reaches into opening \"upper\""));
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {1900.0, 2000.0}, {4400.0, 4600.0}}}),
              refused("meets lintel \"upper lintel\""));
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {-10.0, 100.0}, {2175.0, 2400.0}}}),
              refused("reaches outside the wall"));
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {400.0, 400.0}, {2175.0, 2400.0}}}),
              refused("must have a width"));
  EXPECT_THAT(meshing(wall, {{padstones, "padstones", {400.0, 700.0}, {2000.0, 2175.0}},
                             {pockets, "pockets", {600.0, 800.0}, {2100.0, 2400.0}}}),
              refused("overlaps \"padstones\""));
}

TEST(MisplacedBlock, MayTouchAStepButNotReachOverIt) {
  const WallShape wall = stepped_parapet();
  EXPECT_NO_THROW(meshing(wall, {{pockets, "pockets", {1500.0, 1700.0}, {4200.0, 4400.0}}})());
  EXPECT_THAT(meshing(wall, {{pockets, "pockets", {1400.0, 1700.0}, {4200.0, 4400.0}}}),
              refused("reaches outside the wall"));
  EXPECT_THAT(meshing(gable(), {{pockets, "pockets", {200.0, 400.0}, {3200.0, 3500.0}}}),
              refused("reaches outside the wall"));
}

TEST(MisplacedBlock, TooThinForTheElementsIsNamed) {
  // 10 mm off the end of the wall: the masonry between would vanish in elements of 200 mm.
  const std::vector<WallBlock> thin = {{pockets, "pockets", {500.0, 510.0}, {2000.0, 2175.0}}};
  EXPECT_THAT([&] { (void)mesh_whole_wall(plain_wall(), thin, {}, bearings, {200.0}); },
              refused("only 10 mm across"));
}

TEST(WholeWallThatHangs, IsRefusedAsCut) {
  WallShape wall = plain_wall();
  wall.cut = {0.0, 6000.0, 2400.0};
  EXPECT_THAT(meshing(wall, {}, {}), ThrowsMessage<GeometryError>(HasSubstr("hangs on nothing")));
  EXPECT_NO_THROW(meshing(wall, {})());
}

TEST(WholeWallThatHangs, IsRefusedBeforeTheCut) {
  // The needles under this strip are not there yet.
  WallShape wall = plain_wall();
  wall.cut = {0.0, 6000.0, 2400.0};
  wall.openings = {{"gap", 0.0, 0.0, 6000.0, 2400.0, 0.0}};
  EXPECT_THAT(meshing(wall, {}), ThrowsMessage<GeometryError>(HasSubstr("hangs on nothing")));
}

}  // namespace
}  // namespace deadshore::mesh
