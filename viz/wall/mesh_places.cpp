#include "viz/wall/mesh_places.h"

#include "solver/fem/quad_shape.h"

#include <Eigen/LU>

#include <cmath>
#include <utility>

namespace deadshore::viz {
namespace {

using solver::QuadShape;

/// The reference point of `p` in a quadrilateral by its corners, by Newton's method: one step where
/// it is a parallelogram, few where it is a trapezium. Sides are straight, so that midside nodes
/// change nothing.
Eigen::Vector2d reference_point(const mesh::QuadMesh& mesh, int quad, mesh::Point p) {
  const auto corners = mesh::corners_of(mesh, quad);
  Eigen::Matrix<double, 4, 2> places;
  for (int i = 0; i < 4; ++i) {
    const mesh::Point& corner = corners[static_cast<std::size_t>(i)];
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
std::array<double, 8> shares_at(const Eigen::Vector2d& reference) {
  const auto shape = QuadShape<Nodes>::at(reference.x(), reference.y());
  std::array<double, 8> shares{};
  for (int i = 0; i < Nodes; ++i) shares[static_cast<std::size_t>(i)] = shape.value(i);
  return shares;
}

}  // namespace

MeshPlaces::MeshPlaces(const mesh::QuadMesh& mesh, std::vector<char> chosen)
    : mesh_(mesh), chosen_(std::move(chosen)), finder_(mesh) {}

std::optional<NodeShares> MeshPlaces::at(mesh::Point p) const {
  const int quad = finder_.find(p);
  if (quad < 0 || (!chosen_.empty() && chosen_[static_cast<std::size_t>(quad)] == 0))
    return std::nullopt;
  const Eigen::Vector2d reference = reference_point(mesh_, quad, p);
  return NodeShares{mesh_.nodes_of(quad), mesh_.order == mesh::QuadOrder::four_node
                                              ? shares_at<4>(reference)
                                              : shares_at<8>(reference)};
}

}  // namespace deadshore::viz
