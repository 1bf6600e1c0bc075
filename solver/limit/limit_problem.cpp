#include "solver/limit/limit_problem.h"

#include "solver/fem/index.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/quad_shape.h"

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

void add_all_pushing(const Job& job, const StageState& state, LimitProblem& problem) {
  const mesh::Interval everywhere{-std::numeric_limits<double>::infinity(),
                                  std::numeric_limits<double>::infinity()};
  const mesh::Chain soffit{mesh::ChainKind::soffit};
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (is_in(state.needles[i])) add_pushing(problem, soffit, job.needles[i].bearing());
  }
  if (state.packed_on) {
    add_pushing(problem, soffit, everywhere);
    add_pushing(problem, {mesh::ChainKind::block_top, pockets_group}, everywhere);
  }
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    const DeadShore& shore = job.dead_shores[i];
    if (!state.shore_tight[i] || !shore.joist_ends) continue;
    const LineLoad& load = job.line_loads[index_of(shore.carries)];
    add_pushing(problem, chain_of(job, shore.carries), load.x);
  }
}

}  // namespace

RegionMaterial material_of(const Job& job, const StageState& state, mesh::Region region) {
  if (region.kind == mesh::RegionKind::lintel) {
    const Lintel& lintel = job.lintels[region.index];
    const double strength = lintel_strength * job.masonry.compressive_strength;
    return {lintel.thickness, lintel.unit_weight, strength, strength, false};
  }
  if (region == padstones_region && state.padstones && job.beam) {
    const Padstone& padstone = job.beam->padstone;
    return {job.thickness, padstone.unit_weight, padstone.strength, 0.0, false};
  }
  return {job.thickness, job.masonry.unit_weight, job.masonry.compressive_strength, 0.0, true};
}

void add_pushing(LimitProblem& problem, mesh::Chain chain, mesh::Interval x) {
  for (const mesh::Side side : problem.quads.sides_of(chain)) {
    for (const SidePoint& point : points_on_side(problem.quads, side, x)) {
      add_rise(point, problem.pushing.emplace_back());
    }
  }
}

LimitProblem limit_problem(const Job& job, const StageState& state, mesh::QuadMesh quads) {
  LimitProblem problem;
  problem.quads = std::move(quads);
  const mesh::QuadMesh& mesh = problem.quads;
  problem.masonry_strength = job.masonry.compressive_strength;
  problem.supports = supports_of(job, mesh);
  std::vector<RegionMaterial> materials;
  for (const mesh::Region region : mesh.regions) {
    materials.push_back(material_of(job, state, region));
  }
  const QuadGeometry geometry(mesh);
  problem.masonry_weight = Eigen::VectorXd::Zero(mesh.node_count());
  problem.other_load = Eigen::VectorXd::Zero(mesh.node_count());
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const RegionMaterial& material = materials[index_of(mesh.region_of_quad[index_of(quad)])];
    problem.thickness.push_back(material.thickness);
    problem.compression.push_back(material.compression);
    problem.tension.push_back(material.tension);
    problem.is_masonry.push_back(material.is_masonry ? 1 : 0);
    Eigen::VectorXd& load = material.is_masonry ? problem.masonry_weight : problem.other_load;
    const Eigen::VectorXd areas = geometry.node_areas(quad);
    Eigen::Index i = 0;
    for (const int node : mesh.nodes_of(quad)) {
      load(node) += material.unit_weight * material.thickness * areas(i++);
    }
  }
  const Eigen::VectorXd applied = loads_at(job, mesh, state);
  for (int node = 0; node < mesh.node_count(); ++node) {
    problem.other_load(node) -= applied(2 * node + 1);
  }
  add_all_pushing(job, state, problem);
  return problem;
}

}  // namespace deadshore::solver
