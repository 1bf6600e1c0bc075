#include "solver/fem/carry_over.h"

#include "solver/fem/quad_shape.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace deadshore::solver {

namespace {

/// A place in an element's reference square and how far outside the square it lies.
struct Place {
  int quad = -1;
  double xi = 0.0;
  double eta = 0.0;
  double outside = std::numeric_limits<double>::infinity();
};

/// Reference place of a point in a quadrilateral with straight sides, by Newton; clamped to it.
Place place_in(const mesh::QuadMesh& mesh, int quad, mesh::Point p) {
  const auto corners = mesh::corners_of(mesh, quad);
  Eigen::Matrix<double, 4, 2> coordinates;
  for (int i = 0; i < 4; ++i) {
    coordinates.row(i) << corners[static_cast<std::size_t>(i)].x,
        corners[static_cast<std::size_t>(i)].y;
  }
  Eigen::Vector2d reference = Eigen::Vector2d::Zero();
  for (int step = 0; step < 8; ++step) {
    const QuadShape<4> shape = QuadShape<4>::at(reference.x(), reference.y());
    const Eigen::Vector2d miss = Eigen::Vector2d(p.x, p.y) - coordinates.transpose() * shape.value;
    const Eigen::Matrix2d slope = (shape.derivative * coordinates).transpose();
    reference += slope.inverse() * miss;
  }
  const Eigen::Vector2d clamped = reference.cwiseMax(-1.0).cwiseMin(1.0);
  return {quad, clamped.x(), clamped.y(), (reference - clamped).norm()};
}

/// Elements by the cells of an even grid that their boxes touch.
class ElementFinder {
 public:
  explicit ElementFinder(const mesh::QuadMesh& mesh) : mesh_(mesh) {
    for (const mesh::Point& p : mesh.nodes) {
      origin_ = {std::min(origin_.x, p.x), std::min(origin_.y, p.y)};
      size_ = {std::max(size_.x, p.x), std::max(size_.y, p.y)};
    }
    const double cell = std::sqrt(size_.x * size_.y / std::max(1, mesh.quad_count()));
    columns_ = 1 + static_cast<int>((size_.x - origin_.x) / cell);
    rows_ = 1 + static_cast<int>((size_.y - origin_.y) / cell);
    cell_ = cell;
    quads_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (int quad = 0; quad < mesh.quad_count(); ++quad) insert(quad);
  }

  /// The element that holds `p`, or the one it lies least outside of among those near.
  [[nodiscard]] Place find(mesh::Point p) const {
    const int column = column_of(p.x);
    const int row = row_of(p.y);
    Place best;
    for (int ring = 0; ring <= std::max(columns_, rows_); ++ring) {
      for (int j = std::max(0, row - ring); j <= std::min(rows_ - 1, row + ring); ++j) {
        for (int i = std::max(0, column - ring); i <= std::min(columns_ - 1, column + ring); ++i) {
          if (std::max(std::abs(i - column), std::abs(j - row)) != ring) continue;
          for (const int quad : at(i, j)) {
            const Place place = place_in(mesh_, quad, p);
            if (place.outside < best.outside) best = place;
          }
        }
      }
      if (best.quad >= 0) return best;
    }
    return best;
  }

 private:
  [[nodiscard]] int column_of(double x) const {
    return std::clamp(static_cast<int>((x - origin_.x) / cell_), 0, columns_ - 1);
  }
  [[nodiscard]] int row_of(double y) const {
    return std::clamp(static_cast<int>((y - origin_.y) / cell_), 0, rows_ - 1);
  }
  [[nodiscard]] std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }
  [[nodiscard]] const std::vector<int>& at(int column, int row) const {
    return quads_[index(column, row)];
  }

  void insert(int quad) {
    const auto corners = mesh::corners_of(mesh_, quad);
    const auto [left, right] =
        std::minmax({corners[0].x, corners[1].x, corners[2].x, corners[3].x});
    const auto [bottom, top] =
        std::minmax({corners[0].y, corners[1].y, corners[2].y, corners[3].y});
    for (int row = row_of(bottom); row <= row_of(top); ++row) {
      for (int column = column_of(left); column <= column_of(right); ++column) {
        quads_[index(column, row)].push_back(quad);
      }
    }
  }

  const mesh::QuadMesh& mesh_;
  mesh::Point origin_{std::numeric_limits<double>::infinity(),
                      std::numeric_limits<double>::infinity()};
  mesh::Point size_{};
  double cell_ = 1.0;
  int columns_ = 1;
  int rows_ = 1;
  std::vector<std::vector<int>> quads_;
};

template <int Nodes>
Eigen::Vector2d displacement_at(const mesh::QuadMesh& mesh, std::span<const double> u,
                                const Place& place) {
  const QuadShape<Nodes> shape = QuadShape<Nodes>::at(place.xi, place.eta);
  Eigen::Vector2d sum = Eigen::Vector2d::Zero();
  Eigen::Index i = 0;
  for (const int node : mesh.nodes_of(place.quad)) {
    const std::size_t k = 2 * static_cast<std::size_t>(node);
    sum += shape.value(i++) * Eigen::Vector2d(u[k], u[k + 1]);
  }
  return sum;
}

}  // namespace

Eigen::VectorXd carry_over(const mesh::QuadMesh& from, std::span<const double> displacement,
                           const mesh::QuadMesh& to) {
  const ElementFinder finder(from);
  Eigen::VectorXd carried(2 * to.node_count());
  for (int node = 0; node < to.node_count(); ++node) {
    const Place place = finder.find(to.nodes[static_cast<std::size_t>(node)]);
    carried.segment<2>(2 * node) = from.order == mesh::QuadOrder::four_node
                                       ? displacement_at<4>(from, displacement, place)
                                       : displacement_at<8>(from, displacement, place);
  }
  return carried;
}

}  // namespace deadshore::solver
