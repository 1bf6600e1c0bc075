#include "solver/fem/side_points.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

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
