// Orders of convergence by a manufactured solution: a smooth displacement is chosen, the body force
// and tractions that it needs are worked out by hand, and the panel must find it again. Expected
// orders as in G. Strang & G. Fix, An Analysis of the Finite Element Method (1973), ch. 3: with
// shape functions complete to degree k the error in energy falls with h^k, that of the displacement
// with h^(k+1). On quadrilaterals that do not become parallelograms the 8-node element is complete
// to degree 1 alone: D. N. Arnold, D. Boffi & R. S. Falk, Math. Comp. 71 (2002) 909-922. Both from
// memory, unverified.

#include "solver/fem/quad_shape.h"
#include "tests/solver/grid_mesh.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace deadshore::solver {
namespace {

using mesh::QuadMesh;
using mesh::QuadOrder;

constexpr double side = 1000.0;  // mm
constexpr double thickness = 215.0;
constexpr double E = 1500.0;
constexpr double nu = 0.2;
constexpr double A = 1.0;  // mm
constexpr double a = 2.1 / side;
constexpr double b = 1.3 / side;
constexpr double shift = 0.4;

Eigen::Vector2d displacement(mesh::Point p) {
  return {A * std::sin(a * p.x) * std::cos(b * p.y),
          A * std::cos(b * p.x + shift) * std::sin(a * p.y)};
}

Voigt strain(mesh::Point p) {
  return {
      A * a * std::cos(a * p.x) * std::cos(b * p.y),
      A * a * std::cos(b * p.x + shift) * std::cos(a * p.y),
      -A * b *
          (std::sin(a * p.x) * std::sin(b * p.y) + std::sin(b * p.x + shift) * std::sin(a * p.y))};
}

/// Force per volume that keeps that strain in balance: less the divergence of its stress.
Eigen::Vector2d body_force(mesh::Point p) {
  const Voigt by_x = {-A * a * a * std::sin(a * p.x) * std::cos(b * p.y),
                      -A * a * b * std::sin(b * p.x + shift) * std::cos(a * p.y),
                      -A * b *
                          (a * std::cos(a * p.x) * std::sin(b * p.y) +
                           b * std::cos(b * p.x + shift) * std::sin(a * p.y))};
  const Voigt by_y = {-A * a * b * std::cos(a * p.x) * std::sin(b * p.y),
                      -A * a * a * std::cos(b * p.x + shift) * std::sin(a * p.y),
                      -A * b *
                          (b * std::sin(a * p.x) * std::cos(b * p.y) +
                           a * std::sin(b * p.x + shift) * std::cos(a * p.y))};
  const Voigt stress_by_x = elastic_stiffness(E, nu) * by_x;
  const Voigt stress_by_y = elastic_stiffness(E, nu) * by_y;
  return {-(stress_by_x(0) + stress_by_y(2)), -(stress_by_x(2) + stress_by_y(1))};
}

Eigen::Vector2d traction(mesh::Point p, const Eigen::Vector2d& normal) {
  const Voigt stress = elastic_stiffness(E, nu) * strain(p);
  return {stress(0) * normal.x() + stress(2) * normal.y(),
          stress(2) * normal.x() + stress(1) * normal.y()};
}

// Gauss-Legendre, 4 points.
constexpr std::array<std::pair<double, double>, 4> four_points = {
    {{-0.861136311594053, 0.347854845137454},
     {-0.339981043584856, 0.652145154862546},
     {0.339981043584856, 0.652145154862546},
     {0.861136311594053, 0.347854845137454}}};

/// Calls `work(at, area, value, gradient)` for 4 x 4 points of an element: its place, the area that
/// it stands for, the shape functions there and their gradients in x and y (rows).
template <int Nodes, class Work>
void for_each_point(const QuadMesh& mesh, int quad, const Work& work) {
  Eigen::Matrix<double, 2, Nodes> place;
  int i = 0;
  for (const int node : mesh.nodes_of(quad)) {
    const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(node)];
    place.col(i++) = Eigen::Vector2d(p.x, p.y);
  }
  for (const auto& [xi, weight_xi] : four_points) {
    for (const auto& [eta, weight_eta] : four_points) {
      const QuadShape<Nodes> shape = QuadShape<Nodes>::at(xi, eta);
      const Eigen::Matrix2d jacobian = shape.derivative * place.transpose();
      const Eigen::Vector2d at = place * shape.value;
      work(mesh::Point{at.x(), at.y()}, weight_xi * weight_eta * jacobian.determinant(),
           shape.value, Eigen::Matrix<double, 2, Nodes>(jacobian.inverse() * shape.derivative));
    }
  }
}

template <int Nodes>
Eigen::VectorXd load_on(const QuadMesh& mesh) {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * mesh.node_count());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for_each_point<Nodes>(mesh, quad,
                          [&](mesh::Point at, double area, const auto& value, const auto&) {
                            const Eigen::Vector2d force = area * thickness * body_force(at);
                            int i = 0;
                            for (const int node : mesh.nodes_of(quad))
                              load.segment<2>(2 * node) += value(i++) * force;
                          });
  }
  testing::add_traction(mesh, testing::right_edge, thickness, traction, load);
  testing::add_traction(mesh, testing::top_edge, thickness, traction, load);
  return load;
}

/// Root of twice the strain energy of the error.
template <int Nodes>
double energy_error(const QuadMesh& mesh, const Eigen::VectorXd& u) {
  double sum = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for_each_point<Nodes>(
        mesh, quad, [&](mesh::Point at, double area, const auto&, const auto& gradient) {
          Eigen::Matrix2d slope = Eigen::Matrix2d::Zero();
          int i = 0;
          for (const int node : mesh.nodes_of(quad)) {
            slope += u.segment<2>(2 * node) * gradient.col(i++).transpose();
          }
          const Voigt wrong =
              Voigt(slope(0, 0), slope(1, 1), slope(0, 1) + slope(1, 0)) - strain(at);
          sum += area * thickness * wrong.dot(elastic_stiffness(E, nu) * wrong);
        });
  }
  return std::sqrt(sum);
}

struct Errors {
  double energy = 0.0;
  double movement = 0.0;
};

template <int Nodes>
Errors errors_on(const QuadMesh& mesh) {
  std::vector<int> given = testing::nodes_on(mesh, testing::left_edge);
  for (const int node : testing::nodes_on(mesh, testing::bottom_edge)) {
    if (mesh.nodes[static_cast<std::size_t>(node)].x > 0.0) given.push_back(node);
  }
  PanelModel model(mesh, testing::supports_at(mesh, given, displacement));
  const PanelLoading loading{{{E, nu, 0.0, thickness, {}}}, {}, load_on<Nodes>(mesh)};
  const Eigen::VectorXd u = testing::solve(model, loading);
  return {energy_error<Nodes>(mesh, u), testing::displacement_error(mesh, u, displacement)};
}

using MeshOf = std::function<QuadMesh(int n, QuadOrder order)>;

QuadMesh regular(int n, QuadOrder order) {
  return testing::rectangle_mesh(n, n, order, side, side);
}

/// Skewed and stretched by a smooth map, so that small elements are nearly parallelograms.
QuadMesh warped(int n, QuadOrder order) {
  const QuadMesh straight = testing::grid_mesh(n, n, QuadOrder::four_node, [](double s, double t) {
    const double bulge = std::sin(std::numbers::pi * s) * std::sin(std::numbers::pi * t);
    return mesh::Point{side * (s + 0.15 * bulge), side * (t - 0.1 * bulge)};
  });
  return order == QuadOrder::four_node ? straight : mesh::with_midside_nodes(straight);
}

/// Every corner moved at random by up to a quarter of an element, however small that is.
QuadMesh shaken(int n, QuadOrder order) {
  return testing::distorted_mesh(n, n, order, side, side, 11);
}

/// Slopes between the last two of the meshes 4, 8, 16, 32 and (4-node) 64 elements across; every
/// refinement before must bring at least half the order.
template <int Nodes>
Errors orders(const MeshOf& mesh_of, Errors expected) {
  const QuadOrder order = Nodes == 4 ? QuadOrder::four_node : QuadOrder::eight_node;
  Errors last = errors_on<Nodes>(mesh_of(4, order));
  Errors slopes;
  for (int n = 8; n <= (Nodes == 4 ? 64 : 32); n *= 2) {
    const Errors now = errors_on<Nodes>(mesh_of(n, order));
    slopes = {std::log2(last.energy / now.energy), std::log2(last.movement / now.movement)};
    EXPECT_GT(slopes.energy, 0.5 * expected.energy) << n;
    EXPECT_GT(slopes.movement, 0.5 * expected.movement) << n;
    last = now;
  }
  ::testing::Test::RecordProperty("order_in_energy", std::to_string(slopes.energy));
  ::testing::Test::RecordProperty("order_in_movement", std::to_string(slopes.movement));
  return slopes;
}

template <int Nodes>
void expect_orders(const MeshOf& mesh_of, Errors expected) {
  const Errors found = orders<Nodes>(mesh_of, expected);
  EXPECT_NEAR(found.energy, expected.energy, 0.1);
  EXPECT_NEAR(found.movement, expected.movement, 0.1);
}

TEST(ManufacturedSolution, FourNodeOrdersAreOneAndTwoOnAnyMesh) {
  for (const MeshOf& mesh_of : {MeshOf(regular), MeshOf(warped), MeshOf(shaken)}) {
    expect_orders<4>(mesh_of, {1.0, 2.0});
  }
}

TEST(ManufacturedSolution, EightNodeOrdersAreTwoAndThreeWhereElementsBecomeParallelograms) {
  expect_orders<8>(regular, {2.0, 3.0});
  expect_orders<8>(warped, {2.0, 3.0});
}

TEST(ManufacturedSolution, EightNodeElementsLoseOrderWhereTheyStayCrookedButBeatFourNodes) {
  const Errors found = orders<8>(shaken, {1.0, 2.0});
  EXPECT_LT(found.energy, 1.9);
  EXPECT_LT(found.movement, 2.9);
  const Errors eight = errors_on<8>(shaken(16, QuadOrder::eight_node));
  const Errors four = errors_on<4>(shaken(32, QuadOrder::four_node));
  EXPECT_LT(eight.energy, 0.2 * four.energy);
  EXPECT_LT(eight.movement, 0.2 * four.movement);
}

}  // namespace
}  // namespace deadshore::solver
