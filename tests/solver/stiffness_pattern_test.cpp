#include "solver/fem/stiffness_pattern.h"

#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>
#include <omp.h>

#include <algorithm>
#include <random>
#include <set>
#include <vector>

namespace deadshore::solver {
namespace {

using mesh::QuadOrder;
using testing::distorted_mesh;

const PanelMaterial elastic{1500.0, 0.2, 19e-6, 215.0, {}};
const PanelMaterial cracked{1500.0, 0.2, 19e-6, 215.0, 0.1};

std::vector<Support> clamped_bottom(const mesh::QuadMesh& mesh) {
  return testing::supports_at(mesh, testing::nodes_on(mesh, testing::bottom_edge),
                              [](mesh::Point) { return Eigen::Vector2d::Zero(); });
}

Eigen::VectorXd random_displacement(int count, double size) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> uniform(-size, size);
  return Eigen::VectorXd::NullaryExpr(count, [&] { return uniform(random); });
}

class StiffnessPatternTest : public ::testing::TestWithParam<QuadOrder> {};
INSTANTIATE_TEST_SUITE_P(Orders, StiffnessPatternTest,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

// Column j of a linear stiffness is the resistance to a unit displacement j; no matrix is involved.
TEST_P(StiffnessPatternTest, AssemblesTheSameMatrixAsColumnByColumn) {
  const mesh::QuadMesh mesh = distorted_mesh(4, 3, GetParam(), 400.0, 300.0, 5);
  const PanelModel model(mesh, clamped_bottom(mesh));
  const PanelLoading loading{{elastic}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  SparseStiffness lower = model.empty_stiffness();
  (void)model.resistance(loading, model.start(), &lower);
  const int count = model.equations().count();
  Eigen::MatrixXd dense(count, count);
  for (int j = 0; j < count; ++j) {
    dense.col(j) = model.gather_free(
        model.resistance(loading, model.spread_out(Eigen::VectorXd::Unit(count, j))));
  }
  const Eigen::MatrixXd assembled = Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
  EXPECT_LT((assembled - dense).norm(), 1e-13 * dense.norm());
}

TEST_P(StiffnessPatternTest, ColoursShareNoNodeAndCoverEveryElementOnce) {
  const mesh::QuadMesh mesh = distorted_mesh(70, 40, GetParam(), 7000.0, 4000.0, 5);
  const StiffnessPattern pattern(mesh, EquationMap(mesh, {}));
  std::vector<int> coloured;
  for (const std::vector<int>& colour : pattern.colours()) {
    std::set<int> touched;
    for (const int quad : colour) {
      coloured.push_back(quad);
      for (const int node : mesh.nodes_of(quad)) {
        EXPECT_TRUE(touched.insert(node).second) << "node " << node;
      }
    }
  }
  std::sort(coloured.begin(), coloured.end());
  ASSERT_EQ(coloured.size(), static_cast<std::size_t>(mesh.quad_count()));
  EXPECT_TRUE(std::adjacent_find(coloured.begin(), coloured.end()) == coloured.end());
}

TEST_P(StiffnessPatternTest, ThreadsDoNotChangeABit) {
  const mesh::QuadMesh mesh = distorted_mesh(60, 40, GetParam(), 6000.0, 4000.0, 5);
  const PanelModel model(mesh, clamped_bottom(mesh));
  const PanelLoading loading{{cracked}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  const Eigen::VectorXd u = random_displacement(2 * mesh.node_count(), 0.05);
  const int usual = omp_get_max_threads();
  std::vector<Eigen::VectorXd> force;
  std::vector<SparseStiffness> stiffness;
  for (const int threads : {1, 2}) {
    omp_set_num_threads(threads);
    stiffness.push_back(model.empty_stiffness());
    force.push_back(model.resistance(loading, u, &stiffness.back()));
  }
  omp_set_num_threads(usual);
  EXPECT_EQ(force[0], force[1]);
  EXPECT_TRUE(std::equal(stiffness[0].valuePtr(), stiffness[0].valuePtr() + stiffness[0].nonZeros(),
                         stiffness[1].valuePtr()));
}

TEST(StiffnessPattern, HasNoPlaceWhereASupportGivesTheDisplacement) {
  const mesh::QuadMesh mesh = distorted_mesh(2, 2, QuadOrder::four_node, 200.0, 200.0, 5);
  const EquationMap equations(mesh, clamped_bottom(mesh));
  const StiffnessPattern pattern(mesh, equations);
  const auto nodes = mesh.nodes_of(0);
  std::size_t k = 0;
  for (int i = 0; i < 8; ++i) {
    for (int j = 0; j <= i; ++j, ++k) {
      const int row = equations.equation(nodes[static_cast<std::size_t>(i / 2)], i % 2);
      const int column = equations.equation(nodes[static_cast<std::size_t>(j / 2)], j % 2);
      EXPECT_EQ(pattern.places(0)[k] < 0, row < 0 || column < 0);
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
