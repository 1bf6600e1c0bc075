#include "solver/limit/equilibrium.h"

#include "solver/fem/index.h"
#include "solver/job/error.h"

namespace deadshore::solver {

Equilibrium::Equilibrium(const mesh::QuadMesh& mesh, std::span<const Support> supports,
                         std::span<const double> thickness)
    : thickness_(thickness.begin(), thickness.end()),
      equations_(mesh, supports),
      pattern_(mesh, equations_),
      geometry_(mesh),
      quad_count_(mesh.quad_count()) {
  if (mesh.order != mesh::QuadOrder::eight_node) {
    throw SolveError("limit analysis: elements of 8 nodes are due");
  }
  numbers_.reserve(2 * mesh.connectivity.size());
  for (const int node : mesh.connectivity) {
    for (const int component : {0, 1}) numbers_.push_back(equations_.equation(node, component));
  }
}

/// Volume strain by the displacements of the element's nodes.
Equilibrium::StrainMatrix Equilibrium::strain_matrix(int quad, int point) const {
  const auto g = geometry_.gradient<nodes>(quad, point);
  StrainMatrix B;
  for (int i = 0; i < nodes; ++i) {
    B.col(2 * i) << g(0, i), g(0, i), g(1, i);
    B.col(2 * i + 1) << g(1, i), -g(1, i), g(0, i);
  }
  return geometry_.area(quad, point) * thickness_[index_of(quad)] * B;
}

std::span<const int> Equilibrium::numbers(int quad) const {
  return std::span<const int>(numbers_).subspan(index_of(quad) * 2 * nodes, 2 * nodes);
}

void Equilibrium::add_forces(std::span<const Mohr> stress, Eigen::VectorXd& force) const {
  for (int quad = 0; quad < quad_count_; ++quad) {
    Eigen::Matrix<double, 2 * nodes, 1> local = Eigen::Matrix<double, 2 * nodes, 1>::Zero();
    for (int point = 0; point < quad_points; ++point) {
      local.noalias() +=
          strain_matrix(quad, point).transpose() * stress[index_of(quad_points * quad + point)];
    }
    const auto number = numbers(quad);
    for (int i = 0; i < 2 * nodes; ++i) {
      if (number[index_of(i)] >= 0) force(number[index_of(i)]) += local(i);
    }
  }
}

void Equilibrium::strains(const Eigen::VectorXd& u, std::span<Mohr> strain) const {
  for (int quad = 0; quad < quad_count_; ++quad) {
    const auto number = numbers(quad);
    Eigen::Matrix<double, 2 * nodes, 1> local;
    for (int i = 0; i < 2 * nodes; ++i)
      local(i) = number[index_of(i)] >= 0 ? u(number[index_of(i)]) : 0.0;
    for (int point = 0; point < quad_points; ++point) {
      strain[index_of(quad_points * quad + point)].noalias() = strain_matrix(quad, point) * local;
    }
  }
}

void Equilibrium::add_stiffness(std::span<const Eigen::Matrix3d> root,
                                SparseStiffness& stiffness) const {
  Eigen::Matrix<double, 3 * quad_points, 2 * nodes> half;
  Eigen::Matrix<double, 2 * nodes, 2 * nodes> local;
  for (int quad = 0; quad < quad_count_; ++quad) {
    for (int point = 0; point < quad_points; ++point) {
      half.middleRows<3>(3 * point).noalias() =
          root[index_of(quad_points * quad + point)] * strain_matrix(quad, point);
    }
    local.noalias() = half.transpose() * half;
    std::size_t k = 0;
    const auto places = pattern_.places(quad);
    for (int i = 0; i < 2 * nodes; ++i) {
      for (int j = 0; j <= i; ++j, ++k) {
        if (places[k] >= 0) stiffness.valuePtr()[places[k]] += local(i, j);
      }
    }
  }
}

}  // namespace deadshore::solver
