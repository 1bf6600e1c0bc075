#include "solver/stages/staged_mesh.h"

#include "solver/panel/wall_panel.h"

namespace deadshore::solver {

std::vector<mesh::WallBlock> blocks_of(const Job& job) {
  if (!job.beam) return {};
  const PermanentBeam& beam = *job.beam;
  const mesh::Cut& cut = job.wall.cut;
  const double floor = cut.soffit - beam.packing.thickness - beam.member.section.h;
  const mesh::Interval pocket{floor, cut.soffit};
  const mesh::Interval pad{floor - beam.padstone.depth, floor};
  return {{pockets_region, {cut.left - beam.bearing, cut.left}, pocket},
          {pockets_region, {cut.right, cut.right + beam.bearing}, pocket},
          {padstones_part, {cut.left - beam.padstone.length, cut.left}, pad},
          {padstones_part, {cut.right, cut.right + beam.padstone.length}, pad}};
}

mesh::WallMesh whole_mesh_of(const Job& job, double size) {
  const MeshRequest request = mesh_request(job);
  return mesh::mesh_whole_wall(job.wall, blocks_of(job), request.levels, request.bearings,
                               {size, job.analysis.element});
}

mesh::MeshPart part_at(const mesh::QuadMesh& whole, const StageState& state) {
  std::vector<char> keep;
  for (const std::string& region : whole.regions) keep.push_back(state.is_out(region) ? 0 : 1);
  return mesh::part_of(whole, keep);
}

std::vector<PanelMaterial> materials_at(const Job& job, const mesh::QuadMesh& whole,
                                        const StageState& state, MasonryModel model) {
  std::vector<PanelMaterial> materials = materials_of(job, model);
  const PanelMaterial masonry = materials.front();
  for (std::size_t region = materials.size(); region < whole.regions.size(); ++region) {
    materials.push_back(masonry);
    if (whole.regions[region] == padstones_part && state.padstones) {
      const Padstone& pad = job.beam->padstone;
      materials.back() = {pad.E, pad.nu, pad.unit_weight, job.thickness, {}};
    }
  }
  return materials;
}

Eigen::VectorXd loads_at(const Job& job, const mesh::QuadMesh& mesh, const StageState& state) {
  Job acting = job;
  acting.line_loads.clear();
  acting.point_loads.clear();
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    if (state.line_load_share[i] == 0.0) continue;
    LineLoad& load = acting.line_loads.emplace_back(job.line_loads[i]);
    load.dead *= state.line_load_share[i];
    load.imposed *= state.line_load_share[i];
  }
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    if (state.point_load_share[i] == 0.0) continue;
    acting.point_loads.push_back(job.point_loads[i]);
  }
  return loads_of(acting, mesh);
}

}  // namespace deadshore::solver
