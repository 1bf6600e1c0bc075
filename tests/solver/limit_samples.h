#pragma once

#include "solver/limit/limit_problem.h"
#include "tests/solver/grid_mesh.h"

/// Small problems of limit analysis.
namespace deadshore::solver::testing {

/// Masonry of one thickness and strength on a mesh of 8-node elements, its bottom chain fixed,
/// without loads, weight or needles.
[[nodiscard]] LimitProblem plain_problem(mesh::QuadMesh quads, double thickness, double strength);

/// Gives the masonry its weight.
void add_own_weight(LimitProblem& problem, double unit_weight);

/// Fixes both displacements of the nodes along a chain.
void fix_chain(LimitProblem& problem, mesh::Chain chain);

}  // namespace deadshore::solver::testing
