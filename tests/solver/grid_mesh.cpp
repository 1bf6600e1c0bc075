#include "tests/solver/grid_mesh.h"

#include "solver/fem/quad_shape.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <utility>

namespace deadshore::solver::testing {

namespace {

using mesh::Point;
using mesh::QuadMesh;
using mesh::QuadOrder;

template <std::size_t Count>
using LineRule = std::array<std::pair<double, double>, Count>;  // position and weight on [-1, 1]

// Abramowitz & Stegun (1964), Table 25.4.
constexpr LineRule<4> four_points = {{{-0.861136311594053, 0.347854845137454},
                                      {-0.339981043584856, 0.652145154862546},
                                      {0.339981043584856, 0.652145154862546},
                                      {0.861136311594053, 0.347854845137454}}};
constexpr LineRule<5> five_points = {{{-0.906179845938664, 0.236926885056189},
                                      {-0.538469310105683, 0.478628670499366},
                                      {0.0, 0.568888888888889},
                                      {0.538469310105683, 0.478628670499366},
                                      {0.906179845938664, 0.236926885056189}}};

const Point& position(const QuadMesh& mesh, int node) {
  return mesh.nodes[static_cast<std::size_t>(node)];
}

void name_sides(QuadMesh& mesh, int columns, int rows) {
  mesh.chains = {{bottom_edge, {}}, {right_edge, {}}, {top_edge, {}}, {left_edge, {}}};
  for (int i = 0; i < columns; ++i) {
    mesh.chains[0].sides.push_back({i, 0});
    mesh.chains[2].sides.push_back({(rows - 1) * columns + i, 2});
  }
  for (int j = 0; j < rows; ++j) {
    mesh.chains[1].sides.push_back({j * columns + columns - 1, 1});
    mesh.chains[3].sides.push_back({j * columns, 3});
  }
}

template <int Nodes>
double squared_error(const QuadMesh& mesh, int quad, const Eigen::VectorXd& u, const Field& exact) {
  double sum = 0.0;
  for (const auto& [xi, weight_xi] : four_points) {
    for (const auto& [eta, weight_eta] : four_points) {
      const QuadShape<Nodes> shape = QuadShape<Nodes>::at(xi, eta);
      Eigen::Vector2d found = Eigen::Vector2d::Zero();
      Eigen::Vector2d at = Eigen::Vector2d::Zero();
      Eigen::Matrix2d jacobian = Eigen::Matrix2d::Zero();
      int i = 0;
      for (const int node : mesh.nodes_of(quad)) {
        const Eigen::Vector2d p(position(mesh, node).x, position(mesh, node).y);
        found += shape.value(i) * u.segment<2>(2 * node);
        at += shape.value(i) * p;
        jacobian += shape.derivative.col(i) * p.transpose();
        ++i;
      }
      sum += weight_xi * weight_eta * jacobian.determinant() *
             (found - exact({at.x(), at.y()})).squaredNorm();
    }
  }
  return sum;
}

}  // namespace

QuadMesh grid_mesh(int columns, int rows, QuadOrder order, const GridMap& map) {
  QuadMesh mesh;
  mesh.order = order;
  mesh.regions = {mesh::Region{}};
  mesh.region_of_quad.assign(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0);
  const bool quadratic = order == QuadOrder::eight_node;
  const int step = quadratic ? 2 : 1;
  const std::size_t across = static_cast<std::size_t>(step * columns) + 1;
  std::vector<int> number(across * (static_cast<std::size_t>(step * rows) + 1), -1);
  const auto at = [&](int i, int j) -> int& {
    return number[static_cast<std::size_t>(j) * across + static_cast<std::size_t>(i)];
  };
  for (int j = 0; j <= step * rows; ++j) {
    for (int i = 0; i <= step * columns; ++i) {
      if (quadratic && i % 2 == 1 && j % 2 == 1) continue;
      at(i, j) = mesh.node_count();
      mesh.nodes.push_back(
          map(static_cast<double>(i) / (step * columns), static_cast<double>(j) / (step * rows)));
    }
  }
  for (int j = 0; j < step * rows; j += step) {
    for (int i = 0; i < step * columns; i += step) {
      for (const int node : {at(i, j), at(i + step, j), at(i + step, j + step), at(i, j + step)}) {
        mesh.connectivity.push_back(node);
      }
      if (!quadratic) continue;
      for (const int node : {at(i + 1, j), at(i + 2, j + 1), at(i + 1, j + 2), at(i, j + 1)}) {
        mesh.connectivity.push_back(node);
      }
    }
  }
  name_sides(mesh, columns, rows);
  return mesh;
}

QuadMesh rectangle_mesh(int columns, int rows, QuadOrder order, double length, double height) {
  return grid_mesh(columns, rows, order, [=](double s, double t) {
    return Point{length * s, height * t};
  });
}

QuadMesh distorted_mesh(int columns, int rows, QuadOrder order, double length, double height,
                        unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> shift(-0.25, 0.25);
  const QuadMesh straight = grid_mesh(columns, rows, QuadOrder::four_node, [&](double s, double t) {
    const bool inside = s > 0.0 && s < 1.0 && t > 0.0 && t < 1.0;
    const double dx = inside ? shift(random) / columns : 0.0;
    const double dy = inside ? shift(random) / rows : 0.0;
    return Point{length * (s + dx), height * (t + dy)};
  });
  return order == QuadOrder::four_node ? straight : mesh::with_midside_nodes(straight);
}

std::vector<int> nodes_on(const QuadMesh& mesh, mesh::Chain chain) {
  std::vector<int> nodes;
  for (const mesh::Side side : mesh.sides_of(chain)) {
    const mesh::SideNodes along = mesh::nodes_along(mesh, side);
    nodes.insert(nodes.end(), along.nodes.begin(), along.nodes.begin() + along.count);
  }
  std::sort(nodes.begin(), nodes.end());
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

int node_at(const QuadMesh& mesh, Point point) {
  const auto distance = [&](const Point& p) { return std::hypot(p.x - point.x, p.y - point.y); };
  const auto nearest =
      std::ranges::min_element(mesh.nodes, {}, [&](const Point& p) { return distance(p); });
  return static_cast<int>(nearest - mesh.nodes.begin());
}

void add_traction(const QuadMesh& mesh, mesh::Chain chain, double thickness,
                  const Traction& traction, Eigen::VectorXd& load) {
  for (const mesh::Side side : mesh.sides_of(chain)) {
    const mesh::SideNodes along = mesh::nodes_along(mesh, side);
    for (const auto& [s, weight] : five_points) {
      const bool two = along.count == 2;
      const std::array<double, 3> shape = {two ? 0.5 * (1.0 - s) : -0.5 * s * (1.0 - s),
                                           two ? 0.5 * (1.0 + s) : 0.5 * s * (1.0 + s),
                                           1.0 - s * s};
      const std::array<double, 3> slope = {two ? -0.5 : s - 0.5, two ? 0.5 : s + 0.5, -2.0 * s};
      Eigen::Vector2d at = Eigen::Vector2d::Zero();
      Eigen::Vector2d tangent = Eigen::Vector2d::Zero();
      for (std::size_t i = 0; i < static_cast<std::size_t>(along.count); ++i) {
        const Eigen::Vector2d p(position(mesh, along.nodes[i]).x, position(mesh, along.nodes[i]).y);
        at += shape[i] * p;
        tangent += slope[i] * p;
      }
      // The element lies on the side's left.
      const Eigen::Vector2d normal = Eigen::Vector2d(tangent.y(), -tangent.x()).normalized();
      const Eigen::Vector2d force =
          weight * tangent.norm() * thickness * traction({at.x(), at.y()}, normal);
      for (std::size_t i = 0; i < static_cast<std::size_t>(along.count); ++i) {
        load.segment<2>(2 * along.nodes[i]) += shape[i] * force;
      }
    }
  }
}

std::vector<Support> supports_at(const QuadMesh& mesh, std::span<const int> nodes,
                                 const Field& field) {
  std::vector<Support> supports;
  for (const int node : nodes) {
    const Eigen::Vector2d value = field(position(mesh, node));
    supports.push_back({node, 0, value.x()});
    supports.push_back({node, 1, value.y()});
  }
  return supports;
}

Eigen::VectorXd solve(PanelModel& model, const PanelLoading& loading) {
  Eigen::VectorXd u = model.start();
  const NewtonReport report = minimise(model, loading, u);
  EXPECT_TRUE(report.converged) << "residual " << report.residual << " after " << report.iterations;
  return u;
}

double displacement_error(const QuadMesh& mesh, const Eigen::VectorXd& u, const Field& exact) {
  double sum = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    sum += mesh.order == QuadOrder::four_node ? squared_error<4>(mesh, quad, u, exact)
                                              : squared_error<8>(mesh, quad, u, exact);
  }
  return std::sqrt(sum);
}

}  // namespace deadshore::solver::testing
