// NAFEMS LE1, elliptic membrane: The Standard NAFEMS Benchmarks, TNSB Rev. 3 (1990), test LE1.
// Quarter of a plate between the ellipses with half axes (2, 1) m and (3.25, 2.75) m, t 0.1 m,
// E 210 GPa, nu 0.3, outward pressure 10 MPa on the outer edge.
// Accepted: sigma_yy at D = (2, 0) 92.7 MPa.
// As in open benchmark pages; not had in the original.

#include "solver/panel/recovery.h"
#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source le1{Field::plane_stress, Certainty::read, "NAFEMS LE1, TNSB Rev. 3 (1990)"};

using mesh::QuadMesh;
using mesh::QuadOrder;

double stress_at_d(QuadOrder order, int n) {
  const QuadMesh mesh = testing::grid_mesh(n, n, order, [](double s, double t) {
    const double angle = 0.5 * std::numbers::pi * t;
    return mesh::Point{1000.0 * (2.0 + 1.25 * s) * std::cos(angle),
                       1000.0 * (1.0 + 1.75 * s) * std::sin(angle)};
  });
  std::vector<Support> supports;
  for (const int node : testing::nodes_on(mesh, testing::bottom_edge))
    supports.push_back({node, 1, 0.0});
  for (const int node : testing::nodes_on(mesh, testing::top_edge))
    supports.push_back({node, 0, 0.0});
  PanelModel model(mesh, supports);
  PanelLoading loading{
      {{210e3, 0.3, 0.0, 100.0, {}}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  testing::add_traction(
      mesh, testing::right_edge, 100.0,
      [](mesh::Point, const Eigen::Vector2d& normal) -> Eigen::Vector2d { return 10.0 * normal; },
      loading.load);
  const Eigen::VectorXd u = testing::solve(model, loading);
  const PanelFields fields = fields_of(model, loading, u);
  return fields.node_stress[static_cast<std::size_t>(testing::node_at(mesh, {2000.0, 0.0}))].yy;
}

TEST(NafemsLe1, EightNodeStressAgreesToThePublishedDigits) {
  verify({le1, "elliptic membrane, 8-node, 64 x 64: sigma_yy at D", 92.7,
          stress_at_d(QuadOrder::eight_node, 64), 0.1, "N/mm2"});
}

TEST(NafemsLe1, FourNodeStressConverges) {
  const double coarse = std::abs(stress_at_d(QuadOrder::four_node, 8) - 92.7);
  const double fine = stress_at_d(QuadOrder::four_node, 64);
  verify(
      {le1, "elliptic membrane, 4-node, 64 x 64: sigma_yy at D", 92.7, fine, 0.01 * 92.7, "N/mm2"});
  EXPECT_LT(std::abs(fine - 92.7), 0.5 * coarse);
}

}  // namespace
}  // namespace deadshore::solver
