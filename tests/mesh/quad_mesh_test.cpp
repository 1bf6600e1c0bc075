#include "mesh/quad_mesh.h"

#include "mesh/error.h"

#include <gtest/gtest.h>

namespace deadshore::mesh {
namespace {

/// Two quads side by side; the right one a trapezium.
QuadMesh two_quads() {
  QuadMesh mesh;
  mesh.nodes = {{0, 0}, {2, 0}, {3, 0}, {0, 1}, {2, 1}, {3, 3}};
  mesh.connectivity = {0, 1, 4, 3, 1, 2, 5, 4};
  mesh.region_of_quad = {0, 0};
  mesh.regions = {mesh::Region{}};
  mesh.chains = {{{ChainKind::base_left}, {{0, 0}, {1, 0}}}};
  return mesh;
}

TEST(QuadMesh, AreaIsThatOfThePolygon) {
  EXPECT_DOUBLE_EQ(area_of(two_quads(), 0), 2.0);
  EXPECT_DOUBLE_EQ(area_of(two_quads(), 1), 2.0);
}

TEST(QuadMesh, SidesFollowTheCornersAnticlockwise) {
  const SideNodes last = nodes_along(two_quads(), {1, 3});
  EXPECT_EQ(last.count, 2);
  EXPECT_EQ(last.nodes[0], 4);
  EXPECT_EQ(last.nodes[1], 1);
}

TEST(QuadMesh, UnknownChainIsEmpty) {
  const QuadMesh mesh = two_quads();
  EXPECT_EQ(mesh.sides_of(ChainKind::base_left).size(), 2U);
  EXPECT_TRUE(mesh.sides_of(ChainKind::top).empty());
}

TEST(MidsideNodes, AreSharedByNeighbours) {
  const QuadMesh mesh = with_midside_nodes(two_quads());
  EXPECT_EQ(mesh.order, QuadOrder::eight_node);
  EXPECT_EQ(mesh.node_count(), 6 + 7);
  EXPECT_EQ(nodes_along(mesh, {0, 1}).nodes[2], nodes_along(mesh, {1, 3}).nodes[2]);
  const Point middle = mesh.nodes[static_cast<std::size_t>(nodes_along(mesh, {1, 2}).nodes[2])];
  EXPECT_DOUBLE_EQ(middle.x, 2.5);
  EXPECT_DOUBLE_EQ(middle.y, 2.0);
}

TEST(MidsideNodes, AreNotAddedTwice) {
  EXPECT_THROW((void)with_midside_nodes(with_midside_nodes(two_quads())), GeometryError);
}

}  // namespace
}  // namespace deadshore::mesh
