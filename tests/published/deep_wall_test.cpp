// Deep wall 3.6 x 2.4 m, 215 mm, 30 kN/m on top, on four rigid 150 mm needles at 0.45, 1.35, 2.25
// and 3.15 m; own weight not counted. Accepted: 27.16 26.84 26.84 27.16 kN, calculated by an 8-node
// code of our own kin: a weak check, not an outside source. That the wall spreads its load evenly
// (27.00 kN each by hand) is the point.

#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source older{Field::plane_stress, Certainty::own_code, "An 8-node code of our own kin"};

using mesh::QuadMesh;
using mesh::QuadOrder;

constexpr std::array<double, 4> positions = {450.0, 1350.0, 2250.0, 3150.0};
constexpr std::array<double, 4> accepted = {27160.0, 26840.0, 26840.0, 27160.0};

std::array<double, 4> reactions(QuadOrder order, double size) {
  const QuadMesh mesh = testing::rectangle_mesh(
      static_cast<int>(3600.0 / size), static_cast<int>(2400.0 / size), order, 3600.0, 2400.0);
  const std::array<Support, 1> sideways = {{{testing::node_at(mesh, {1800.0, 0.0}), 0, 0.0}}};
  PanelModel model(mesh, sideways);
  PanelLoading loading{
      {{1500.0, 0.2, 0.0, 215.0, {}}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  testing::add_traction(
      mesh, testing::top_edge, 1.0,
      [](mesh::Point, const Eigen::Vector2d&) { return Eigen::Vector2d(0.0, -30.0); },
      loading.load);
  const double rigid = 1e8;  // N/mm
  for (const double x : positions) {
    loading.beds.push_back(needle_bed(mesh, mesh.sides_of(testing::bottom_edge),
                                      Needle{"needle", x, 150.0, rigid, 0.0, 0.0}, NeedleId{}));
  }
  const Eigen::VectorXd u = testing::solve(model, loading);
  std::array<double, 4> forces{};
  for (std::size_t i = 0; i < 4; ++i) forces[i] = state_of(loading.beds[i], u).force;
  return forces;
}

TEST(DeepWall, FourRigidNeedlesShareEvenly) {
  const auto four = reactions(QuadOrder::four_node, 25.0);
  const auto eight = reactions(QuadOrder::eight_node, 50.0);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(four[i], accepted[i], 0.005 * accepted[i]);
    verify({older, fmt::format("deep wall on rigid needles, 8-node of 50 mm: needle {}", i + 1),
            accepted[i] / 1e3, eight[i] / 1e3, 0.005 * accepted[i] / 1e3, "kN"});
  }
}

}  // namespace
}  // namespace deadshore::solver
