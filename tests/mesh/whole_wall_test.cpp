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

/// Beam ends 150 mm into the piers beside a cut, and padstones under them.
std::vector<WallBlock> bearings_beside(const Cut& cut) {
  const double bed = cut.soffit - 225.0;
  return {{"pockets", {cut.left - 150.0, cut.left}, {bed, cut.soffit}},
          {"pockets", {cut.right, cut.right + 150.0}, {bed, cut.soffit}},
          {"padstones", {cut.left - 440.0, cut.left}, {bed - 140.0, bed}},
          {"padstones", {cut.right, cut.right + 440.0}, {bed - 140.0, bed}}};
}

/// A door and a window under a lintel each, both inside the cut, and a window above it.
WallShape wall_to_widen() {
  WallShape wall = plain_wall();
  wall.openings = {{"door", 1000.0, 0.0, 900.0, 2100.0, 0.0},
                   {"window", 2600.0, 900.0, 1200.0, 1200.0, 0.0},
                   {"upper", 2000.0, 3300.0, 1000.0, 1200.0, 0.0}};
  wall.lintels = {{"upper lintel", "upper", 140.0, 150.0},
                  {"door lintel", "door", 140.0, 150.0},
                  {"window lintel", "window", 100.0, 150.0}};
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
  EXPECT_EQ(mesh.quads.regions,
            (std::vector<std::string>{"masonry", "upper lintel", "door lintel", "window lintel",
                                      "cut", "pockets", "padstones"}));
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
    const std::string& region =
        mesh.regions[static_cast<std::size_t>(mesh.region_of_quad[static_cast<std::size_t>(quad)])];
    const auto holds = [&](const WallBlock& block) {
      return block.name == region && block.x.contains(middle.x) && block.y.contains(middle.y);
    };
    const bool named = region == "pockets" || region == "padstones";
    ASSERT_EQ(named, std::ranges::any_of(blocks, holds)) << middle.x << ", " << middle.y;
    const bool comes_out = region == "cut" || region == "door lintel" || region == "window lintel";
    ASSERT_EQ(comes_out, !is_solid(wall, middle)) << middle.x << ", " << middle.y;
  }
}

TEST(WholeWall, ChainsBoundWhatTheirNamesSay) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const auto length = [&](const char* name) { return level_length(mesh, mesh.sides_of(name)); };
  const auto expect_level = [&](const char* name, double y, double expected) {
    EXPECT_NEAR(length(name), expected, 1e-6) << name;
    EXPECT_THAT(ends_of(mesh, mesh.sides_of(name)),
                Each(Field(&Point::y, ::testing::DoubleNear(y, 1e-6))))
        << name;
  };
  expect_level("base left", 0.0, 800.0);
  expect_level("base cut", 0.0, 3600.0 - 900.0);  // less the door
  expect_level("base right", 0.0, 1600.0);
  expect_level("soffit", 2400.0, 3600.0);
  expect_level("pockets top", 2400.0, 300.0);
  expect_level("pockets upper", 2400.0, 300.0);
  expect_level("pockets bed", 2175.0, 300.0);
  expect_level("padstones top", 2175.0, 880.0);
  expect_level("padstones upper", 2175.0, 880.0);
  expect_level("padstones bed", 2035.0, 880.0);
  expect_level("door head", 2100.0, 900.0);
  expect_level("door sill", 0.0, 0.0);
  expect_level("window sill", 900.0, 1200.0);
  expect_level("window head", 2100.0, 1200.0);
  expect_level("top", 5200.0, 6000.0);
}

TEST(WholeWall, BlockChainsBelongToWhatTheirNamesSay) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const auto expect_sides = [&](const char* name, int side, auto in_region) {
    for (const Side s : mesh.sides_of(name)) {
      EXPECT_EQ(s.side, side) << name;
      EXPECT_TRUE(in_region(mesh.region_of_quad[static_cast<std::size_t>(s.quad)])) << name;
    }
  };
  expect_sides("pockets top", 0, [](int r) { return r == 0; });
  expect_sides("pockets upper", 2, [](int r) { return r == 5; });
  expect_sides("pockets bed", 2, [](int r) { return r == 6; });
  expect_sides("padstones top", 0, [](int r) { return r == 0 || r == 5; });
  expect_sides("padstones upper", 2, [](int r) { return r == 6; });
  expect_sides("padstones bed", 2, [](int r) { return r == 0; });
  expect_sides("soffit", 0, [](int r) { return r == 0; });
}

TEST(WholeWall, BearingEdgesAreFollowedOnTheSoffit) {
  const QuadMesh mesh = whole(wall_to_widen()).quads;
  const std::vector<Point> ends = ends_of(mesh, mesh.sides_of("soffit"));
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
    EXPECT_TRUE(left.sides_of("base cut").empty());
    const QuadMesh as_cut = mesh_wall(wall, lines, bearings, {80.0}).quads;
    for (const char* name : {"base left", "base right", "soffit", "top"}) {
      EXPECT_NEAR(level_length(left, left.sides_of(name)),
                  level_length(as_cut, as_cut.sides_of(name)), 1e-6)
          << name;
    }
    EXPECT_THAT(ends_of(left, left.sides_of("soffit")), Each(Field(&Point::y, 2400.0)));
  }
}

TEST(WholeWall, WithoutNewLinesLeavesTheVeryMeshOfTheWallAsCut) {
  const WallShape wall = plain_wall();
  const QuadMesh mesh = mesh_whole_wall(wall, {}, lines, bearings, {80.0}).quads;
  const QuadMesh left = part_of(mesh, regions_left_by_cut(wall, mesh)).quads;
  const QuadMesh as_cut = mesh_wall(wall, lines, bearings, {80.0}).quads;
  EXPECT_EQ(left.connectivity.size(), as_cut.connectivity.size());
  EXPECT_EQ(left.region_of_quad, as_cut.region_of_quad);
  for (const NamedSides& chain : as_cut.chains) {
    EXPECT_EQ(places(ends_of(left, left.sides_of(chain.name))),
              places(ends_of(as_cut, chain.sides)))
        << chain.name;
  }
}

TEST(WholeWall, WithoutAPierHasABlockOnTheOtherSideOnly) {
  WallShape wall = plain_wall();
  wall.cut.left = 0.0;
  std::vector<WallBlock> blocks = bearings_beside(wall.cut);
  std::erase_if(blocks, [](const WallBlock& block) { return block.x.from < 0.0; });
  const WallMesh mesh = mesh_whole_wall(wall, blocks, lines, bearings, {80.0});
  expect_sound(mesh);
  EXPECT_TRUE(mesh.quads.sides_of("base left").empty());
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of("base cut")), 4400.0, 1e-6);
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of("padstones upper")), 440.0, 1e-6);
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
  const auto head = mesh.sides_of("arch head");
  EXPECT_NEAR(level_length(mesh, head), 1200.0, 1e-6);
  for (const Point& p : ends_of(mesh, head)) EXPECT_NEAR(p.y, wall.openings[0].head(p.x), 1e-9);
  EXPECT_THAT(ends_of(mesh, mesh.sides_of("soffit")), Each(Field(&Point::y, 2400.0)));
}

TEST(WholeWall, BlocksStayStraightUnderASlope) {
  WallShape wall = gable();
  std::vector<WallBlock> blocks = bearings_beside(wall.cut);
  blocks.push_back({"needle hole", {2524.0, 2676.0}, {2400.0, 2620.0}});
  const WallMesh mesh = mesh_whole_wall(wall, blocks, {}, bearings, {80.0});
  expect_sound(mesh);
  for (const auto& [name, y] :
       {std::pair("pockets top", 2400.0), std::pair("pockets bed", 2175.0),
        std::pair("padstones bed", 2035.0), std::pair("needle hole top", 2620.0)}) {
    const std::vector<Point> ends = ends_of(mesh.quads, mesh.quads.sides_of(name));
    EXPECT_FALSE(ends.empty());
    EXPECT_THAT(ends, Each(Field(&Point::y, y))) << name;
  }
}

TEST(WholeWall, LoadInsideTheCutLiesOnItsMasonry) {
  const std::vector<LevelLine> low = {{"low floor", {500.0, 4700.0}, 2250.0}};
  const WallMesh mesh = mesh_whole_wall(wall_to_widen(), {}, low, bearings, {80.0});
  EXPECT_THAT(mesh.remarks, IsEmpty());
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of("low floor")), 4200.0, 1e-6);
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
  wall.lintels = {{"stone", "door", 140.0, 150.0}};
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
  EXPECT_THAT(meshing(wall, {{"pockets", {700.0, 900.0}, {2175.0, 2400.0}}}),
              refused("reaches into the cut"));
  EXPECT_THAT(meshing(wall, {{"pockets", {1900.0, 2100.0}, {3500.0, 3700.0}}}),
              refused("reaches into opening \"upper\""));
  EXPECT_THAT(meshing(wall, {{"pockets", {1900.0, 2000.0}, {4400.0, 4600.0}}}),
              refused("meets lintel \"upper lintel\""));
  EXPECT_THAT(meshing(wall, {{"pockets", {-10.0, 100.0}, {2175.0, 2400.0}}}),
              refused("reaches outside the wall"));
  EXPECT_THAT(meshing(wall, {{"pockets", {400.0, 400.0}, {2175.0, 2400.0}}}),
              refused("must have a width"));
  EXPECT_THAT(meshing(wall, {{"padstones", {400.0, 700.0}, {2000.0, 2175.0}},
                             {"pockets", {600.0, 800.0}, {2100.0, 2400.0}}}),
              refused("overlaps \"padstones\""));
}

TEST(MisplacedBlock, MayTouchAStepButNotReachOverIt) {
  const WallShape wall = stepped_parapet();
  EXPECT_NO_THROW(meshing(wall, {{"pockets", {1500.0, 1700.0}, {4200.0, 4400.0}}})());
  EXPECT_THAT(meshing(wall, {{"pockets", {1400.0, 1700.0}, {4200.0, 4400.0}}}),
              refused("reaches outside the wall"));
  EXPECT_THAT(meshing(gable(), {{"pockets", {200.0, 400.0}, {3200.0, 3500.0}}}),
              refused("reaches outside the wall"));
}

TEST(MisplacedBlock, TooThinForTheElementsIsNamed) {
  // 10 mm off the end of the wall: the masonry between would vanish in elements of 200 mm.
  const std::vector<WallBlock> thin = {{"pockets", {500.0, 510.0}, {2000.0, 2175.0}}};
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
