#include "tests/solver/limit_samples.h"

namespace deadshore::solver::testing {

void fix_chain(LimitProblem& problem, mesh::Chain chain) {
  for (const int node : nodes_on(problem.quads, chain)) {
    for (const int component : {0, 1}) problem.supports.push_back({node, component, 0.0});
  }
}

LimitProblem plain_problem(mesh::QuadMesh quads, double thickness, double strength) {
  LimitProblem problem;
  problem.quads = std::move(quads);
  const std::size_t count = static_cast<std::size_t>(problem.quads.quad_count());
  problem.thickness.assign(count, thickness);
  problem.compression.assign(count, strength);
  problem.tension.assign(count, 0.0);
  problem.is_masonry.assign(count, 1);
  problem.masonry_weight = Eigen::VectorXd::Zero(problem.quads.node_count());
  problem.other_load = Eigen::VectorXd::Zero(problem.quads.node_count());
  problem.masonry_strength = strength;
  fix_chain(problem, testing::bottom_edge);
  return problem;
}

void add_own_weight(LimitProblem& problem, double unit_weight) {
  const PanelModel model(problem.quads, problem.supports);
  const std::vector<PanelMaterial> materials = {
      {1.0, 0.0, unit_weight, problem.thickness.front(), {}}};
  const Eigen::VectorXd load = model.weight(materials);
  for (int node = 0; node < problem.quads.node_count(); ++node) {
    problem.masonry_weight(node) = -load(2 * node + 1);
  }
}

}  // namespace deadshore::solver::testing
