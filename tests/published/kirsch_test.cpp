// Round hole in a wide plate pulled by S along x: G. Kirsch, Z. VDI 42 (1898) 797-807, as in S. P.
// Timoshenko & J. N. Goodier, Theory of Elasticity, 3rd ed. (1970), art. 35. A quarter of the ring
// from the hole's radius a to 4 a, with the exact tractions on the outer circle.
// Accepted: stress along the hole's edge 3 S at (0, a) and -S at (a, 0).
// Formulas from memory, unverified against the books.

#include "solver/fem/quad_shape.h"
#include "solver/panel/recovery.h"
#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source kirsch{Field::plane_stress, Certainty::memory,
                        "Kirsch 1898; Timoshenko & Goodier 1970, art. 35"};

using mesh::QuadMesh;
using mesh::QuadOrder;

constexpr Source rates{Field::plane_stress, Certainty::derived,
                       "Theory of the element: stress of degree p - 1"};
constexpr double a = 100.0;

/// Exact stress for S = 1.
Voigt exact_stress(mesh::Point p) {
  const double angle = std::atan2(p.y, p.x);
  const double q = a * a / (p.x * p.x + p.y * p.y);
  const double c2 = std::cos(2.0 * angle);
  const double c4 = std::cos(4.0 * angle);
  const double s2 = std::sin(2.0 * angle);
  const double s4 = std::sin(4.0 * angle);
  return {1.0 - q * (1.5 * c2 + c4) + 1.5 * q * q * c4,  //
          -q * (0.5 * c2 - c4) - 1.5 * q * q * c4,       //
          -q * (0.5 * s2 + s4) + 1.5 * q * q * s4};
}

struct Plate {
  double top = 0.0;    ///< sigma_x at (0, a)
  double side = 0.0;   ///< sigma_y at (a, 0)
  double error = 0.0;  ///< root of the integral of |stress - exact|^2 by the Gauss points, mm
};

template <int Nodes>
mesh::Point gauss_position(const QuadMesh& mesh, int quad, int point) {
  const mesh::Point reference = gauss_points()[static_cast<std::size_t>(point)];
  const auto shape = QuadShape<Nodes>::at(reference.x, reference.y).value;
  mesh::Point position;
  int i = 0;
  for (const int node : mesh.nodes_of(quad)) {
    position.x += shape(i) * mesh.nodes[static_cast<std::size_t>(node)].x;
    position.y += shape(i++) * mesh.nodes[static_cast<std::size_t>(node)].y;
  }
  return position;
}

double stress_error(const PanelModel& model, const PanelMaterial& material,
                    const Eigen::VectorXd& u) {
  const QuadMesh& mesh = model.mesh();
  double sum = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int point = 0; point < quad_points; ++point) {
      const mesh::Point at = mesh.order == QuadOrder::four_node
                                 ? gauss_position<4>(mesh, quad, point)
                                 : gauss_position<8>(mesh, quad, point);
      const Voigt stress = respond(material, model.strain(quad, point, u)).stress;
      sum += model.geometry().area(quad, point) * (stress - exact_stress(at)).squaredNorm();
    }
  }
  return std::sqrt(sum);
}

Plate plate(QuadOrder order, int n) {
  const QuadMesh mesh = testing::grid_mesh(n, n, order, [](double s, double t) {
    const double radius = a * std::pow(4.0, s);
    const double angle = 0.5 * std::numbers::pi * t;
    return mesh::Point{radius * std::cos(angle), radius * std::sin(angle)};
  });
  std::vector<Support> supports;
  for (const int node : testing::nodes_on(mesh, testing::bottom_edge))
    supports.push_back({node, 1, 0.0});
  for (const int node : testing::nodes_on(mesh, testing::top_edge))
    supports.push_back({node, 0, 0.0});
  PanelModel model(mesh, supports);
  PanelLoading loading{
      {{1500.0, 0.2, 0.0, 215.0, {}}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  testing::add_traction(
      mesh, testing::right_edge, 215.0,
      [](mesh::Point p, const Eigen::Vector2d& normal) {
        const Voigt s = exact_stress(p);
        return Eigen::Vector2d(s(0) * normal.x() + s(2) * normal.y(),
                               s(2) * normal.x() + s(1) * normal.y());
      },
      loading.load);
  const Eigen::VectorXd u = testing::solve(model, loading);
  const PanelFields fields = fields_of(model, loading, u);
  const auto at = [&](double x, double y) {
    return fields.node_stress[static_cast<std::size_t>(testing::node_at(mesh, {x, y}))];
  };
  return {at(0.0, a).xx, at(a, 0.0).yy, stress_error(model, loading.materials[0], u)};
}

TEST(Kirsch, ExactSolutionHasStressThreeAndMinusOne) {
  EXPECT_NEAR(exact_stress({0.0, a})(0), 3.0, 1e-12);
  EXPECT_NEAR(exact_stress({a, 0.0})(1), -1.0, 1e-12);
}

TEST(Kirsch, FourNodeEdgeStressIsThreeAndMinusOne) {
  const Plate found = plate(QuadOrder::four_node, 64);
  verify({kirsch, "round hole, 4-node, 64 x 64: stress at its crown over the pull", 3.0, found.top,
          0.03, "-"});
  verify({kirsch, "round hole, 4-node, 64 x 64: stress at its side over the pull", -1.0, found.side,
          0.03, "-"});
}

TEST(Kirsch, EightNodeEdgeStressIsThreeAndMinusOne) {
  const Plate found = plate(QuadOrder::eight_node, 32);
  verify({kirsch, "round hole, 8-node, 32 x 32: stress at its crown over the pull", 3.0, found.top,
          0.01, "-"});
  verify({kirsch, "round hole, 8-node, 32 x 32: stress at its side over the pull", -1.0, found.side,
          0.01, "-"});
}

double order_of_convergence(QuadOrder order) {
  return std::log2(plate(order, 16).error / plate(order, 32).error);
}

TEST(Kirsch, StressConvergesWithTheOrderOfTheElement) {
  constexpr published::Tolerance no_slower{0.05, std::numeric_limits<double>::infinity()};
  verify({rates, "round hole, 4-node: stress error falls by", 1.0,
          order_of_convergence(QuadOrder::four_node), no_slower, "order"});
  verify({rates, "round hole, 8-node: stress error falls by", 2.0,
          order_of_convergence(QuadOrder::eight_node), no_slower, "order"});
}

}  // namespace
}  // namespace deadshore::solver
