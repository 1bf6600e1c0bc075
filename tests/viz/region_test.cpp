#include "viz/wall/region.h"

#include "made_up_job.h"

#include <gtest/gtest.h>

#include <array>
#include <numeric>

namespace deadshore::viz {
namespace {

double area_by_quads(const mesh::QuadMesh& mesh) {
  double area = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) area += mesh::area_of(mesh, quad);
  return area;
}

TEST(Region, OutlineOfAWallWithHoleAndCutHasTheAreaOfItsElements) {
  const mesh::QuadMesh mesh = made_up_result().mesh.quads;
  const Region region = region_of(mesh);
  EXPECT_NEAR(area_of(region), area_by_quads(mesh), 1e-9 * area_by_quads(mesh));
  ASSERT_EQ(region.size(), 2U);  // the wall and its window
  EXPECT_EQ(region[0].size() + region[1].size(), 8U + 4U);
}

TEST(Region, HolesRunClockwise) {
  const Region region = region_of(squares(5, 5, 100.0, {{{200.0, 300.0}, {200.0, 300.0}}}));
  ASSERT_EQ(region.size(), 2U);
  EXPECT_DOUBLE_EQ(area_of({region[0]}), 250e3);
  EXPECT_DOUBLE_EQ(area_of({region[1]}), -10e3);
}

TEST(Region, ChosenElementsThatTouchAtACornerKeepTheirArea) {
  const mesh::QuadMesh mesh = squares(2, 2, 10.0);
  EXPECT_DOUBLE_EQ(area_of(region_of(mesh, std::array<char, 4>{1, 0, 0, 1})), 200.0);
}

TEST(Region, MidsideNodesLieOnTheOutline) {
  const mesh::QuadMesh mesh = mesh::with_midside_nodes(squares(2, 1, 10.0));
  const auto rings = boundary_rings(mesh);
  ASSERT_EQ(rings.size(), 1U);
  EXPECT_EQ(rings.front().size(), 12U);
  EXPECT_DOUBLE_EQ(area_of(region_of(mesh)), 200.0);
}

TEST(Region, NestedRingsHoldOneAnother) {
  RankedPolygons polygons;
  polygons.add(std::array{0, 1, 4, 3}, 0);
  polygons.add(std::array{1, 2, 5, 4}, 1);
  const auto nested = nested_rings(polygons, 2);
  EXPECT_EQ(nested[0], (std::vector<std::vector<int>>{{0, 1, 2, 5, 4, 3}}));
  EXPECT_EQ(nested[1], (std::vector<std::vector<int>>{{1, 2, 5, 4}}));
}

}  // namespace
}  // namespace deadshore::viz
