#include "solver/limit/equilibrium.h"

#include "solver/fem/index.h"

namespace deadshore::solver {

Equilibrium::Equilibrium(ElementMatrices matrices)
    : matrices_(std::move(matrices)),
      pattern_(matrices_.equations, matrices_.width, matrices_.numbers) {}

void Equilibrium::add_forces(std::span<const Mohr> stress, Eigen::VectorXd& force) const {
  Eigen::VectorXd local(matrices_.width);
  for (int element = 0; element < element_count(); ++element) {
    local.setZero();
    for (int point = 0; point < matrices_.points; ++point) {
      local.noalias() += matrices_.of(element, point).transpose() *
                         stress[index_of(matrices_.points * element + point)];
    }
    const auto number = matrices_.numbers_of(element);
    for (int i = 0; i < matrices_.width; ++i) {
      if (number[index_of(i)] >= 0) force(number[index_of(i)]) += local(i);
    }
  }
}

void Equilibrium::strains(const Eigen::VectorXd& u, std::span<Mohr> strain) const {
  Eigen::VectorXd local(matrices_.width);
  for (int element = 0; element < element_count(); ++element) {
    const auto number = matrices_.numbers_of(element);
    for (int i = 0; i < matrices_.width; ++i)
      local(i) = number[index_of(i)] >= 0 ? u(number[index_of(i)]) : 0.0;
    for (int point = 0; point < matrices_.points; ++point) {
      strain[index_of(matrices_.points * element + point)].noalias() =
          matrices_.of(element, point) * local;
    }
  }
}

void Equilibrium::add_stiffness(std::span<const Eigen::Matrix3d> root,
                                SparseStiffness& stiffness) const {
  Eigen::MatrixXd half(3 * matrices_.points, matrices_.width);
  Eigen::MatrixXd local(matrices_.width, matrices_.width);
  for (int element = 0; element < element_count(); ++element) {
    for (int point = 0; point < matrices_.points; ++point) {
      half.middleRows<3>(3 * point).noalias() =
          root[index_of(matrices_.points * element + point)] * matrices_.of(element, point);
    }
    local.noalias() = half.transpose() * half;
    std::size_t k = 0;
    const auto places = pattern_.places(element);
    for (int i = 0; i < matrices_.width; ++i) {
      for (int j = 0; j <= i; ++j, ++k) {
        if (places[k] >= 0) stiffness.valuePtr()[places[k]] += local(i, j);
      }
    }
  }
}

}  // namespace deadshore::solver
