#include "viz/stages/stage_works.h"

#include "mesh/wall_mesher.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::viz {
namespace {

using solver::JobResult;

}  // namespace

std::vector<ShownStage> shown_stages(const JobResult& result) {
  std::vector<ShownStage> shown;
  for (const solver::StageResult& stage : result.stages) {
    shown.push_back({"", stage.state});
    if (is_staged(result))
      shown.back().words = fmt::format("stage {}: {}", shown.size(), stage.name);
  }
  return shown;
}

std::vector<char> quads_there(const mesh::QuadMesh& mesh, const solver::PanelFields& fields) {
  if (static_cast<int>(fields.quad_out.size()) != mesh.quad_count()) return {};
  std::vector<char> there;
  there.reserve(fields.quad_out.size());
  for (const char out : fields.quad_out) there.push_back(out == 0 ? 1 : 0);
  return there;
}

std::vector<char> sound_masonry(const mesh::QuadMesh& mesh, const solver::PanelFields& fields) {
  std::vector<char> sound = quads_there(mesh, fields);
  if (sound.empty()) sound.assign(static_cast<std::size_t>(mesh.quad_count()), 1);
  if (fields.quad_loose.size() != sound.size()) return sound;
  for (std::size_t quad = 0; quad < sound.size(); ++quad)
    if (fields.quad_loose[quad] != 0) sound[quad] = 0;
  return sound;
}

std::vector<char> quads_as_cut(const JobResult& result) {
  if (!is_staged(result)) return {};
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> region_there = mesh::regions_left_by_cut(result.job.wall, mesh);
  std::vector<char> there;
  there.reserve(mesh.region_of_quad.size());
  for (const int region : mesh.region_of_quad) there.push_back(region_there[region]);
  return there;
}

std::vector<char> nodes_there(const mesh::QuadMesh& mesh, const std::vector<char>& quads) {
  std::vector<char> there(mesh.nodes.size(), 0);
  for (int quad = 0; quad < mesh.quad_count(); ++quad)
    if (quads.empty() || quads[quad] != 0)
      for (const int node : mesh.nodes_of(quad)) there[node] = 1;
  return there;
}

}  // namespace deadshore::viz
