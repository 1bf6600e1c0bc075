#pragma once

#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <set>
#include <span>
#include <vector>

namespace deadshore::solver {

/// The lines of a job that its mesh should follow: one level line for each load.
struct MeshRequest {
  std::vector<mesh::LevelLine> levels;
  std::vector<mesh::Interval> bearings;
};
[[nodiscard]] MeshRequest mesh_request(const Job& job);

/// The mesh of a job's wall as cut, at its own element size or another.
/// \throws mesh::GeometryError
[[nodiscard]] mesh::WallMesh mesh_of(const Job& job, double size);
[[nodiscard]] mesh::WallMesh mesh_of(const Job& job);

/// The chain of sides that a load stands on, in a mesh that follows `mesh_request(job)`.
[[nodiscard]] mesh::Chain chain_of(const Job& job, LoadId load);

/// Nodes along a chain of sides, each once.
[[nodiscard]] std::set<int> nodes_of_chain(const mesh::QuadMesh& mesh, mesh::Chain chain);
[[nodiscard]] inline std::set<int> nodes_of_chain(const mesh::QuadMesh& mesh,
                                                  mesh::ChainKind chain) {
  return nodes_of_chain(mesh, mesh::Chain{chain});
}

/// Pier bases fixed both ways; held ends fixed sideways above the soffit.
[[nodiscard]] std::vector<Support> supports_of(const Job& job, const mesh::QuadMesh& mesh);

/// A material for each region of the mesh: the masonry under `model`, then the lintels.
[[nodiscard]] std::vector<PanelMaterial> materials_of(const Job& job, MasonryModel model);

/// What part of each load stands on the wall, 0 to 1, in the job's order.
struct LoadShares {
  std::span<const double> line;
  std::span<const double> point;
};

/// Nodal forces of line and point loads, characteristic (dead + imposed), N, 2 per node of `mesh`.
/// \throws SolveError if part of a load that acts has no masonry to stand on
[[nodiscard]] Eigen::VectorXd loads_of(const Job& job, const LoadShares& shares,
                                       const mesh::QuadMesh& mesh);

/// The same with all of every load.
[[nodiscard]] Eigen::VectorXd loads_of(const Job& job, const mesh::QuadMesh& mesh);

/// Everything that acts on a job's panel at once: weight, loads and needles.
[[nodiscard]] PanelLoading loading_of(const Job& job, const PanelModel& model,
                                      MasonryModel masonry);

}  // namespace deadshore::solver
