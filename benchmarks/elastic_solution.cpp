#include "benchmarks/cpu_clock.h"
#include "benchmarks/elastic_problem.h"
#include "solver/job/error.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/wall_panel.h"

#include <fmt/format.h>

#include <set>
#include <utility>

namespace deadshore::benchmarks {

using solver::PanelLoading;
using solver::PanelModel;

ElasticProblem elastic_problem(const solver::Job& job) {
  ElasticProblem problem;
  problem.mesh = solver::mesh_of(job).quads;
  problem.material = solver::materials_of(job, solver::MasonryModel::uncracked).front();
  problem.supports = solver::supports_of(job, problem.mesh);
  problem.load = solver::loads_of(job, problem.mesh);
  const auto soffit = problem.mesh.sides_of(mesh::ChainKind::soffit);
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    problem.beds.push_back(
        solver::needle_bed(problem.mesh, soffit, job.needles[i], solver::NeedleId{i}));
  }
  return problem;
}

ElasticSolution solve_here(const ElasticProblem& problem) {
  ElasticSolution solution;
  const double start = cpu_seconds();
  PanelModel model(problem.mesh, problem.supports);
  solver::SparseStiffness stiffness = model.empty_stiffness();
  const double set_up = cpu_seconds();
  PanelLoading loading{{problem.material}, problem.beds, problem.load};
  loading.load += model.weight(loading.materials);
  Eigen::VectorXd u = model.start();  // where all springs just touch, and so hold
  const Eigen::VectorXd resistance = model.resistance(loading, u, &stiffness);
  const double assembled = cpu_seconds();
  if (!model.factor().factorize(stiffness)) throw solver::SolveError("singular");
  const double factorised = cpu_seconds();
  u += model.spread_out(model.factor().solve(model.gather_free(loading.load - resistance)));
  const double solved = cpu_seconds();
  solution.times = {set_up - start, assembled - set_up, factorised - assembled,
                    solved - factorised};
  solution.displacement = u;
  return solution;
}

std::vector<Reaction> reactions_of(const ElasticProblem& problem, const Eigen::VectorXd& u) {
  std::vector<Reaction> reactions;
  for (const solver::ContactBed& bed : problem.beds) {
    double push = 0.0;
    for (const solver::ContactPoint& point : bed.points) {
      push += point.stiffness * point.length * point.approach(u);
    }
    reactions.push_back({fmt::format("needle {}", bed.id.index + 1), push});
  }
  const PanelModel model(problem.mesh, problem.supports);
  const PanelLoading wall{{problem.material}, {}, {}};
  const Eigen::VectorXd force =
      model.resistance(wall, u) - problem.load - model.weight(wall.materials);
  for (const auto& [name, chain] : {std::pair{"base left", mesh::ChainKind::base_left},
                                    std::pair{"base right", mesh::ChainKind::base_right}}) {
    double up = 0.0;
    for (const int node : solver::nodes_of_chain(problem.mesh, chain)) up += force(2 * node + 1);
    reactions.push_back({name, up});
  }
  return reactions;
}

}  // namespace deadshore::benchmarks
