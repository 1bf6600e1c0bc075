#include "solver/panel/staged_mesh.h"

#include "solver/job/beam_places.h"
#include "solver/panel/wall_panel.h"

namespace deadshore::solver {

std::vector<mesh::WallBlock> blocks_of(const Job& job) {
  if (!job.beam) return {};
  const BeamPlaces places = places_of_beam(job);
  std::vector<mesh::WallBlock> blocks;
  for (const mesh::Box& box : places.pockets)
    blocks.push_back({pockets_group, "pockets", box.x, box.y});
  for (const mesh::Box& box : places.padstones)
    blocks.push_back({padstones_group, "padstones", box.x, box.y});
  return blocks;
}

mesh::WallMesh whole_mesh_of(const Job& job, double size) {
  const MeshRequest request = mesh_request(job);
  return mesh::mesh_whole_wall(job.wall, blocks_of(job), request.levels, request.bearings,
                               {size, job.analysis.element});
}

mesh::MeshPart part_at(const mesh::QuadMesh& whole, const StageState& state) {
  std::vector<char> keep;
  for (const mesh::Region region : whole.regions) keep.push_back(state.is_out(region) ? 0 : 1);
  return mesh::part_of(whole, keep);
}

std::vector<PanelMaterial> materials_at(const Job& job, const mesh::QuadMesh& whole,
                                        const StageState& state, MasonryModel model) {
  std::vector<PanelMaterial> materials = materials_of(job, model);
  const PanelMaterial masonry = materials.front();
  for (std::size_t region = materials.size(); region < whole.regions.size(); ++region) {
    materials.push_back(masonry);
    if (whole.regions[region] == padstones_region && state.padstones) {
      const Padstone& pad = job.beam->padstone;
      materials.back() = {pad.E, pad.nu, pad.unit_weight, job.thickness, {}};
    }
  }
  return materials;
}

Eigen::VectorXd loads_at(const Job& job, const mesh::QuadMesh& mesh, const StageState& state) {
  return loads_of(job, {state.line_load_share, state.point_load_share}, mesh);
}

}  // namespace deadshore::solver
