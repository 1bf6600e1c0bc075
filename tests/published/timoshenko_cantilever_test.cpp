// End-loaded cantilever of unit thickness: S. P. Timoshenko & J. N. Goodier, Theory of Elasticity,
// 3rd ed. (1970), art. 21, in the form of C. E. Augarde & A. J. Deeks, "The use of Timoshenko's
// exact solution for a cantilever beam in adaptive analysis", Finite Elements in Analysis and
// Design 44 (2008) 595-601: exact displacements at the root, exact parabolic shear at the tip. L
// 48, D 12, P 1000, E 3e7, nu 0.3. Accepted: tip deflection at mid-depth -8.9000e-3.
// As in open benchmark pages; not had in the originals.

#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source timoshenko{Field::plane_stress, Certainty::read,
                            "Timoshenko & Goodier 1970, art. 21; Augarde & Deeks 2008"};
constexpr Source rates{Field::plane_stress, Certainty::derived,
                       "Theory of the element: displacement of degree p"};

using mesh::QuadMesh;
using mesh::QuadOrder;

constexpr double L = 48.0;
constexpr double D = 12.0;
constexpr double P = 1000.0;
constexpr double E = 3e7;
constexpr double nu = 0.3;
constexpr double I = D * D * D / 12.0;

Eigen::Vector2d exact(mesh::Point p) {
  const double x = p.x;
  const double y = p.y;
  return {P * y / (6.0 * E * I) * ((6.0 * L - 3.0 * x) * x + (2.0 + nu) * (y * y - 0.25 * D * D)),
          -P / (6.0 * E * I) *
              (3.0 * nu * y * y * (L - x) + 0.25 * (4.0 + 5.0 * nu) * D * D * x +
               (3.0 * L - x) * x * x)};
}

struct Cantilever {
  double tip = 0.0;
  double error = 0.0;  ///< L2 norm of the displacement error
};

/// 4 `n` x `n` elements, straight or skewed alternately by a tenth of the length of an element.
Cantilever cantilever(QuadOrder order, int n, double skew = 0.0) {
  const QuadMesh straight =
      testing::grid_mesh(4 * n, n, QuadOrder::four_node, [&](double s, double t) {
        const double shift = skew * L / n * std::sin(std::numbers::pi * s) * (2.0 * t - 1.0);
        return mesh::Point{L * s + shift, D * (t - 0.5)};
      });
  const QuadMesh mesh =
      order == QuadOrder::four_node ? straight : mesh::with_midside_nodes(straight);
  PanelModel model(mesh,
                   testing::supports_at(mesh, testing::nodes_on(mesh, testing::left_edge), exact));
  PanelLoading loading{{{E, nu, 0.0, 1.0, {}}}, {}, Eigen::VectorXd::Zero(2 * mesh.node_count())};
  testing::add_traction(
      mesh, testing::right_edge, 1.0,
      [](mesh::Point p, const Eigen::Vector2d&) {
        return Eigen::Vector2d(0.0, -P / (2.0 * I) * (0.25 * D * D - p.y * p.y));
      },
      loading.load);
  const Eigen::VectorXd u = testing::solve(model, loading);
  return {u(2 * testing::node_at(mesh, {L, 0.0}) + 1), testing::displacement_error(mesh, u, exact)};
}

double order_of_convergence(QuadOrder order, double skew) {
  return std::log2(cantilever(order, 8, skew).error / cantilever(order, 16, skew).error);
}

TEST(TimoshenkoCantilever, ExactSolutionHasThePublishedTipDeflection) {
  EXPECT_NEAR(exact({L, 0.0}).y(), -8.9000e-3, 0.5e-7);
}

TEST(TimoshenkoCantilever, FourNodeTipConverges) {
  verify({timoshenko, "deep cantilever, 4-node, 64 x 16: tip moves", -8.9000e-3,
          cantilever(QuadOrder::four_node, 16).tip, 0.005 * 8.9e-3, "-"});
}

TEST(TimoshenkoCantilever, EightNodeTipAgreesToThePublishedDigits) {
  verify({timoshenko, "deep cantilever, 8-node, 16 x 4: tip moves", -8.9000e-3,
          cantilever(QuadOrder::eight_node, 4).tip, 0.5e-6, "-"});
}

TEST(TimoshenkoCantilever, FourNodeErrorFallsWithTheSquareOfTheSize) {
  verify({rates, "deep cantilever, 4-node: error of displacement falls by", 2.0,
          order_of_convergence(QuadOrder::four_node, 0.0), 0.1, "order"});
  verify({rates, "deep cantilever, 4-node, skewed: error of displacement falls by", 2.0,
          order_of_convergence(QuadOrder::four_node, 0.1), 0.1, "order"});
}

TEST(TimoshenkoCantilever, EightNodeErrorFallsWithTheCubeOfTheSize) {
  constexpr published::Tolerance no_slower{0.1, std::numeric_limits<double>::infinity()};
  verify({rates, "deep cantilever, 8-node: error of displacement falls by", 3.0,
          order_of_convergence(QuadOrder::eight_node, 0.0), no_slower, "order"});
  verify({rates, "deep cantilever, 8-node, skewed: error of displacement falls by", 3.0,
          order_of_convergence(QuadOrder::eight_node, 0.1), no_slower, "order"});
}

}  // namespace
}  // namespace deadshore::solver
