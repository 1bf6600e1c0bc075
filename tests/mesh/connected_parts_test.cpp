#include "mesh/mesh_part.h"

#include <gtest/gtest.h>

#include <vector>

namespace deadshore::mesh {
namespace {

/// A row of `count` unit squares.
QuadMesh row_of(int count) {
  QuadMesh mesh;
  mesh.regions = {mesh::Region{}};
  for (int i = 0; i <= count; ++i) {
    mesh.nodes.push_back({static_cast<double>(i), 0.0});
    mesh.nodes.push_back({static_cast<double>(i), 1.0});
  }
  for (int i = 0; i < count; ++i) {
    for (const int node : {2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1})
      mesh.connectivity.push_back(node);
    mesh.region_of_quad.push_back(0);
  }
  return mesh;
}

TEST(ConnectedParts, MarkedNeighboursFormOnePart) {
  const std::vector<char> marked = {1, 1, 0, 1, 0, 0, 1, 1, 1};
  const auto parts = connected_parts(row_of(9), marked);
  ASSERT_EQ(parts.size(), 3U);
  EXPECT_EQ(parts[0], (std::vector<int>{0, 1}));
  EXPECT_EQ(parts[1], (std::vector<int>{3}));
  EXPECT_EQ(parts[2], (std::vector<int>{6, 7, 8}));
}

TEST(ConnectedParts, NothingMarkedIsNoPart) {
  EXPECT_TRUE(connected_parts(row_of(3), std::vector<char>(3, 0)).empty());
}

TEST(ConnectedParts, BoxHoldsItsQuads) {
  const Box box = box_around(row_of(9), std::vector<int>{3, 4});
  EXPECT_EQ(box.x.from, 3.0);
  EXPECT_EQ(box.x.to, 5.0);
  EXPECT_EQ(box.y.from, 0.0);
  EXPECT_EQ(box.y.to, 1.0);
}

}  // namespace
}  // namespace deadshore::mesh
