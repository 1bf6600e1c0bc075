#include "solver/panel/recovery.h"

#include "solver/fem/job_mesh.h"
#include "solver/fem/quad_shape.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace deadshore::solver {

namespace {

const PanelMaterial& material_of(const PanelModel& model, const PanelLoading& loading, int quad) {
  return loading.materials[static_cast<std::size_t>(
      model.mesh().region_of_quad[static_cast<std::size_t>(quad)])];
}

PlaneTensor stress_tensor(const Voigt& stress) {
  return {stress(0), stress(1), stress(2)};
}
PlaneTensor strain_tensor(const Voigt& strain) {
  return {strain(0), strain(1), 0.5 * strain(2)};
}

/// Gauss-point stresses carried to the corners and averaged over the elements of one region around
/// each node; where two regions meet, the first region's (the masonry's) stress is shown.
class NodeAverage {
 public:
  explicit NodeAverage(const mesh::QuadMesh& mesh)
      : mesh_(mesh),
        sum_(mesh.nodes.size(), Voigt::Zero()),
        count_(mesh.nodes.size(), 0),
        region_(mesh.nodes.size(), static_cast<int>(mesh.regions.size())) {}

  void add(int quad, const Eigen::Matrix<double, 4, 3>& corner_stress) {
    const int region = mesh_.region_of_quad[static_cast<std::size_t>(quad)];
    const auto nodes = mesh_.nodes_of(quad);
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const std::size_t node = static_cast<std::size_t>(nodes[i]);
      const Eigen::Index corner = static_cast<Eigen::Index>(i % 4);
      const Eigen::Index next = (corner + 1) % 4;
      const Voigt stress = i < 4
                               ? Voigt(corner_stress.row(corner))
                               : Voigt(0.5 * (corner_stress.row(corner) + corner_stress.row(next)));
      if (region > region_[node]) continue;
      if (region < region_[node]) {
        region_[node] = region;
        sum_[node].setZero();
        count_[node] = 0;
      }
      sum_[node] += stress;
      ++count_[node];
    }
  }

  [[nodiscard]] std::vector<PlaneTensor> averages() const {
    std::vector<PlaneTensor> result;
    result.reserve(sum_.size());
    for (std::size_t node = 0; node < sum_.size(); ++node) {
      result.push_back(stress_tensor(sum_[node] / std::max(1, count_[node])));
    }
    return result;
  }

 private:
  const mesh::QuadMesh& mesh_;
  std::vector<Voigt> sum_;
  std::vector<int> count_;
  std::vector<int> region_;
};

/// Sum of a component of the reactions along a chain, leaving out nodes that were `counted` before.
double sum_along(const mesh::QuadMesh& mesh, mesh::ChainKind chain, int component,
                 const Eigen::VectorXd& reaction, std::set<int>& counted) {
  double sum = 0.0;
  for (const int node : nodes_of_chain(mesh, chain)) {
    if (counted.insert(node).second) sum += reaction(2 * node + component);
  }
  return sum;
}

double sum_along(const mesh::QuadMesh& mesh, mesh::ChainKind chain, int component,
                 const Eigen::VectorXd& reaction) {
  std::set<int> counted;
  return sum_along(mesh, chain, component, reaction, counted);
}

/// What a needle does: its bed, or how far the soffit has come down over it where it is not there.
ContactState needle_state(const Needle& needle, NeedleId id, const mesh::QuadMesh& mesh,
                          const PanelLoading& loading, const Eigen::VectorXd& u) {
  if (const ContactBed* bed = find_bed(loading.beds, bed_of(id))) return state_of(*bed, u);
  const auto soffit = mesh.sides_of(mesh::ChainKind::soffit);
  return {0.0, state_of(needle_bed(mesh, soffit, needle, id), u).approach, 0.0};
}

}  // namespace

PanelFields fields_of(const PanelModel& model, const PanelLoading& loading,
                      const Eigen::VectorXd& u) {
  const mesh::QuadMesh& mesh = model.mesh();
  const Eigen::Matrix4d to_corners = corners_from_gauss_points();
  PanelFields fields;
  fields.displacement.assign(u.begin(), u.begin() + 2 * mesh.node_count());
  fields.quad_loose.assign(static_cast<std::size_t>(mesh.quad_count()), 0);
  NodeAverage average(mesh);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const PanelMaterial& material = material_of(model, loading, quad);
    Eigen::Matrix<double, 4, 3> stress;
    Voigt mean_stress = Voigt::Zero();
    Voigt mean_crack = Voigt::Zero();
    const double area = model.geometry().area(quad);
    for (int point = 0; point < quad_points; ++point) {
      const Voigt strain = model.strain(loading, quad, point, u);
      const double part = model.geometry().area(quad, point) / area;
      stress.row(point) = respond(material, strain).stress;
      mean_stress += part * Voigt(stress.row(point));
      mean_crack += part * crack_strain(material, strain);
    }
    fields.quad_stress.push_back(stress_tensor(mean_stress));
    fields.quad_crack_strain.push_back(strain_tensor(mean_crack));
    average.add(quad, to_corners * stress);
  }
  fields.node_stress = average.averages();
  return fields;
}

double load_on_residual(const PanelModel& model, const PanelLoading& loading,
                        const Eigen::VectorXd& u) {
  const mesh::QuadMesh& mesh = model.mesh();
  std::vector<Voigt> stress;
  stress.reserve(static_cast<std::size_t>(mesh.quad_count()) * quad_points);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int point = 0; point < quad_points; ++point) {
      stress.push_back(residual_stress(material_of(model, loading, quad),
                                       model.strain(loading, quad, point, u)));
    }
  }
  const Eigen::VectorXd force = forces_of_stress(model, loading.materials, stress);
  double held = 0.0;
  for (int node = 0; node < mesh.node_count(); ++node) {
    held += std::max(0.0, -force(2 * node + 1));
  }
  return held;
}

void add_reactions(const Job& job, const PanelModel& model, const PanelLoading& loading,
                   const Eigen::VectorXd& u, PanelResult& result) {
  const mesh::QuadMesh& mesh = model.mesh();
  const Eigen::VectorXd reaction = model.resistance(loading, u) - loading.load;
  // A base that the cut will part shares a node with the piers on either side.
  std::set<int> up_counted;
  using enum mesh::ChainKind;
  result.base_left = sum_along(mesh, base_left, 1, reaction, up_counted);
  result.base_right = sum_along(mesh, base_right, 1, reaction, up_counted);
  result.base_cut = sum_along(mesh, base_cut, 1, reaction, up_counted);
  std::set<int> side_counted;
  double shear = 0.0;
  for (const mesh::ChainKind base : {base_left, base_right, base_cut}) {
    shear += sum_along(mesh, base, 0, reaction, side_counted);
  }
  if (job.left_end == WallEnd::held) result.thrust_left = sum_along(mesh, left_end, 0, reaction);
  if (job.right_end == WallEnd::held) {
    result.thrust_right = -sum_along(mesh, right_end, 0, reaction);
  }
  double up = result.base_left + result.base_right + result.base_cut;
  for (const ContactBed& bed : loading.beds) {
    if (stands_on_ground(mesh, bed)) up += state_of(bed, u).force;
  }
  result.needles.clear();
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Needle& needle = job.needles[i];
    const ContactState state = needle_state(needle, NeedleId{i}, mesh, loading, u);
    result.needles.push_back({needle.name, needle.x, state.force, state.approach, state.contact});
  }
  result.load_total = 0.0;
  for (int node = 0; node < model.node_count(); ++node)
    result.load_total -= loading.load(2 * node + 1);
  const double sideways = shear + result.thrust_left - result.thrust_right;
  result.equilibrium_error =
      std::max(std::abs(up - result.load_total), std::abs(sideways)) /
      std::max(result.load_total, 1.0);  // a wall without load has to the newton none
}

}  // namespace deadshore::solver
