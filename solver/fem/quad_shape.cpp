#include "solver/fem/quad_shape.h"

#include <cmath>

namespace deadshore::solver {

namespace {

constexpr std::array<mesh::Point, 4> reference_corners = {
    {{-1.0, -1.0}, {1.0, -1.0}, {1.0, 1.0}, {-1.0, 1.0}}};

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

}  // namespace deadshore::solver
