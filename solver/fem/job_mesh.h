#pragma once

#include "mesh/mesh_part.h"
#include "mesh/wall_mesher.h"
#include "solver/fem/equation_map.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"

#include <Eigen/Core>

#include <set>
#include <span>
#include <vector>

/// The wall of a job on a mesh, as cut or through the stages of the work: what the mesh follows,
/// what of it is there, where it is supported, what loads its nodes.
namespace deadshore::solver {

/// The lines of a job that its mesh should follow.
struct MeshRequest {
  std::vector<mesh::LevelLine> levels;   ///< one a load: the line loads, then the point loads
  std::vector<mesh::Interval> bearings;  ///< of the needles on the soffit, x in mm
};

/// What to ask of the mesher for a job.
[[nodiscard]] MeshRequest mesh_request(const Job& job);

/// The mesh of a job's wall as cut.
/// \param size target element size, mm
/// \throws mesh::GeometryError like `mesh::mesh_wall`
[[nodiscard]] mesh::WallMesh mesh_of(const Job& job, double size);
/// The same at the job's own element size.
[[nodiscard]] mesh::WallMesh mesh_of(const Job& job);

/// The region of the padstones, where there is a beam.
inline constexpr mesh::Region padstones_region{mesh::RegionKind::block, padstones_group};

/// Pockets for the permanent beam's ends and the padstones under them; none without a beam.
[[nodiscard]] std::vector<mesh::WallBlock> blocks_of(const Job& job);

/// The mesh of the wall before the work, with a region for everything that will come out.
/// \param size target element size, mm
/// \throws mesh::GeometryError like `mesh::mesh_whole_wall`
[[nodiscard]] mesh::WallMesh whole_mesh_of(const Job& job, double size);

/// The part of the whole wall's mesh that is there at a stage.
[[nodiscard]] mesh::MeshPart part_at(const mesh::QuadMesh& whole, const StageState& state);

/// The chain of sides that a load stands on, in a mesh that follows `mesh_request(job)`.
[[nodiscard]] mesh::Chain chain_of(const Job& job, LoadId load);

/// Numbers of the nodes along a chain of sides.
[[nodiscard]] std::set<int> nodes_of_chain(const mesh::QuadMesh& mesh, mesh::Chain chain);
[[nodiscard]] inline std::set<int> nodes_of_chain(const mesh::QuadMesh& mesh,
                                                  mesh::ChainKind chain) {
  return nodes_of_chain(mesh, mesh::Chain{chain});
}

/// The supports of a wall's mesh: the base, of piers and of the masonry of the cut while it is in,
/// fixed along x and y; ends that are held, fixed along x above the soffit.
[[nodiscard]] std::vector<Support> supports_of(const Job& job, const mesh::QuadMesh& mesh);

/// What part of each load stands on the wall, 0 to 1; the spans must outlive this.
struct LoadShares {
  std::span<const double> line;   ///< one a line load, in the job's order
  std::span<const double> point;  ///< one a point load, in the job's order
};

/// Nodal forces of line and point loads, characteristic (dead + imposed).
/// \returns 2 entries per node of `mesh` (along x, along y), N; loads act downwards, so below 0
/// \throws SolveError if part of a load that acts has no masonry to stand on
[[nodiscard]] Eigen::VectorXd loads_of(const Job& job, const LoadShares& shares,
                                       const mesh::QuadMesh& mesh);

/// The same with all of every load.
[[nodiscard]] Eigen::VectorXd loads_of(const Job& job, const mesh::QuadMesh& mesh);

/// Nodal forces of the line and point loads by their shares at a stage, N, 2 per node of `mesh`.
/// \throws SolveError if part of a load that acts has no masonry to stand on
[[nodiscard]] Eigen::VectorXd loads_at(const Job& job, const mesh::QuadMesh& mesh,
                                       const StageState& state);

}  // namespace deadshore::solver
