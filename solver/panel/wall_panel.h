#pragma once

#include "solver/fem/job_mesh.h"
#include "solver/panel/panel_model.h"

#include <vector>

namespace deadshore::solver {

/// A material for each region of `mesh_of(job)`: the masonry, under `model`, then the lintels.
[[nodiscard]] std::vector<PanelMaterial> materials_of(const Job& job, MasonryModel model);

/// A material for each region of `whole_mesh_of` at a stage: masonry for what has not been changed,
/// concrete of the padstones once they are in.
[[nodiscard]] std::vector<PanelMaterial> materials_at(const Job& job, const mesh::QuadMesh& whole,
                                                      const StageState& state, MasonryModel model);

/// What acts on the panel of a job's wall as cut, all at once: weight, loads and needles.
/// \param model on the mesh of `mesh_of(job)`
/// \throws SolveError if a load has no masonry to stand on, or a needle none over its bearing
[[nodiscard]] PanelLoading loading_of(const Job& job, const PanelModel& model,
                                      MasonryModel masonry);

}  // namespace deadshore::solver
