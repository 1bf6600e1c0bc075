#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"
#include "solver/job/job.h"
#include "solver/panel/contact_bed.h"
#include "solver/panel/panel_law.h"

#include <Eigen/Core>

#include <string>
#include <vector>

namespace deadshore::benchmarks {

/// A linear problem that two programs are to solve alike: a wall of one elastic material on 4-node
/// elements, its weight, nodal loads, fixed displacements, and beds whose springs hold (all of
/// them, also against pull).
struct ElasticProblem {
  mesh::QuadMesh mesh;
  solver::PanelMaterial material;
  std::vector<solver::Support> supports;  ///< with value 0
  std::vector<solver::ContactBed> beds;
  Eigen::VectorXd load;  ///< of each node, N, without the weight
};

/// CPU time of the parts of one solution from mesh to displacements, s.
struct SolutionTimes {
  double set_up = 0.0;  ///< numbering, pattern of the matrix, and symbolic factor where separate
  double assembly = 0.0;
  double factorisation = 0.0;
  double solution = 0.0;

  [[nodiscard]] double all() const { return set_up + assembly + factorisation + solution; }
};

struct ElasticSolution {
  SolutionTimes times;
  Eigen::VectorXd displacement;  ///< 2 per node, mm
};

/// The uncracked wall of a job as such a problem.
[[nodiscard]] ElasticProblem elastic_problem(const solver::Job& job);

[[nodiscard]] ElasticSolution solve_here(const ElasticProblem& problem);
[[nodiscard]] ElasticSolution solve_with_dealii(const ElasticProblem& problem);

/// An upward force on the wall, N: of each bed, then of each base.
struct Reaction {
  std::string name;
  double force = 0.0;
};
[[nodiscard]] std::vector<Reaction> reactions_of(const ElasticProblem& problem,
                                                 const Eigen::VectorXd& u);

}  // namespace deadshore::benchmarks
