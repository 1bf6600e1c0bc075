#include "solver/fem/job_mesh.h"

#include "solver/fem/quad_shape.h"
#include "solver/job/beam_places.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <variant>

namespace deadshore::solver {

namespace {

/// Adds `intensity` N/mm downwards over `x` along a chain.
void add_line(const mesh::QuadMesh& mesh, mesh::Chain chain, mesh::Interval x, double intensity,
              const std::string& name, Eigen::VectorXd& load) {
  double covered = 0.0;
  for (const mesh::Side side : mesh.sides_of(chain)) {
    for (const SidePoint& point : points_on_side(mesh, side, x)) {
      covered += point.length;
      for (int i = 0; i < point.nodes.count; ++i) {
        const std::size_t k = static_cast<std::size_t>(i);
        load(2 * point.nodes.nodes[k] + 1) -= intensity * point.length * point.shape[k];
      }
    }
  }
  if (std::abs(covered - x.length()) > 1e-6 * x.length()) {
    throw SolveError(fmt::format("load \"{}\" has masonry under {:.0f} mm of its {:.0f} mm", name,
                                 covered, x.length()));
  }
}

}  // namespace

std::set<int> nodes_of_chain(const mesh::QuadMesh& mesh, mesh::Chain chain) {
  std::set<int> nodes;
  for (const mesh::Side side : mesh.sides_of(chain)) {
    const mesh::SideNodes along = mesh::nodes_along(mesh, side);
    nodes.insert(along.nodes.begin(), along.nodes.begin() + along.count);
  }
  return nodes;
}

mesh::Chain chain_of(const Job& job, LoadId load) {
  const auto* line = std::get_if<LineLoadId>(&load);
  return {mesh::ChainKind::level_line,
          line ? index_of(*line) : job.line_loads.size() + index_of(std::get<PointLoadId>(load))};
}

MeshRequest mesh_request(const Job& job) {
  MeshRequest request;
  for (const LineLoad& load : job.line_loads) {
    request.levels.push_back({"line load " + load.name, load.x, load.level, load.follows_top});
  }
  for (const PointLoad& load : job.point_loads) {
    request.levels.push_back({"point load " + load.name, load.span(), load.level, false});
  }
  for (const Needle& needle : job.needles) request.bearings.push_back(needle.bearing());
  return request;
}

mesh::WallMesh mesh_of(const Job& job, double size) {
  const MeshRequest request = mesh_request(job);
  return mesh::mesh_wall(job.wall, request.levels, request.bearings, {size, job.analysis.element});
}

mesh::WallMesh mesh_of(const Job& job) {
  return mesh_of(job, job.analysis.mesh_size);
}

std::vector<Support> supports_of(const Job& job, const mesh::QuadMesh& mesh) {
  std::vector<Support> supports;
  std::set<int> fixed;
  using enum mesh::ChainKind;
  for (const mesh::ChainKind base : {base_left, base_right, base_cut}) {
    for (const int node : nodes_of_chain(mesh, base)) {
      if (!fixed.insert(node).second) continue;
      supports.push_back({node, 0, 0.0});
      supports.push_back({node, 1, 0.0});
    }
  }
  const auto hold = [&](mesh::ChainKind end) {
    for (const int node : nodes_of_chain(mesh, end)) {
      if (fixed.insert(node).second) supports.push_back({node, 0, 0.0});
    }
  };
  if (job.left_end == WallEnd::held) hold(left_end);
  if (job.right_end == WallEnd::held) hold(right_end);
  return supports;
}

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

Eigen::VectorXd loads_of(const Job& job, const LoadShares& shares, const mesh::QuadMesh& mesh) {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * mesh.node_count());
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const LineLoad& line = job.line_loads[i];
    if (shares.line[i] == 0.0) continue;
    add_line(mesh, chain_of(job, LineLoadId{i}), line.x, shares.line[i] * line.characteristic(),
             line.name, load);
  }
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    const PointLoad& point = job.point_loads[i];
    if (shares.point[i] == 0.0) continue;
    add_line(mesh, chain_of(job, PointLoadId{i}), point.span(),
             shares.point[i] * point.characteristic() / point.bearing, point.name, load);
  }
  return load;
}

Eigen::VectorXd loads_of(const Job& job, const mesh::QuadMesh& mesh) {
  const std::vector<double> line(job.line_loads.size(), 1.0);
  const std::vector<double> point(job.point_loads.size(), 1.0);
  return loads_of(job, {line, point}, mesh);
}

Eigen::VectorXd loads_at(const Job& job, const mesh::QuadMesh& mesh, const StageState& state) {
  return loads_of(job, {state.line_load_share, state.point_load_share}, mesh);
}

}  // namespace deadshore::solver
