#pragma once

#include "solver/fem/job_mesh.h"
#include "solver/panel/panel_model.h"

#include <vector>

namespace deadshore::solver {

/// A material for each region of the mesh: the masonry under `model`, then the lintels.
[[nodiscard]] std::vector<PanelMaterial> materials_of(const Job& job, MasonryModel model);

/// A material for each region of the whole mesh at a stage: masonry for what has not been changed.
[[nodiscard]] std::vector<PanelMaterial> materials_at(const Job& job, const mesh::QuadMesh& whole,
                                                      const StageState& state, MasonryModel model);

/// Everything that acts on a job's panel at once: weight, loads and needles.
[[nodiscard]] PanelLoading loading_of(const Job& job, const PanelModel& model,
                                      MasonryModel masonry);

}  // namespace deadshore::solver
