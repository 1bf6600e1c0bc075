#include "mesh/mesh_part.h"
#include "mesh_invariants.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace deadshore::mesh {
namespace {

using namespace testing;

/// Invented walls on a 20 mm raster, so that with elements up to 200 mm no line lies too close to
/// another and every area is exact.
class WallMaker {
 public:
  explicit WallMaker(unsigned number) : random_(number) {}

  WallShape make() {
    WallShape wall;
    wall.length = on_raster(3000.0, 9000.0);
    wall.cut.left = on_raster(200.0, 0.3 * wall.length);
    wall.cut.right = on_raster(0.6 * wall.length, wall.length - 200.0);
    wall.cut.soffit = on_raster(2000.0, 2800.0);
    wall.top = top_of(wall);
    for (double x = on_raster(100.0, 800.0); x + 400.0 < wall.length;) {
      const double width = on_raster(300.0, 1200.0);
      add_opening(wall, x, width);
      x += width + on_raster(200.0, 1200.0);
    }
    return wall;
  }

  std::vector<Interval> bearings(const WallShape& wall) {
    std::vector<Interval> made;
    for (double x = wall.cut.left + 200.0; x + 200.0 < wall.cut.right; x += 900.0) {
      made.push_back({x, x + on_raster(80.0, 200.0)});
    }
    return made;
  }

  /// Doors and windows that the cut will take out; \return their area, mm2.
  double add_openings_in_the_cut(WallShape& wall) {
    double area = 0.0;
    for (double x = wall.cut.left + on_raster(0.0, 400.0); x + 600.0 < wall.cut.right;) {
      const double width = on_raster(400.0, 1000.0);
      const double sill = pick(2) == 0 ? 0.0 : on_raster(600.0, 1000.0);
      const double height = 20.0 * std::floor((wall.cut.soffit - sill) / 25.0);
      if (x + width > wall.cut.right) break;
      wall.openings.push_back(
          {fmt::format("C{}", wall.openings.size()), x, sill, width, height, 0.0});
      area += width * height;
      x += width + on_raster(100.0, 600.0);
    }
    return area;
  }

  std::vector<WallBlock> blocks(const WallShape& wall) {
    const double bearing = on_raster(100.0, 200.0);
    const double depth = on_raster(120.0, 300.0);
    const double bed = wall.cut.soffit - depth;
    const double left = wall.cut.left;
    const double right = wall.cut.right;
    return {{0, "pockets", {left - bearing, left}, {bed, bed + depth}},
            {0, "pockets", {right, right + bearing}, {bed, bed + depth}},
            {1, "padstones", {left - 200.0, left}, {bed - 140.0, bed}},
            {1, "padstones", {right, right + 200.0}, {bed - 140.0, bed}}};
  }

  double on_raster(double from, double to) {
    return 20.0 * std::round(std::uniform_real_distribution(from, to)(random_) / 20.0);
  }

  int pick(int count) { return std::uniform_int_distribution(0, count - 1)(random_); }

 private:
  std::vector<Point> top_of(const WallShape& wall) {
    const double low = wall.cut.soffit + on_raster(800.0, 2000.0);
    const double high = low + on_raster(200.0, 1600.0);
    const double middle = on_raster(0.3 * wall.length, 0.7 * wall.length);
    switch (pick(4)) {
      case 0:
        return {{0.0, low}, {wall.length, low}};
      case 1:
        return {{0.0, low}, {middle, high}, {wall.length, low}};
      case 2:
        return {{0.0, high}, {wall.length, low}};
      default:
        return {{0.0, low}, {middle, low}, {middle, high}, {wall.length, high}};
    }
  }

  void add_opening(WallShape& wall, double left, double width) {
    if (left + width > wall.length - 100.0) return;
    const double sill = wall.cut.soffit + on_raster(200.0, 600.0);
    double top = std::min(wall.top_at(left), wall.top_at(left + width)) - 200.0;
    for (const Point& p : wall.top) {
      if (p.x > left && p.x < left + width) top = std::min(top, wall.top_at(p.x) - 200.0);
    }
    const double height = 20.0 * std::floor((top - sill) / 20.0);
    if (height < 300.0) return;
    const double rise = pick(3) == 0 ? 0.15 * width : 0.0;
    wall.openings.push_back(
        {fmt::format("O{}", wall.openings.size()), left, sill, width, height, rise});
  }

  std::mt19937 random_;
};

/// A chord of length s falls short of its arc's area by about s^3 / (12 radius); this is the most
/// that the arched heads of a wall can add to a mesh's area.
double arched_excess(const WallShape& wall, double size) {
  double excess = 0.0;
  for (const Opening& opening : wall.openings) {
    if (opening.rise == 0.0) continue;
    const double radius =
        (0.25 * opening.width * opening.width + opening.rise * opening.rise) / (2.0 * opening.rise);
    excess += 2.0 * (opening.width / size + 1.0) * size * size * size / (12.0 * radius);
  }
  return excess;
}

bool has_slope(const WallShape& wall) {
  for (std::size_t k = 0; k + 1 < wall.top.size(); ++k) {
    if (wall.top[k].x != wall.top[k + 1].x && wall.top[k].y != wall.top[k + 1].y) return true;
  }
  return false;
}

class RandomWall : public ::testing::TestWithParam<unsigned> {};

TEST_P(RandomWall, HasASoundMeshOfTheRightArea) {
  WallMaker maker(GetParam());
  const WallShape wall = maker.make();
  const std::vector<Interval> bearings = maker.bearings(wall);
  const std::vector<LevelLine> lines = {
      {"floor", {0.0, wall.length}, wall.cut.soffit + maker.on_raster(100.0, 600.0)},
      {"roof", {0.0, wall.length}, 0.0, true}};
  const double size = std::vector{50.0, 80.0, 125.0, 200.0}[GetParam() % 4];
  const WallMesh mesh = mesh_wall(wall, lines, bearings, {size});
  expect_sound(mesh);

  const double arched = arched_excess(wall, size);
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), arched + 1e-9 * exact_area(wall));
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(numbered(ChainKind::level_line, 1))),
              wall.length, 1e-6);
  EXPECT_NEAR(level_length(mesh.quads, mesh.quads.sides_of(ChainKind::soffit)),
              wall.cut.right - wall.cut.left, 1e-6);
  // Lines lie a tenth of the size apart or more, so ten is the most where no node had to slide.
  const bool arched_head =
      std::ranges::any_of(wall.openings, [](const Opening& o) { return o.rise > 0.0; });
  EXPECT_TRUE(has_slope(wall) || arched_head || mesh.worst_aspect <= 10.0 + 1e-9)
      << mesh.worst_aspect;
}

TEST_P(RandomWall, HasASoundMeshBeforeTheCut) {
  WallMaker maker(GetParam());
  WallShape wall = maker.make();
  const std::vector<Interval> bearings = maker.bearings(wall);
  const std::vector<WallBlock> blocks = maker.blocks(wall);
  const double open = maker.add_openings_in_the_cut(wall);
  const std::vector<LevelLine> lines = {{"low floor", {0.0, wall.length}, 1500.0},
                                        {"roof", {0.0, wall.length}, 0.0, true}};
  const double size = std::vector{50.0, 80.0, 125.0, 200.0}[GetParam() % 4];
  const WallMesh mesh = mesh_whole_wall(wall, blocks, lines, bearings, {size});
  expect_sound(mesh);

  const double exact = exact_area(wall) + wall.cut.span().length() * wall.cut.soffit - open;
  const double arched = arched_excess(wall, size);
  EXPECT_NEAR(total_area(mesh.quads), exact, arched + 1e-9 * exact);
  for (const int region : {2, 3}) {
    double blocks_area = 0.0;
    for (const WallBlock& block : blocks) {
      if (mesh.quads.regions[static_cast<std::size_t>(region)] ==
          Region{RegionKind::block, block.group}) {
        blocks_area += block.x.length() * block.y.length();
      }
    }
    EXPECT_NEAR(total_area(mesh.quads, region), blocks_area, 1e-3);
  }
  const QuadMesh left = part_of(mesh.quads, regions_left_by_cut(wall, mesh.quads)).quads;
  expect_sound(left);
  EXPECT_NEAR(total_area(left), exact_area(wall), arched + 1e-9 * exact);
  EXPECT_NEAR(level_length(left, left.sides_of(ChainKind::soffit)), wall.cut.span().length(), 1e-6);
}

INSTANTIATE_TEST_SUITE_P(Numbers, RandomWall, ::testing::Range(1U, 61U));

}  // namespace
}  // namespace deadshore::mesh
