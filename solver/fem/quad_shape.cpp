#include "solver/fem/quad_shape.h"

#include "solver/job/error.h"

#include <Eigen/LU>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr std::array<mesh::Point, 4> reference_corners = {
    {{-1.0, -1.0}, {1.0, -1.0}, {1.0, 1.0}, {-1.0, 1.0}}};

struct LinePoint {
  double position = 0.0;  ///< in [-1, 1]
  double weight = 0.0;
};

/// Three Gauss points on [-1, 1].
std::array<LinePoint, 3> line_points() {
  const double outer = std::sqrt(0.6);
  return {{{-outer, 5.0 / 9.0}, {0.0, 8.0 / 9.0}, {outer, 5.0 / 9.0}}};
}

std::array<double, 3> shape_at(int node_count, double s) {
  if (node_count == 2) return {0.5 * (1.0 - s), 0.5 * (1.0 + s), 0.0};
  return {-0.5 * s * (1.0 - s), 0.5 * s * (1.0 + s), 1.0 - s * s};
}

/// Gauss points between two reference positions on a side; `measure` is the length of a unit of s.
std::vector<SidePoint> points_between(const mesh::QuadMesh& mesh, mesh::Side side, double from,
                                      double to, double measure) {
  const mesh::SideNodes nodes = mesh::nodes_along(mesh, side);
  std::vector<SidePoint> points;
  for (const auto& [position, weight] : line_points()) {
    SidePoint point;
    point.nodes = nodes;
    point.shape = shape_at(nodes.count, 0.5 * (from + to) + 0.5 * (to - from) * position);
    for (int i = 0; i < nodes.count; ++i) {
      const std::size_t k = static_cast<std::size_t>(i);
      const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(nodes.nodes[k])];
      point.position.x += point.shape[k] * p.x;
      point.position.y += point.shape[k] * p.y;
    }
    point.length = 0.5 * (to - from) * weight * measure;
    points.push_back(point);
  }
  return points;
}

}  // namespace

template <>
QuadShape<4> QuadShape<4>::at(double xi, double eta) {
  QuadShape<4> shape;
  for (int i = 0; i < 4; ++i) {
    const auto [a, b] = reference_corners[static_cast<std::size_t>(i)];
    shape.value(i) = 0.25 * (1.0 + a * xi) * (1.0 + b * eta);
    shape.derivative(0, i) = 0.25 * a * (1.0 + b * eta);
    shape.derivative(1, i) = 0.25 * b * (1.0 + a * xi);
  }
  return shape;
}

template <>
QuadShape<8> QuadShape<8>::at(double xi, double eta) {
  QuadShape<8> shape;
  for (int i = 0; i < 4; ++i) {
    const auto [a, b] = reference_corners[static_cast<std::size_t>(i)];
    const double u = a * xi;
    const double v = b * eta;
    shape.value(i) = 0.25 * (1.0 + u) * (1.0 + v) * (u + v - 1.0);
    shape.derivative(0, i) = 0.25 * a * (1.0 + v) * (2.0 * u + v);
    shape.derivative(1, i) = 0.25 * b * (1.0 + u) * (u + 2.0 * v);
  }
  for (const int i : {4, 6}) {  // bottom and top
    const double b = i == 4 ? -1.0 : 1.0;
    shape.value(i) = 0.5 * (1.0 - xi * xi) * (1.0 + b * eta);
    shape.derivative(0, i) = -xi * (1.0 + b * eta);
    shape.derivative(1, i) = 0.5 * b * (1.0 - xi * xi);
  }
  for (const int i : {5, 7}) {  // right and left
    const double a = i == 5 ? 1.0 : -1.0;
    shape.value(i) = 0.5 * (1.0 + a * xi) * (1.0 - eta * eta);
    shape.derivative(0, i) = 0.5 * a * (1.0 - eta * eta);
    shape.derivative(1, i) = -eta * (1.0 + a * xi);
  }
  return shape;
}

std::array<mesh::Point, quad_points> gauss_points() {
  const double g = 1.0 / std::sqrt(3.0);
  return {{{-g, -g}, {g, -g}, {g, g}, {-g, g}}};
}

Eigen::Matrix4d corners_from_gauss_points() {
  Eigen::Matrix4d matrix;
  for (int corner = 0; corner < 4; ++corner) {
    const auto [a, b] = reference_corners[static_cast<std::size_t>(corner)];
    // The Gauss points are the corners of a square 1/sqrt(3) as large.
    matrix.row(corner) = QuadShape<4>::at(a * std::sqrt(3.0), b * std::sqrt(3.0)).value.transpose();
  }
  return matrix;
}

template <int Nodes>
void QuadGeometry::fill(const mesh::QuadMesh& mesh) {
  std::array<QuadShape<Nodes>, quad_points> shapes;
  for (int point = 0; point < quad_points; ++point) {
    const mesh::Point p = gauss_points()[static_cast<std::size_t>(point)];
    shapes[static_cast<std::size_t>(point)] = QuadShape<Nodes>::at(p.x, p.y);
  }
  shape_.resize(Nodes, quad_points);
  for (int point = 0; point < quad_points; ++point) {
    shape_.col(point) = shapes[static_cast<std::size_t>(point)].value;
  }
  gradients_.resize(static_cast<std::size_t>(mesh.quad_count()) * quad_points * 2 * Nodes);
  areas_.resize(static_cast<std::size_t>(mesh.quad_count()) * quad_points);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    Eigen::Matrix<double, Nodes, 2> coordinates;
    int row = 0;
    for (const int node : mesh.nodes_of(quad)) {
      const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(node)];
      coordinates.row(row++) << p.x, p.y;
    }
    for (int point = 0; point < quad_points; ++point) {
      const auto& derivative = shapes[static_cast<std::size_t>(point)].derivative;
      const Eigen::Matrix2d jacobian = derivative * coordinates;
      const double determinant = jacobian.determinant();
      if (!(determinant > 0.0)) {
        throw SolveError(fmt::format("element {} near ({:.0f}, {:.0f}) mm is folded", quad,
                                     coordinates.col(0).mean(), coordinates.col(1).mean()));
      }
      const std::size_t place =
          static_cast<std::size_t>(quad) * quad_points + static_cast<std::size_t>(point);
      areas_[place] = determinant;
      Eigen::Map<Eigen::Matrix<double, 2, Nodes>>(gradients_.data() + place * 2 * Nodes) =
          jacobian.inverse() * derivative;
    }
  }
}

QuadGeometry::QuadGeometry(const mesh::QuadMesh& mesh) {
  if (mesh.order == mesh::QuadOrder::four_node) {
    fill<4>(mesh);
  } else {
    fill<8>(mesh);
  }
}

Eigen::VectorXd QuadGeometry::node_areas(int quad) const {
  return shape_ *
         Eigen::Map<const Eigen::Vector4d>(areas_.data() + 4 * static_cast<std::ptrdiff_t>(quad));
}

std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side) {
  const mesh::SideNodes nodes = mesh::nodes_along(mesh, side);
  const mesh::Point& a = mesh.nodes[static_cast<std::size_t>(nodes.nodes[0])];
  const mesh::Point& b = mesh.nodes[static_cast<std::size_t>(nodes.nodes[1])];
  return points_between(mesh, side, -1.0, 1.0, 0.5 * std::hypot(b.x - a.x, b.y - a.y));
}

std::vector<SidePoint> points_on_side(const mesh::QuadMesh& mesh, mesh::Side side,
                                      mesh::Interval x) {
  const mesh::SideNodes nodes = mesh::nodes_along(mesh, side);
  const double start = mesh.nodes[static_cast<std::size_t>(nodes.nodes[0])].x;
  const double end = mesh.nodes[static_cast<std::size_t>(nodes.nodes[1])].x;
  const double low = std::max(x.from, std::min(start, end));
  const double high = std::min(x.to, std::max(start, end));
  if (!(high > low)) return {};
  const auto reference = [&](double at) { return 2.0 * (at - start) / (end - start) - 1.0; };
  const double from = std::min(reference(low), reference(high));
  const double to = std::max(reference(low), reference(high));
  return points_between(mesh, side, from, to, 0.5 * std::abs(end - start));
}

}  // namespace deadshore::solver
