#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/equation_map.h"
#include "solver/limit/equilibrium.h"

#include <span>

namespace deadshore::solver {

/// Elements of 8 nodes with stress at their 4 Gauss points: quick, and no bound.
/// \param thickness of each quadrilateral, in any unit: forces come in stress times mm times that
/// \throws SolveError if the elements have 4 nodes: they are too stiff in bending
[[nodiscard]] ElementMatrices quad_elements(const mesh::QuadMesh& mesh,
                                            const EquationMap& equations,
                                            std::span<const double> thickness);

}  // namespace deadshore::solver
