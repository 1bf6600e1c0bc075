#include "solver/panel/panel_model.h"

#include "solver/panel/quad_shape.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

template <int Nodes>
using Gradient = Eigen::Matrix<double, 2, Nodes>;

template <int Nodes>
using NodalVector = Eigen::Matrix<double, 2 * Nodes, 1>;

/// Displacements of an element's nodes, columns (ux, uy).
template <int Nodes>
Eigen::Matrix<double, 2, Nodes> displacements_of(const mesh::QuadMesh& mesh, int quad,
                                                 const Eigen::VectorXd& u) {
  Eigen::Matrix<double, 2, Nodes> local;
  int column = 0;
  for (const int node : mesh.nodes_of(quad)) local.col(column++) = u.segment<2>(2 * node);
  return local;
}

template <class GradientMatrix, class Displacements>
Voigt strain_of(const GradientMatrix& gradient, const Displacements& local) {
  const Eigen::Matrix2d slope = local * gradient.transpose();  // d u_i / d x_j
  return {slope(0, 0), slope(1, 1), slope(0, 1) + slope(1, 0)};
}

/// Adds B^T stress * volume to an element's nodal forces.
template <int Nodes, class GradientMatrix>
void add_stress(const GradientMatrix& g, const Voigt& stress, double volume,
                NodalVector<Nodes>& force) {
  for (int i = 0; i < Nodes; ++i) {
    force(2 * i) += volume * (g(0, i) * stress(0) + g(1, i) * stress(2));
    force(2 * i + 1) += volume * (g(1, i) * stress(1) + g(0, i) * stress(2));
  }
}

template <int Nodes, class GradientMatrix>
Eigen::Matrix<double, 3, 2 * Nodes> strain_matrix(const GradientMatrix& g) {
  Eigen::Matrix<double, 3, 2 * Nodes> B;
  for (int i = 0; i < Nodes; ++i) {
    B.col(2 * i) << g(0, i), 0.0, g(1, i);
    B.col(2 * i + 1) << 0.0, g(1, i), g(0, i);
  }
  return B;
}

/// Calls `work(quad)` for every quadrilateral, a colour at a time, so that no two threads touch the
/// same node at once.
template <class Work>
void for_each_quad(std::span<const std::vector<int>> colours, const Work& work) {
  for (const std::vector<int>& colour : colours) {
    const int count = static_cast<int>(colour.size());
#pragma omp parallel for schedule(static) if (count > 256)
    for (int k = 0; k < count; ++k) work(colour[static_cast<std::size_t>(k)]);
  }
}

template <int Nodes>
void scatter(const mesh::QuadMesh& mesh, int quad, const NodalVector<Nodes>& local,
             Eigen::VectorXd& nodal) {
  int i = 0;
  for (const int node : mesh.nodes_of(quad))
    nodal.segment<2>(2 * node) += local.template segment<2>(2 * i++);
}

}  // namespace

PanelModel::PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports)
    : mesh_(mesh),
      supports_(supports.begin(), supports.end()),
      equations_(mesh, supports),
      geometry_(mesh),
      pattern_(mesh, equations_),
      factor_(pattern_.empty()) {}

Eigen::VectorXd PanelModel::start() const {
  Eigen::VectorXd u = Eigen::VectorXd::Zero(2 * mesh_.node_count());
  for (const Support& support : supports_) u(2 * support.node + support.component) = support.value;
  return u;
}

Eigen::VectorXd PanelModel::weight(std::span<const PanelMaterial> materials) const {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * mesh_.node_count());
  const auto points = gauss_points();
  for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
    const auto& material =
        materials[static_cast<std::size_t>(mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    const auto nodes = mesh_.nodes_of(quad);
    for (int point = 0; point < quad_points; ++point) {
      const double weight = material.unit_weight * material.thickness * geometry_.area(quad, point);
      const mesh::Point p = points[static_cast<std::size_t>(point)];
      for (std::size_t i = 0; i < nodes.size(); ++i) {
        const Eigen::Index k = static_cast<Eigen::Index>(i);
        const double shape = nodes.size() == 4 ? QuadShape<4>::at(p.x, p.y).value(k)
                                               : QuadShape<8>::at(p.x, p.y).value(k);
        load(2 * nodes[i] + 1) -= weight * shape;
      }
    }
  }
  return load;
}

double PanelModel::energy(const PanelLoading& loading, const Eigen::VectorXd& u) const {
  double energy = -loading.load.dot(u);
  for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
    const auto& material = loading.materials[static_cast<std::size_t>(
        mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    for (int point = 0; point < quad_points; ++point) {
      energy += respond(material, strain(quad, point, u)).energy * material.thickness *
                geometry_.area(quad, point);
    }
  }
  for (const NeedleBearing& bearing : loading.bearings) energy += bearing.energy(u);
  return energy;
}

Eigen::VectorXd PanelModel::resistance(const PanelLoading& loading, const Eigen::VectorXd& u,
                                       SparseStiffness* stiffness) const {
  Eigen::VectorXd force = Eigen::VectorXd::Zero(u.size());
  if (stiffness != nullptr) std::fill_n(stiffness->valuePtr(), stiffness->nonZeros(), 0.0);
  if (mesh_.order == mesh::QuadOrder::four_node) {
    add_wall<4>(loading, u, force, stiffness);
  } else {
    add_wall<8>(loading, u, force, stiffness);
  }
  for (const NeedleBearing& bearing : loading.bearings) {
    bearing.add_force(u, force);
    if (stiffness != nullptr) bearing.add_tangent(u, equations_, pattern_, *stiffness);
  }
  return force;
}

template <int Nodes>
void PanelModel::add_wall(const PanelLoading& loading, const Eigen::VectorXd& u,
                          Eigen::VectorXd& force, SparseStiffness* stiffness) const {
  for_each_quad(pattern_.colours(), [&](int quad) {
    const auto& material = loading.materials[static_cast<std::size_t>(
        mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    const auto local = displacements_of<Nodes>(mesh_, quad, u);
    NodalVector<Nodes> quad_force = NodalVector<Nodes>::Zero();
    Eigen::Matrix<double, 2 * Nodes, 2 * Nodes> quad_stiffness;
    quad_stiffness.setZero();
    for (int point = 0; point < quad_points; ++point) {
      const auto gradient = geometry_.gradient<Nodes>(quad, point);
      const double volume = geometry_.area(quad, point) * material.thickness;
      const PanelResponse response = respond(material, strain_of(gradient, local));
      add_stress<Nodes>(gradient, response.stress, volume, quad_force);
      if (stiffness == nullptr) continue;
      const auto B = strain_matrix<Nodes>(gradient);
      const Eigen::Matrix<double, 3, 2 * Nodes> DB = volume * response.tangent * B;
      quad_stiffness.noalias() += B.transpose() * DB;
    }
    scatter<Nodes>(mesh_, quad, quad_force, force);
    if (stiffness == nullptr) return;
    std::size_t k = 0;
    const auto places = pattern_.places(quad);
    for (int i = 0; i < 2 * Nodes; ++i) {
      for (int j = 0; j <= i; ++j, ++k) {
        if (places[k] >= 0) stiffness->valuePtr()[places[k]] += quad_stiffness(i, j);
      }
    }
  });
}

Eigen::VectorXd PanelModel::spread_out(const Eigen::VectorXd& free) const {
  Eigen::VectorXd nodal = Eigen::VectorXd::Zero(2 * mesh_.node_count());
  for (int node = 0; node < mesh_.node_count(); ++node) {
    for (int c = 0; c < 2; ++c) {
      const int equation = equations_.equation(node, c);
      if (equation >= 0) nodal(2 * node + c) = free(equation);
    }
  }
  return nodal;
}

Eigen::VectorXd PanelModel::gather_free(const Eigen::VectorXd& nodal) const {
  Eigen::VectorXd free(equations_.count());
  for (int node = 0; node < mesh_.node_count(); ++node) {
    for (int c = 0; c < 2; ++c) {
      const int equation = equations_.equation(node, c);
      if (equation >= 0) free(equation) = nodal(2 * node + c);
    }
  }
  return free;
}

Voigt PanelModel::strain(int quad, int point, const Eigen::VectorXd& u) const {
  if (mesh_.order == mesh::QuadOrder::four_node) {
    return strain_of(geometry_.gradient<4>(quad, point), displacements_of<4>(mesh_, quad, u));
  }
  return strain_of(geometry_.gradient<8>(quad, point), displacements_of<8>(mesh_, quad, u));
}

namespace {

template <int Nodes>
void add_point_stress(const PanelModel& model, int quad, int point, const Voigt& stress,
                      double volume, Eigen::VectorXd& nodal) {
  NodalVector<Nodes> local = NodalVector<Nodes>::Zero();
  add_stress<Nodes>(model.geometry().gradient<Nodes>(quad, point), stress, volume, local);
  scatter<Nodes>(model.mesh(), quad, local, nodal);
}

}  // namespace

Eigen::VectorXd forces_of_stress(const PanelModel& model, std::span<const PanelMaterial> materials,
                                 std::span<const Voigt> stress) {
  const mesh::QuadMesh& mesh = model.mesh();
  Eigen::VectorXd nodal = Eigen::VectorXd::Zero(2 * mesh.node_count());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto& material =
        materials[static_cast<std::size_t>(mesh.region_of_quad[static_cast<std::size_t>(quad)])];
    for (int point = 0; point < quad_points; ++point) {
      const Voigt& s =
          stress[static_cast<std::size_t>(quad) * quad_points + static_cast<std::size_t>(point)];
      if (s.isZero(0.0)) continue;
      const double volume = model.geometry().area(quad, point) * material.thickness;
      if (mesh.order == mesh::QuadOrder::four_node) {
        add_point_stress<4>(model, quad, point, s, volume, nodal);
      } else {
        add_point_stress<8>(model, quad, point, s, volume, nodal);
      }
    }
  }
  return nodal;
}

}  // namespace deadshore::solver
