#pragma once

#include "mesh/mesh_part.h"
#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/panel/panel_model.h"

#include <vector>

/// The wall's mesh through the stages of the work.
namespace deadshore::solver {

/// The region of the padstones, where there is a beam.
inline constexpr mesh::Region padstones_region{mesh::RegionKind::block, padstones_group};

/// Pockets for the permanent beam's ends and the padstones under them; none without a beam.
[[nodiscard]] std::vector<mesh::WallBlock> blocks_of(const Job& job);

/// The wall before the work, with a region for everything that will come out.
/// \throws mesh::GeometryError
[[nodiscard]] mesh::WallMesh whole_mesh_of(const Job& job, double size);

/// What of it is there at a stage.
[[nodiscard]] mesh::MeshPart part_at(const mesh::QuadMesh& whole, const StageState& state);

/// A material for each region of the whole mesh at a stage: masonry for what has not been changed.
[[nodiscard]] std::vector<PanelMaterial> materials_at(const Job& job, const mesh::QuadMesh& whole,
                                                      const StageState& state, MasonryModel model);

/// Nodal forces of the line and point loads by their shares at a stage, N, 2 per node of `mesh`.
/// \throws SolveError if part of a load that acts has no masonry to stand on
[[nodiscard]] Eigen::VectorXd loads_at(const Job& job, const mesh::QuadMesh& mesh,
                                       const StageState& state);

}  // namespace deadshore::solver
