#include "mesh_invariants.h"
#include "sample_walls.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace deadshore::mesh {
namespace {

using namespace testing;

struct TopCase {
  std::string name;
  WallShape wall;
  double most_aspect;
};

Opening window() {
  return {"window", 2400.0, 3300.0, 900.0, 900.0, 0.0};
}

WallShape with(WallShape wall, std::vector<Opening> openings,
               std::vector<LintelShape> lintels = {}) {
  wall.openings = std::move(openings);
  wall.lintels = std::move(lintels);
  return wall;
}

class SlopingTop : public ::testing::TestWithParam<TopCase> {};

TEST_P(SlopingTop, IsMetExactlyBySoundElements) {
  const WallShape& wall = GetParam().wall;
  const std::vector<Interval> bearings = {middle_bearing()};
  for (const double size : {200.0, 75.0}) {
    const WallMesh mesh = mesh_wall(wall, {}, bearings, {size});
    SCOPED_TRACE(size);
    expect_sound(mesh);
    EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), 1e-9 * exact_area(wall));
    EXPECT_LT(mesh.worst_aspect, GetParam().most_aspect);
    const auto top = mesh.quads.sides_of(ChainKind::top);
    double open = 0.0;
    for (const Opening& opening : wall.openings) {
      if (opening.crown() >= wall.top_at(opening.span().middle())) open += opening.width;
    }
    EXPECT_NEAR(level_length(mesh.quads, top), wall.length - open, 1e-6);
    for (const Side side : top) {
      const SideNodes along = nodes_along(mesh.quads, side);
      const Point a = mesh.quads.nodes[static_cast<std::size_t>(along.nodes[0])];
      const Point b = mesh.quads.nodes[static_cast<std::size_t>(along.nodes[1])];
      const Point middle{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
      EXPECT_NEAR(middle.y, wall.top_at(middle.x), 1e-6);
    }
  }
}

// The limits on aspect say that no element is a needle; they are no promise. Common practice asks
// for less than about 10 (no source).
INSTANTIATE_TEST_SUITE_P(
    Walls, SlopingTop,
    ::testing::Values(
        TopCase{"gable", gable(), 10.0},
        TopCase{"gable_with_window", with(gable(), {window()}), 10.0},
        TopCase{"raking", raking_top(), 10.0},
        TopCase{"raking_with_lintel",
                with(raking_top(), {{"window", 2400.0, 3000.0, 900.0, 900.0, 0.0}},
                     {{"stone", 0, 140.0, 150.0}}),
                10.0},
        TopCase{"stepped", stepped_parapet(), 10.0},
        TopCase{"stepped_with_slot",
                with(stepped_parapet(), {{"slot", 4300.0, 3200.0, 700.0, 2000.0, 0.0}}), 10.0},
        TopCase{"chimney", gable_with_chimney(), 10.0},
        TopCase{"chimney_with_window", with(gable_with_chimney(), {window()}), 10.0},
        TopCase{"slot_past_a_raking_top",
                with(raking_top(), {{"slot", 2400.0, 3300.0, 900.0, 2500.0, 0.0}}), 10.0}),
    [](const auto& made) { return made.param.name; });

TEST(SlopingTop, SymmetricGableHasSymmetricHeights) {
  WallShape wall = gable();
  wall.cut = {1200.0, 4800.0, 2400.0};
  const std::vector<Interval> bearings = {{2900.0, 3100.0}};
  const QuadMesh mesh = mesh_wall(wall, {}, bearings, {100.0}).quads;
  std::vector<double> left;
  std::vector<double> right;
  for (const Point& p : mesh.nodes) {
    if (std::abs(p.x - 600.0) < 1.0) left.push_back(p.y);
    if (std::abs(p.x - 5400.0) < 1.0) right.push_back(p.y);
  }
  ASSERT_FALSE(left.empty());
  ASSERT_EQ(left.size(), right.size());
  for (std::size_t k = 0; k < left.size(); ++k) EXPECT_NEAR(left[k], right[k], 1e-6);
}

TEST(SlopingTop, RefiningKeepsElementsOfTheSameShape) {
  const WallShape wall = with(gable(), {window()});
  const std::vector<Interval> bearings = {middle_bearing()};
  const double coarse = mesh_wall(wall, {}, bearings, {100.0}).worst_aspect;
  const double fine = mesh_wall(wall, {}, bearings, {25.0}).worst_aspect;
  EXPECT_LT(fine, 2.0 * coarse);
}

TEST(SlopingTop, ArchUnderASlopeIsSound) {
  WallShape wall = with(raking_top(), {{"arch", 2000.0, 3000.0, 1000.0, 1000.0, 400.0}});
  const std::vector<Interval> bearings = {middle_bearing()};
  const WallMesh mesh = mesh_wall(wall, {}, bearings, {50.0});
  expect_sound(mesh);
  // 20 chords over an arc: a thousandth of its segment is far more than they cut off the wall.
  EXPECT_NEAR(total_area(mesh.quads), exact_area(wall), 5e-3 * 1000.0 * 400.0);
}

}  // namespace
}  // namespace deadshore::mesh
