#include "solver/panel/beam_line.h"

#include "solver/panel/panel_model.h"
#include "tests/solver/grid_mesh.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

constexpr double EI = 2.0e12;
constexpr double GA = 1.0e8;
constexpr double span = 4000.0;

/// Stiffness of the beam on its own, (rotation, up) of each node.
Eigen::MatrixXd stiffness_of(const BeamLine& beam) {
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(2 * beam.node_count(), 2 * beam.node_count());
  for (int e = 0; e + 1 < beam.node_count(); ++e) {
    K.block<4, 4>(2 * e, 2 * e) += element_stiffness(beam, e);
  }
  return K;
}

/// Solution of the beam held up at both ends.
Eigen::VectorXd simply_supported(const BeamLine& beam, const Eigen::VectorXd& load) {
  Eigen::MatrixXd K = stiffness_of(beam);
  for (const int held : {1, 2 * beam.node_count() - 1}) K(held, held) += 1e18;
  return K.partialPivLu().solve(load);
}

TEST(BeamLine, MovesFreelyAsARigidBody) {
  const BeamLine beam = make_beam_line(0, 500.0, 500.0 + span, 300.0, EI, GA, 0.0);
  Eigen::VectorXd u(2 * beam.node_count());
  for (int i = 0; i < beam.node_count(); ++i) {
    u(2 * i) = 1e-3 * beam.rotation_length();
    u(2 * i + 1) = 2.0 + 1e-3 * beam.x[static_cast<std::size_t>(i)];
  }
  EXPECT_LT((stiffness_of(beam) * u).norm(), 1e-9 * (stiffness_of(beam).norm() * u.norm()));
  EXPECT_NEAR(rise_at(beam, 1234.5, u), 2.0 + 1.2345, 1e-12);
}

// 5 w L^4 / (384 E I) + w L^2 / (8 G A): exact at the nodes whatever the number of elements.
TEST(BeamLine, SagsUnderItsWeightByTheClosedForm) {
  for (const double size : {2000.0, 500.0, 100.0}) {
    const double w = 3.0;
    const BeamLine beam = make_beam_line(0, 0.0, span, size, EI, GA, w);
    Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * beam.node_count());
    add_weight(beam, load);
    EXPECT_NEAR(load(Eigen::seqN(1, beam.node_count(), 2)).sum(), -w * span, 1e-9);
    const double expected = 5.0 * w * std::pow(span, 4) / (384.0 * EI) + w * span * span / (8 * GA);
    EXPECT_NEAR(-rise_at(beam, 0.5 * span, simply_supported(beam, load)), expected,
                1e-7 * expected);
  }
}

TEST(BeamLine, AForceBetweenNodesDoesTheWorkOfItsShape) {
  const BeamLine beam = make_beam_line(0, 0.0, span, 1000.0, EI, GA, 0.0);
  LinearForm rise;
  add_rise(beam, 1300.0, rise);
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * beam.node_count());
  rise.push(-1000.0, load);
  const Eigen::VectorXd u = simply_supported(beam, load);
  // Deflection at another node by the closed form (Roark, simple beam, point load), with shear.
  const double a = 1300.0;
  const double x = 3000.0;
  const double bending =
      1000.0 * a * (span - x) * (2 * span * x - x * x - a * a) / (6.0 * EI * span);
  const double shear = 1000.0 * a / span * (span - x) / GA;
  EXPECT_NEAR(-rise_at(beam, x, u), bending + shear, 1e-7 * bending);
}

// A beam hung on springs under a wall that does not move: what it weighs comes out in the springs.
TEST(BeamLine, InAPanelItsWeightReachesItsBeds) {
  const mesh::QuadMesh mesh =
      testing::rectangle_mesh(10, 2, mesh::QuadOrder::eight_node, 2000.0, 400.0);
  const BeamLine beam = make_beam_line(mesh.node_count(), 0.0, 2000.0, 250.0, EI, GA, 5.0);
  ContactBed ends{{BedKind::left_bearing}, {}};
  for (const double x : {100.0, 1900.0}) {
    ContactPoint point;
    point.x = x;
    point.length = 100.0;
    point.stiffness = 400.0;
    add_rise(beam, x, point.form, -1.0);  // it comes down on them
    ends.points.push_back(point);
  }
  std::vector<Support> supports;
  for (int node = 0; node < mesh.node_count(); ++node) {
    if (mesh.nodes[static_cast<std::size_t>(node)].y < 1.0) {
      supports.push_back({node, 0, 0.0});
      supports.push_back({node, 1, 0.0});
    }
  }
  PanelModel model(mesh, supports, beam, std::span(&ends, 1));
  PanelLoading loading;
  loading.materials.push_back({1500.0, 0.2, 0.0, 215.0, {}});
  loading.beds.push_back(ends);
  loading.load = model.weight(loading.materials);
  Eigen::VectorXd u = model.start();
  SparseStiffness K = model.empty_stiffness();
  const Eigen::VectorXd r = loading.load - model.resistance(loading, u, &K);
  ASSERT_TRUE(model.factor().factorize(K));
  u += model.spread_out(model.factor().solve(model.gather_free(r)));
  EXPECT_NEAR(state_of(ends, u).force, 5.0 * 2000.0, 1e-6);
}

}  // namespace
}  // namespace deadshore::solver
