#include "solver/panel/wall_panel.h"

namespace deadshore::solver {

std::vector<PanelMaterial> materials_of(const Job& job, MasonryModel model) {
  std::vector<PanelMaterial> materials;
  PanelMaterial masonry{job.masonry.E, job.masonry.nu, job.masonry.unit_weight, job.thickness, {}};
  if (model == MasonryModel::cracked) masonry.tensile_strength = job.masonry.tensile_strength;
  materials.push_back(masonry);
  for (const Lintel& lintel : job.lintels) {
    materials.push_back({lintel.E, lintel.nu, lintel.unit_weight, lintel.thickness, {}});
  }
  return materials;
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

PanelLoading loading_of(const Job& job, const PanelModel& model, MasonryModel masonry) {
  PanelLoading loading;
  loading.materials = materials_of(job, masonry);
  loading.load = model.weight(loading.materials) + loads_of(job, model.mesh());
  const auto soffit = model.mesh().sides_of(mesh::ChainKind::soffit);
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    loading.beds.push_back(needle_bed(model.mesh(), soffit, job.needles[i], NeedleId{i}));
  }
  return loading;
}

}  // namespace deadshore::solver
