#include "solver/fem/equation_map.h"

#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <numeric>
#include <set>
#include <vector>

namespace deadshore::solver {
namespace {

using mesh::QuadOrder;
using testing::distorted_mesh;
using testing::rectangle_mesh;

std::vector<int> numbers_up_to(int count) {
  std::vector<int> numbers(static_cast<std::size_t>(count));
  std::iota(numbers.begin(), numbers.end(), 0);
  return numbers;
}

/// Entries of the node graph's Cholesky factor when nodes are eliminated in this order: each
/// eliminated node joins its later neighbours to one another (Rose 1972).
long factor_entries(const mesh::QuadMesh& mesh, const std::vector<int>& order) {
  std::vector<int> rank(order.size());
  for (std::size_t k = 0; k < order.size(); ++k) {
    rank[static_cast<std::size_t>(order[k])] = static_cast<int>(k);
  }
  std::vector<std::set<int>> later(order.size());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (const int a : mesh.nodes_of(quad)) {
      for (const int b : mesh.nodes_of(quad)) {
        const int rank_a = rank[static_cast<std::size_t>(a)];
        const int rank_b = rank[static_cast<std::size_t>(b)];
        if (rank_a < rank_b) later[static_cast<std::size_t>(rank_a)].insert(rank_b);
      }
    }
  }
  long entries = 0;
  for (const std::set<int>& column : later) {
    entries += 1 + static_cast<long>(column.size());
    if (column.empty()) continue;
    // The rest of the column is contained in that of its first member.
    later[static_cast<std::size_t>(*column.begin())].insert(std::next(column.begin()),
                                                            column.end());
  }
  return entries;
}

class NestedDissection : public ::testing::TestWithParam<QuadOrder> {};
INSTANTIATE_TEST_SUITE_P(Orders, NestedDissection,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

TEST_P(NestedDissection, IsAPermutationOfTheNodes) {
  const mesh::QuadMesh mesh = distorted_mesh(13, 9, GetParam(), 1300.0, 900.0, 1);
  std::vector<int> order = nested_dissection(mesh);
  std::sort(order.begin(), order.end());
  EXPECT_EQ(order, numbers_up_to(mesh.node_count()));
}

TEST_P(NestedDissection, FillsLessThanTheNaturalOrder) {
  const mesh::QuadMesh mesh = distorted_mesh(28, 28, GetParam(), 2800.0, 2800.0, 1);
  EXPECT_LT(1.5 * factor_entries(mesh, nested_dissection(mesh)),
            factor_entries(mesh, numbers_up_to(mesh.node_count())));
}

TEST(NestedDissection, NumbersNodesOfNoElementToo) {
  mesh::QuadMesh mesh = distorted_mesh(3, 3, QuadOrder::four_node, 300.0, 300.0, 1);
  mesh.nodes.push_back({1000.0, 1000.0});
  std::vector<int> order = nested_dissection(mesh);
  std::sort(order.begin(), order.end());
  EXPECT_EQ(order, numbers_up_to(mesh.node_count()));
}

/// A mesh without the quads that have their middle in a window.
mesh::QuadMesh without(const mesh::QuadMesh& whole, mesh::Interval x, mesh::Interval y) {
  mesh::QuadMesh mesh = whole;
  mesh.connectivity.clear();
  mesh.region_of_quad.clear();
  for (int quad = 0; quad < whole.quad_count(); ++quad) {
    mesh::Point middle;
    for (const mesh::Point& corner : mesh::corners_of(whole, quad)) {
      middle.x += 0.25 * corner.x;
      middle.y += 0.25 * corner.y;
    }
    const bool out = middle.x > x.from && middle.x < x.to && middle.y > y.from && middle.y < y.to;
    if (out) continue;
    const auto nodes = whole.nodes_of(quad);
    mesh.connectivity.insert(mesh.connectivity.end(), nodes.begin(), nodes.end());
    mesh.region_of_quad.push_back(0);
  }
  return mesh;
}

TEST(NestedDissection, CutsFirstThroughAnOpening) {
  // Two courses over a window and two under it: no other cut shares as few as 3 + 3 nodes.
  const mesh::QuadMesh whole = rectangle_mesh(30, 16, QuadOrder::four_node, 3000.0, 1600.0);
  const mesh::QuadMesh mesh = without(whole, {900.0, 1300.0}, {200.0, 1400.0});
  const std::vector<int> order = nested_dissection(mesh);
  for (auto node = order.end() - 6; node != order.end(); ++node) {
    const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(*node)];
    EXPECT_GT(p.x, 850.0);
    EXPECT_LT(p.x, 1350.0);
  }
}

TEST(EquationMap, NumbersEveryFreeDisplacementOnceAndNoSupport) {
  const mesh::QuadMesh mesh = distorted_mesh(5, 4, QuadOrder::eight_node, 500.0, 400.0, 2);
  const std::vector<Support> supports = {{0, 0, 0.0}, {0, 1, 0.0}, {7, 1, 0.5}, {9, 0, 0.0}};
  const EquationMap equations(mesh, supports);
  std::vector<int> numbers;
  for (int node = 0; node < mesh.node_count(); ++node) {
    for (int c = 0; c < 2; ++c) {
      if (equations.equation(node, c) >= 0) numbers.push_back(equations.equation(node, c));
    }
  }
  std::sort(numbers.begin(), numbers.end());
  EXPECT_EQ(equations.count(), 2 * mesh.node_count() - 4);
  std::vector<int> all(numbers.size());
  std::iota(all.begin(), all.end(), 0);
  EXPECT_EQ(numbers, all);
  for (const Support& support : supports) {
    EXPECT_EQ(equations.equation(support.node, support.component), -1);
  }
}

TEST(EquationMap, LeavesOutSupportsInFreeVectorsAndPutsZeroThereInNodalOnes) {
  const mesh::QuadMesh mesh = distorted_mesh(3, 2, QuadOrder::four_node, 300.0, 200.0, 2);
  const EquationMap equations(mesh, std::vector<Support>{{0, 0, 0.0}, {7, 1, 0.5}}, 1);
  const Eigen::Index size = 2 * (mesh.node_count() + 1);
  const Eigen::VectorXd nodal = Eigen::VectorXd::LinSpaced(size, 1.0, 2.0);
  const Eigen::VectorXd free = equations.gather_free(nodal);
  EXPECT_EQ(free.size(), equations.count());
  EXPECT_EQ(free(equations.equation(7, 0)), nodal(14));
  Eigen::VectorXd expected = nodal;
  expected(0) = expected(15) = 0.0;
  EXPECT_EQ(equations.spread_out(free), expected);
}

}  // namespace
}  // namespace deadshore::solver
