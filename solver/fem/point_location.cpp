#include "solver/fem/point_location.h"

#include "mesh/mesh_part.h"
#include "solver/fem/quad_shape.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <vector>

namespace deadshore::solver {

namespace {

using mesh::Interval;
using mesh::Point;

mesh::Box box_of(const mesh::QuadMesh& mesh, int quad) {
  return mesh::box_around(mesh, std::array<int, 1>{quad});
}

/// Twice the area of the triangle a, b, p: positive where p lies left of a -> b.
double left_of(Point a, Point b, Point p) {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

bool holds(const mesh::QuadMesh& mesh, int quad, Point p) {
  const auto corners = mesh::corners_of(mesh, quad);
  for (std::size_t c = 0; c < 4; ++c) {
    const Point a = corners[c];
    const Point b = corners[(c + 1) % 4];
    if (left_of(a, b, p) < -1e-9 * std::hypot(b.x - a.x, b.y - a.y)) return false;
  }
  return true;
}

/// The reference point of `p` in a quadrilateral, within [-1, 1]^2 where it lies inside. By
/// Newton's method: one step where it is a parallelogram, few where it is a trapezium.
Eigen::Vector2d reference_point(const mesh::QuadMesh& mesh, int quad, Point p) {
  const auto corners = mesh::corners_of(mesh, quad);
  Eigen::Matrix<double, 4, 2> places;
  for (int i = 0; i < 4; ++i) {
    const Point& corner = corners[static_cast<std::size_t>(i)];
    places.row(i) << corner.x, corner.y;
  }
  Eigen::Vector2d at = Eigen::Vector2d::Zero();
  for (int pass = 0; pass < 8; ++pass) {
    const auto shape = QuadShape<4>::at(at.x(), at.y());
    const Eigen::Vector2d off = Eigen::Vector2d(p.x, p.y) - places.transpose() * shape.value;
    const Eigen::Matrix2d jacobian = (shape.derivative * places).transpose();
    const Eigen::Vector2d step = jacobian.inverse() * off;
    at += step;
    if (!(step.squaredNorm() > 1e-20)) break;
  }
  return at;
}

template <int Nodes>
NodeShares shares_by(const mesh::QuadMesh& mesh, int quad, const Eigen::Vector2d& reference) {
  NodeShares point{mesh.nodes_of(quad), {}};
  const auto shape = QuadShape<Nodes>::at(reference.x(), reference.y());
  for (int i = 0; i < Nodes; ++i) point.shares[static_cast<std::size_t>(i)] = shape.value(i);
  return point;
}

NodeShares shares_in(const mesh::QuadMesh& mesh, int quad, const Eigen::Vector2d& reference) {
  return mesh.order == mesh::QuadOrder::four_node ? shares_by<4>(mesh, quad, reference)
                                                  : shares_by<8>(mesh, quad, reference);
}

}  // namespace

QuadFinder::QuadFinder(const mesh::QuadMesh& mesh, std::span<const char> chosen) : mesh_(mesh) {
  std::vector<int> all(static_cast<std::size_t>(mesh.quad_count()));
  std::iota(all.begin(), all.end(), 0);
  if (!chosen.empty()) {
    std::erase_if(all, [&](int quad) { return chosen[static_cast<std::size_t>(quad)] == 0; });
  }
  if (!all.empty()) {
    const mesh::Box box = mesh::box_around(mesh, all);
    corner_ = {box.x.from, box.y.from};
    bin_ = std::sqrt(box.x.length() * box.y.length() / static_cast<double>(all.size()));
    columns_ = static_cast<int>(box.x.length() / bin_) + 1;
    rows_ = static_cast<int>(box.y.length() / bin_) + 1;
  }
  std::vector<std::vector<int>> bins(static_cast<std::size_t>(columns_) *
                                     static_cast<std::size_t>(rows_));
  for (const int quad : all) {
    const mesh::Box box = box_of(mesh, quad);
    const Bins rows = rows_of(box.y);
    const Bins columns = columns_of(box.x);
    for (int row = rows.first; row <= rows.last; ++row) {
      for (int column = columns.first; column <= columns.last; ++column) {
        bins[bin_at(column, row)].push_back(quad);
      }
    }
  }
  start_.push_back(0);
  for (const std::vector<int>& bin : bins) {
    quads_.insert(quads_.end(), bin.begin(), bin.end());
    start_.push_back(static_cast<int>(quads_.size()));
  }
}

QuadFinder::Bins QuadFinder::columns_of(Interval x) const {
  const auto bin = [this](double at) {
    return std::clamp(static_cast<int>((at - corner_.x) / bin_), 0, columns_ - 1);
  };
  return {bin(x.from), bin(x.to)};
}

QuadFinder::Bins QuadFinder::rows_of(Interval y) const {
  const auto bin = [this](double at) {
    return std::clamp(static_cast<int>((at - corner_.y) / bin_), 0, rows_ - 1);
  };
  return {bin(y.from), bin(y.to)};
}

std::span<const int> QuadFinder::quads_in(int column, int row) const {
  const std::size_t bin = bin_at(column, row);
  return {quads_.begin() + start_[bin], quads_.begin() + start_[bin + 1]};
}

int QuadFinder::find(Point p) const {
  for (const int quad : quads_in(columns_of({p.x, p.x}).first, rows_of({p.y, p.y}).first)) {
    if (holds(mesh_, quad, p)) return quad;
  }
  return -1;
}

std::optional<NodeShares> QuadFinder::shares_at(Point p) const {
  const int quad = find(p);
  if (quad < 0) return std::nullopt;
  return shares_in(mesh_, quad, reference_point(mesh_, quad, p));
}

NodeShares QuadFinder::nearest_shares(Point p) const {
  const int column = columns_of({p.x, p.x}).first;
  const int row = rows_of({p.y, p.y}).first;
  int nearest = -1;
  Eigen::Vector2d at_nearest = Eigen::Vector2d::Zero();
  double least = std::numeric_limits<double>::infinity();
  const auto look_in = [&](int i, int j) {
    for (const int quad : quads_in(i, j)) {
      const Eigen::Vector2d reference = reference_point(mesh_, quad, p);
      const Eigen::Vector2d clamped = reference.cwiseMax(-1.0).cwiseMin(1.0);
      const double outside = (reference - clamped).norm();
      if (outside >= least) continue;
      least = outside;
      nearest = quad;
      at_nearest = clamped;
    }
  };
  // Rings of bins around the point's own, until one holds something.
  for (int ring = 0; nearest < 0 && ring <= std::max(columns_, rows_); ++ring) {
    for (int j = std::max(0, row - ring); j <= std::min(rows_ - 1, row + ring); ++j) {
      for (int i = std::max(0, column - ring); i <= std::min(columns_ - 1, column + ring); ++i) {
        if (std::max(std::abs(i - column), std::abs(j - row)) == ring) look_in(i, j);
      }
    }
  }
  return shares_in(mesh_, nearest, at_nearest);
}

std::optional<Interval> stretch_inside(const mesh::QuadMesh& mesh, int quad, Point from,
                                       Point along) {
  Interval inside{-std::numeric_limits<double>::infinity(),
                  std::numeric_limits<double>::infinity()};
  const auto corners = mesh::corners_of(mesh, quad);
  for (std::size_t c = 0; c < 4; ++c) {
    const Point a = corners[c];
    const Point b = corners[(c + 1) % 4];
    const double side = std::hypot(b.x - a.x, b.y - a.y);
    const double distance = left_of(a, b, from) / side;
    const double rate = ((b.x - a.x) * along.y - (b.y - a.y) * along.x) / side;
    if (std::abs(rate) < 1e-12) {
      if (distance < -1e-9) return std::nullopt;
    } else if (rate > 0.0) {
      inside.from = std::max(inside.from, -distance / rate);
    } else {
      inside.to = std::min(inside.to, -distance / rate);
    }
  }
  if (inside.from >= inside.to) return std::nullopt;
  return inside;
}

Eigen::VectorXd carry_over(const mesh::QuadMesh& from, std::span<const double> displacement,
                           const mesh::QuadMesh& to) {
  const QuadFinder finder(from);
  Eigen::VectorXd carried = Eigen::VectorXd::Zero(2 * to.node_count());
  for (int node = 0; node < to.node_count(); ++node) {
    const NodeShares here = finder.nearest_shares(to.nodes[static_cast<std::size_t>(node)]);
    for (std::size_t i = 0; i < here.nodes.size(); ++i) {
      const std::size_t k = 2 * static_cast<std::size_t>(here.nodes[i]);
      carried.segment<2>(2 * node) +=
          here.shares[i] * Eigen::Vector2d(displacement[k], displacement[k + 1]);
    }
  }
  return carried;
}

}  // namespace deadshore::solver
