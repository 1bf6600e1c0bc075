#include "solver/fem/quad_geometry.h"

#include "solver/fem/quad_shape.h"
#include "solver/job/error.h"

#include <Eigen/LU>
#include <fmt/format.h>

namespace deadshore::solver {

template <int Nodes>
void QuadGeometry::fill(const mesh::QuadMesh& mesh) {
  std::array<QuadShape<Nodes>, quad_points> shapes;
  for (int point = 0; point < quad_points; ++point) {
    const mesh::Point p = gauss_points()[static_cast<std::size_t>(point)];
    shapes[static_cast<std::size_t>(point)] = QuadShape<Nodes>::at(p.x, p.y);
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

}  // namespace deadshore::solver
