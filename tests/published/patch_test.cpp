// Constant-strain patch of R. H. MacNeal & R. L. Harder, "A proposed standard set of problems to
// test finite element accuracy", Finite Elements in Analysis and Design 1 (1985) 3-20, Fig. 1 and
// Table 2: E 1e6, nu 0.25, t 0.001, u = 1e-3 (x + y/2), v = 1e-3 (y + x/2) along the boundary.
// Accepted: sigma_x = sigma_y = 1333, tau_xy = 400 in every element, exactly.

#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"
#include "tests/some.h"

#include <gtest/gtest.h>

#include <array>
#include <numeric>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source macneal_harder{Field::plane_stress, Certainty::memory,
                                "MacNeal & Harder 1985, Table 2"};

using mesh::QuadMesh;
using mesh::QuadOrder;

/// Four inner nodes, then the corners of the 0.24 x 0.12 plate.
QuadMesh macneal_harder_patch(QuadOrder order) {
  QuadMesh mesh;
  mesh.nodes = {{0.04, 0.02}, {0.18, 0.03}, {0.16, 0.08}, {0.08, 0.08},
                {0.0, 0.0},   {0.24, 0.0},  {0.24, 0.12}, {0.0, 0.12}};
  mesh.connectivity = {4, 5, 1, 0, 5, 6, 2, 1, 6, 7, 3, 2, 7, 4, 0, 3, 0, 1, 2, 3};
  mesh.regions = {mesh::Region{}};
  mesh.region_of_quad.assign(5, 0);
  mesh.chains = {{{mesh::ChainKind::edge, 0}, {{0, 0}, {1, 0}, {2, 0}, {3, 0}}}};
  return order == QuadOrder::four_node ? mesh : mesh::with_midside_nodes(mesh);
}

class Patch : public ::testing::TestWithParam<QuadOrder> {};
INSTANTIATE_TEST_SUITE_P(Orders, Patch,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

TEST_P(Patch, MacNealHarderIsExact) {
  const QuadMesh mesh = macneal_harder_patch(GetParam());
  const auto field = [](mesh::Point p) {
    return Eigen::Vector2d(1e-3 * (p.x + 0.5 * p.y), 1e-3 * (p.y + 0.5 * p.x));
  };
  PanelModel model(
      mesh, testing::supports_at(mesh, testing::nodes_on(mesh, {mesh::ChainKind::edge, 0}), field));
  const PanelLoading loading{
      {{1e6, 0.25, 0.0, 0.001, {}}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  const Eigen::VectorXd u = testing::solve(model, loading);
  for (int node = 0; node < mesh.node_count(); ++node) {
    EXPECT_LT((u.segment<2>(2 * node) - field(mesh.nodes[static_cast<std::size_t>(node)])).norm(),
              1e-14);
  }
  const Voigt due(4000.0 / 3.0, 4000.0 / 3.0, 400.0);
  Voigt worst = due;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int point = 0; point < 4; ++point) {
      const Voigt stress = respond(loading.materials[0], model.strain(quad, point, u)).stress;
      EXPECT_LT((stress - due).norm(), 1e-8);
      if ((stress - due).norm() > (worst - due).norm()) worst = stress;
    }
  }
  const std::string nodes = GetParam() == QuadOrder::four_node ? "4-node" : "8-node";
  verify({macneal_harder, "constant-strain patch, " + nodes + ": sigma_x at the worst point",
          due(0), worst(0), 1e-8, "N/mm2"});
  verify({macneal_harder, "constant-strain patch, " + nodes + ": tau_xy at the worst point", due(2),
          worst(2), 1e-8, "N/mm2"});
}

/// The same demand on the cracked law: a constant strain stays constant, whatever its state.
struct StrainCase {
  CrackState state;
  Voigt strain;
};

class CrackedPatch : public ::testing::TestWithParam<std::tuple<QuadOrder, StrainCase>> {};
INSTANTIATE_TEST_SUITE_P(
    States, CrackedPatch,
    ::testing::Combine(::testing::Values(QuadOrder::four_node, QuadOrder::eight_node),
                       ::testing::Values(StrainCase{CrackState::closed, {-2e-4, -3e-4, 1e-4}},
                                         StrainCase{CrackState::one_direction, {3e-4, -2e-4, 2e-4}},
                                         StrainCase{CrackState::open, {4e-4, 3e-4, -1e-4}})));

TEST_P(CrackedPatch, ConstantStrainIsExactInEveryState) {
  const auto& [order, expected] = GetParam();
  const Voigt strain = expected.strain;
  const QuadMesh mesh = testing::distorted_mesh(5, 4, order, 500.0, 400.0, 23);
  const auto field = [&](mesh::Point p) {
    return Eigen::Vector2d(strain(0) * p.x + 0.3 * strain(2) * p.y,
                           0.7 * strain(2) * p.x + strain(1) * p.y);
  };
  std::vector<int> boundary;
  for (const mesh::Chain chain :
       {testing::bottom_edge, testing::right_edge, testing::top_edge, testing::left_edge}) {
    for (const int node : some(testing::nodes_on(mesh, chain))) boundary.push_back(node);
  }
  PanelModel model(mesh, testing::supports_at(mesh, boundary, field));
  const PanelLoading loading{
      {{1500.0, 0.2, 0.0, 215.0, 0.1}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  const Eigen::VectorXd u = testing::solve(model, loading);
  const Voigt stress = respond(loading.materials[0], strain).stress;
  // Newton stops at 1e-10 of the forces; open masonry keeps 1e-4 of its stiffness.
  const double tolerance = 1e-10 / loading.materials[0].residual;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int point = 0; point < 4; ++point) {
      const Voigt found = model.strain(quad, point, u);
      EXPECT_EQ(crack_state(loading.materials[0], found), expected.state);
      EXPECT_LT((found - strain).norm(), tolerance * strain.norm());
      EXPECT_LT((respond(loading.materials[0], found).stress - stress).norm(),
                tolerance * stress.norm());
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
