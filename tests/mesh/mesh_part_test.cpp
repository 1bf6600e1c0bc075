#include "mesh/mesh_part.h"

#include "mesh/error.h"

#include <gtest/gtest.h>

namespace deadshore::mesh {
namespace {

/// Three squares in a row, the middle one of another region, with their lower sides as a chain.
QuadMesh three_squares() {
  QuadMesh mesh;
  for (int i = 0; i <= 3; ++i) {
    mesh.nodes.push_back({100.0 * i, 0.0});
    mesh.nodes.push_back({100.0 * i, 100.0});
  }
  for (int i = 0; i < 3; ++i) {
    for (const int node : {0, 2, 3, 1}) mesh.connectivity.push_back(2 * i + node);
  }
  mesh.region_of_quad = {0, 1, 0};
  mesh.regions = {{RegionKind::masonry}, {RegionKind::cut}};
  mesh.chains = {{{ChainKind::base_left}, {{0, 0}, {1, 0}, {2, 0}}},
                 {{ChainKind::base_cut}, {{1, 0}}}};
  return mesh;
}

void expect_same(const QuadMesh& a, const QuadMesh& b) {
  EXPECT_EQ(a.order, b.order);
  EXPECT_EQ(a.connectivity, b.connectivity);
  EXPECT_EQ(a.region_of_quad, b.region_of_quad);
  EXPECT_EQ(a.regions, b.regions);
  ASSERT_EQ(a.nodes.size(), b.nodes.size());
  for (std::size_t k = 0; k < a.nodes.size(); ++k) {
    EXPECT_EQ(a.nodes[k].x, b.nodes[k].x);
    EXPECT_EQ(a.nodes[k].y, b.nodes[k].y);
  }
  ASSERT_EQ(a.chains.size(), b.chains.size());
  for (std::size_t k = 0; k < a.chains.size(); ++k) {
    EXPECT_EQ(a.chains[k].chain, b.chains[k].chain);
    ASSERT_EQ(a.chains[k].sides.size(), b.chains[k].sides.size());
    for (std::size_t s = 0; s < a.chains[k].sides.size(); ++s) {
      EXPECT_EQ(a.chains[k].sides[s].quad, b.chains[k].sides[s].quad);
      EXPECT_EQ(a.chains[k].sides[s].side, b.chains[k].sides[s].side);
    }
  }
}

TEST(MeshPart, OfEverythingIsTheWhole) {
  for (const QuadMesh& whole : {three_squares(), with_midside_nodes(three_squares())}) {
    const MeshPart part = part_of(whole, std::vector<char>{1, 1});
    expect_same(part.quads, whole);
    for (int k = 0; k < whole.node_count(); ++k) {
      EXPECT_EQ(part.node_of[static_cast<std::size_t>(k)], k);
    }
    EXPECT_EQ(part.quad_of, (std::vector<int>{0, 1, 2}));
  }
}

TEST(MeshPart, KeepsTheOrderAndDropsWhatIsNotUsed) {
  const MeshPart middle = part_of(three_squares(), std::vector<char>{0, 1});
  EXPECT_EQ(middle.quad_of, (std::vector<int>{1}));
  EXPECT_EQ(middle.node_of, (std::vector<int>{2, 3, 4, 5}));
  EXPECT_EQ(middle.quads.connectivity, (std::vector<int>{0, 2, 3, 1}));
  EXPECT_EQ(middle.quads.region_of_quad, (std::vector<int>{1}));
  EXPECT_EQ(middle.quads.regions.size(), 2U);
}

TEST(MeshPart, ChainsLoseTheSidesThatAreNotThere) {
  const MeshPart ends = part_of(three_squares(), std::vector<char>{1, 0});
  ASSERT_EQ(ends.quads.chains.size(), 2U);
  const auto base = ends.quads.sides_of(ChainKind::base_left);
  ASSERT_EQ(base.size(), 2U);
  EXPECT_EQ(base[0].quad, 0);
  EXPECT_EQ(base[1].quad, 1);
  EXPECT_TRUE(ends.quads.sides_of(ChainKind::base_cut).empty());
}

TEST(MeshPart, ElementsKeepTheirCorners) {
  const QuadMesh whole = with_midside_nodes(three_squares());
  const MeshPart part = part_of(whole, std::vector<char>{1, 0});
  for (int quad = 0; quad < part.quads.quad_count(); ++quad) {
    const auto there = part.quads.nodes_of(quad);
    const auto here = whole.nodes_of(part.quad_of[static_cast<std::size_t>(quad)]);
    for (std::size_t k = 0; k < there.size(); ++k) {
      EXPECT_EQ(part.node_of[static_cast<std::size_t>(there[k])], here[k]);
    }
  }
}

TEST(MeshPart, NeedsAChoiceForEachRegion) {
  EXPECT_THROW((void)part_of(three_squares(), std::vector<char>{1}), GeometryError);
}

}  // namespace
}  // namespace deadshore::mesh
