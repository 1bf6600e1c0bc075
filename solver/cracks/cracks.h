#pragma once

#include "mesh/quad_mesh.h"
#include "solver/model/job.h"
#include "solver/model/results.h"

#include <vector>

namespace deadshore::solver {

/// The cracks of a cracked analysis, widest first: connected bands of elements with crack strain,
/// widths as crack strain over the element's extent across the crack. Bands narrower than a hair
/// (`least_width` mm) are left out.
[[nodiscard]] std::vector<Crack> cracks_of(const Job& job, const mesh::QuadMesh& mesh,
                                           const PanelFields& fields, double least_width = 0.05);

/// Damage of the masonry above the soffit from its movements since `before` (displacements, 2 per
/// node; the first stage's) and its widest crack.
[[nodiscard]] Damage damage_of(const Job& job, const mesh::QuadMesh& mesh,
                               const PanelFields& fields, const std::vector<double>& before,
                               const std::vector<Crack>& cracks);

}  // namespace deadshore::solver
