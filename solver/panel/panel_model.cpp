#include "solver/panel/panel_model.h"

#include "solver/fem/quad_shape.h"
#include "solver/fem/stiffness_pattern.h"

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

/// The same, measured from the region's datum.
template <int Nodes>
Eigen::Matrix<double, 2, Nodes> displacements_of(const mesh::QuadMesh& mesh,
                                                 const PanelLoading& loading, int quad,
                                                 const Eigen::VectorXd& u) {
  auto local = displacements_of<Nodes>(mesh, quad, u);
  const int region = mesh.region_of_quad[static_cast<std::size_t>(quad)];
  if (const Eigen::VectorXd* datum = loading.datum_of(region)) {
    local -= displacements_of<Nodes>(mesh, quad, *datum);
  }
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

/// Groups of nodes that a beam ties together: its elements', and those of its points of contact.
std::vector<std::vector<int>> couplings_of(const std::optional<BeamLine>& beam,
                                           std::span<const ContactBed> beds) {
  std::vector<std::vector<int>> groups;
  if (!beam) return groups;
  for (int element = 0; element + 1 < beam->node_count(); ++element) {
    groups.push_back({beam->first_node + element, beam->first_node + element + 1});
  }
  for (const ContactBed& bed : beds) {
    for (const ContactPoint& point : bed.points) {
      std::vector<int>& group = groups.emplace_back();
      for (const LinearForm::Term& term : point.form.active_terms()) group.push_back(term.node());
    }
  }
  return groups;
}

}  // namespace

PanelModel::PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports)
    : PanelModel(mesh, supports, {}, {}) {}

PanelModel::PanelModel(const mesh::QuadMesh& mesh, std::span<const Support> supports,
                       std::optional<BeamLine> beam, std::span<const ContactBed> beam_beds)
    : mesh_(mesh),
      supports_(supports.begin(), supports.end()),
      beam_(std::move(beam)),
      rigid_motions_(mesh, supports, beam_),
      equations_(mesh, supports, beam_ ? beam_->node_count() : 0),
      geometry_(mesh),
      pattern_(mesh, equations_, couplings_of(beam_, beam_beds)),
      factor_(pattern_.empty()) {}

Eigen::VectorXd PanelModel::start() const {
  Eigen::VectorXd u = Eigen::VectorXd::Zero(2 * node_count());
  for (const Support& support : supports_) u(2 * support.node + support.component) = support.value;
  return u;
}

Eigen::VectorXd PanelModel::weight(std::span<const PanelMaterial> materials) const {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * node_count());
  for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
    const auto& material =
        materials[static_cast<std::size_t>(mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    const Eigen::VectorXd areas = geometry_.node_areas(quad);
    Eigen::Index i = 0;
    for (const int node : mesh_.nodes_of(quad)) {
      load(2 * node + 1) -= material.unit_weight * material.thickness * areas(i++);
    }
  }
  if (beam_) add_weight(*beam_, load);
  return load;
}

double PanelModel::energy(const PanelLoading& loading, const Eigen::VectorXd& u) const {
  double energy = -loading.load.dot(u);
  for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
    const auto& material = loading.materials[static_cast<std::size_t>(
        mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    for (int point = 0; point < quad_points; ++point) {
      energy += respond(material, strain(loading, quad, point, u)).energy * material.thickness *
                geometry_.area(quad, point);
    }
  }
  if (beam_) {
    Eigen::VectorXd force = Eigen::VectorXd::Zero(u.size());
    add_beam(u, force, nullptr);
    energy += 0.5 * force.dot(u);
  }
  for (const ContactBed& bed : loading.beds) energy += energy_of(bed, u);
  return energy;
}

Eigen::VectorXd PanelModel::resistance(const PanelLoading& loading, const Eigen::VectorXd& u,
                                       SparseStiffness* stiffness) const {
  const auto masonry = [&](int quad, int, const Voigt& strain) {
    const PanelResponse response =
        respond(loading.materials[static_cast<std::size_t>(
                    mesh_.region_of_quad[static_cast<std::size_t>(quad)])],
                strain);
    return PointStress{response.stress, response.tangent};
  };
  const auto contact = [&](std::size_t bed, std::size_t point, double closure) {
    if (closure < 0.0) return PointPush{};  // see ContactPoint::is_closed
    const double k = loading.beds[bed].points[point].stiffness;
    return PointPush{k * closure, k};
  };
  return assemble_by(loading, u, masonry, contact, stiffness);
}

Eigen::VectorXd PanelModel::assemble(const PanelLoading& loading, const Eigen::VectorXd& u,
                                     const MasonryLaw& masonry, const ContactLaw& contact,
                                     SparseStiffness* stiffness) const {
  return assemble_by(loading, u, masonry, contact, stiffness);
}

template <class Masonry, class Contact>
Eigen::VectorXd PanelModel::assemble_by(const PanelLoading& loading, const Eigen::VectorXd& u,
                                        const Masonry& masonry, const Contact& contact,
                                        SparseStiffness* stiffness) const {
  Eigen::VectorXd force = Eigen::VectorXd::Zero(u.size());
  if (stiffness != nullptr) std::fill_n(stiffness->valuePtr(), stiffness->nonZeros(), 0.0);
  if (mesh_.order == mesh::QuadOrder::four_node) {
    add_wall<4>(loading, u, masonry, force, stiffness);
  } else {
    add_wall<8>(loading, u, masonry, force, stiffness);
  }
  if (beam_) add_beam(u, force, stiffness);
  for (std::size_t b = 0; b < loading.beds.size(); ++b) {
    for (std::size_t p = 0; p < loading.beds[b].points.size(); ++p) {
      const ContactPoint& point = loading.beds[b].points[p];
      const PointPush bed = contact(b, p, point.closure(u));
      if (bed.push != 0.0) point.form.push(bed.push * point.length, force);
      if (stiffness == nullptr || bed.stiffness == 0.0) continue;
      point.form.over(equations_).add_stiffness(bed.stiffness * point.length, pattern_, *stiffness);
    }
  }
  return force;
}

void PanelModel::add_beam(const Eigen::VectorXd& u, Eigen::VectorXd& force,
                          SparseStiffness* stiffness) const {
  for (int element = 0; element + 1 < beam_->node_count(); ++element) {
    const Eigen::Matrix4d k = element_stiffness(*beam_, element);
    const int node = beam_->first_node + element;
    force.segment<4>(2 * node) += k * u.segment<4>(2 * node);
    if (stiffness == nullptr) continue;
    for (int i = 0; i < 4; ++i) {
      for (int j = 0; j <= i; ++j) {
        const int row = equations_.equation(node + i / 2, i % 2);
        const int column = equations_.equation(node + j / 2, j % 2);
        if (row < 0 || column < 0) continue;
        stiffness->valuePtr()[pattern_.place(row, column)] += k(i, j);
      }
    }
  }
}

template <int Nodes, class Masonry>
void PanelModel::add_wall(const PanelLoading& loading, const Eigen::VectorXd& u,
                          const Masonry& masonry, Eigen::VectorXd& force,
                          SparseStiffness* stiffness) const {
  for_each_quad(pattern_.colours(), [&](int quad) {
    const auto& material = loading.materials[static_cast<std::size_t>(
        mesh_.region_of_quad[static_cast<std::size_t>(quad)])];
    const auto local = displacements_of<Nodes>(mesh_, loading, quad, u);
    NodalVector<Nodes> quad_force = NodalVector<Nodes>::Zero();
    StiffnessBlocks<Nodes> quad_stiffness;
    for (int point = 0; point < quad_points; ++point) {
      const auto gradient = geometry_.gradient<Nodes>(quad, point);
      const double volume = geometry_.area(quad, point) * material.thickness;
      const PointStress response = masonry(quad, point, strain_of(gradient, local));
      add_stress<Nodes>(gradient, response.stress, volume, quad_force);
      if (stiffness != nullptr) quad_stiffness.add(gradient, volume * response.tangent);
    }
    scatter<Nodes>(mesh_, quad, quad_force, force);
    if (stiffness != nullptr) quad_stiffness.scatter(pattern_.places(quad), stiffness->valuePtr());
  });
}

Voigt PanelModel::strain(int quad, int point, const Eigen::VectorXd& u) const {
  if (mesh_.order == mesh::QuadOrder::four_node) {
    return strain_of(geometry_.gradient<4>(quad, point), displacements_of<4>(mesh_, quad, u));
  }
  return strain_of(geometry_.gradient<8>(quad, point), displacements_of<8>(mesh_, quad, u));
}

Voigt PanelModel::strain(const PanelLoading& loading, int quad, int point,
                         const Eigen::VectorXd& u) const {
  const int region = mesh_.region_of_quad[static_cast<std::size_t>(quad)];
  const Voigt total = strain(quad, point, u);
  const Eigen::VectorXd* datum = loading.datum_of(region);
  return datum != nullptr ? Voigt(total - strain(quad, point, *datum)) : total;
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
  Eigen::VectorXd nodal = Eigen::VectorXd::Zero(2 * model.node_count());
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
