#include "viz/stage_works.h"

#include "solver/model/cut.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::viz {
namespace {

using solver::JobResult;

solver::StageState works_as_cut(const solver::Job& job) {
  solver::StageState works;
  works.removed = {solver::cut_region};
  works.needles.assign(job.needles.size(), solver::NeedleState::fitted);
  works.shore_tight.assign(job.dead_shores.size(), 0);
  works.line_load_share.assign(job.line_loads.size(), 1.0);
  works.point_load_share.assign(job.point_loads.size(), 1.0);
  return works;
}

}  // namespace

bool is_staged(const JobResult& result) {
  return result.job.analysis.sequence == solver::Sequence::staged;
}

std::vector<ShownStage> shown_stages(const JobResult& result) {
  if (!is_staged(result))
    return std::vector<ShownStage>(result.stages.size(), {"", works_as_cut(result.job)});
  std::vector<solver::Stage> stages;
  for (const solver::StageResult& stage : result.stages)
    stages.push_back({stage.name, stage.day, stage.operations});
  const std::vector<solver::StageState> states = solver::states_of(result.job, stages);
  std::vector<ShownStage> shown;
  for (std::size_t i = 0; i < stages.size(); ++i)
    shown.push_back({fmt::format("stage {}: {}", i + 1, stages[i].name), states.at(i)});
  return shown;
}

std::vector<char> quads_there(const mesh::QuadMesh& mesh, const solver::PanelFields& fields) {
  if (static_cast<int>(fields.quad_out.size()) != mesh.quad_count()) return {};
  std::vector<char> there;
  there.reserve(fields.quad_out.size());
  for (const char out : fields.quad_out) there.push_back(out == 0 ? 1 : 0);
  return there;
}

std::vector<char> quads_as_cut(const JobResult& result) {
  if (!is_staged(result)) return {};
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const mesh::WallShape& wall = result.job.wall;
  std::vector<char> region_there(mesh.regions.size(), 1);
  for (std::size_t i = 0; i < mesh.regions.size(); ++i) {
    if (mesh.regions[i] == solver::cut_region) region_there[i] = 0;
    for (const mesh::LintelShape& lintel : wall.lintels)
      if (lintel.name == mesh.regions[i] && solver::takes_out(wall, lintel)) region_there[i] = 0;
  }
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
