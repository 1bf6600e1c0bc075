#include "solver/fem/equation_map.h"

#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <vector>

namespace deadshore::solver {
namespace {

using mesh::QuadOrder;
using testing::distorted_mesh;

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

}  // namespace
}  // namespace deadshore::solver
