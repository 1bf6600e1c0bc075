#include "solver/limit/bound_wall.h"

#include "solver/fem/index.h"
#include "solver/fem/job_mesh.h"
#include "solver/job/error.h"
#include "solver/limit/limit_problem.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>

namespace deadshore::solver {

namespace {

constexpr mesh::Interval everywhere{-std::numeric_limits<double>::infinity(),
                                    std::numeric_limits<double>::infinity()};
constexpr double short_load = 1000.0;  // mm: its ends are concentrated

/// A stretch of a chain that something pushes up or loads.
struct Stretch {
  mesh::Chain chain;
  mesh::Interval x;
  double intensity = 0.0;  ///< N/mm downwards; of a support 0
  std::string load = {};   ///< its name; empty: a support
};

std::vector<Stretch> pushing_stretches(const Job& job, const StageState& state) {
  const mesh::Chain soffit{mesh::ChainKind::soffit};
  std::vector<Stretch> stretches;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (is_in(state.needles[i])) stretches.push_back({soffit, job.needles[i].bearing()});
  }
  if (state.packed_on) {
    stretches.push_back({soffit, everywhere});
    stretches.push_back({{mesh::ChainKind::block_top, pockets_group}, everywhere});
  }
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    const DeadShore& shore = job.dead_shores[i];
    if (!state.shore_tight[i] || !shore.joist_ends) continue;
    stretches.push_back(
        {chain_of(job, shore.carries), job.line_loads[index_of(shore.carries)].x});
  }
  return stretches;
}

std::vector<Stretch> loaded_stretches(const Job& job, const StageState& state) {
  std::vector<Stretch> stretches;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const LineLoad& load = job.line_loads[i];
    const double share = state.line_load_share[i];
    if (share == 0.0) continue;
    stretches.push_back(
        {chain_of(job, LineLoadId{i}), load.x, share * load.characteristic(), load.name});
  }
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) {
    const PointLoad& load = job.point_loads[i];
    const double share = state.point_load_share[i];
    if (share == 0.0) continue;
    stretches.push_back({chain_of(job, PointLoadId{i}), load.span(),
                         share * load.characteristic() / load.bearing, load.name});
  }
  return stretches;
}

std::optional<std::size_t> place_of(const mesh::QuadMesh& quads, mesh::Chain chain) {
  const auto found = std::ranges::find(quads.chains, chain, &mesh::ChainSides::chain);
  if (found == quads.chains.end()) return std::nullopt;
  return static_cast<std::size_t>(found - quads.chains.begin());
}

double distance(mesh::Point p, mesh::Point from, mesh::Point to) {
  const double dx = to.x - from.x;
  const double dy = to.y - from.y;
  const double squared = dx * dx + dy * dy;
  const double along =
      squared > 0.0
          ? std::clamp(((p.x - from.x) * dx + (p.y - from.y) * dy) / squared, 0.0, 1.0)
          : 0.0;
  return std::hypot(p.x - from.x - along * dx, p.y - from.y - along * dy);
}

/// A place or an edge that triangles are finer about.
struct Feature {
  mesh::Point from;
  mesh::Point to;
  double size = 0.0;
};

class FeatureList {
 public:
  FeatureList(const TriangleMesh& mesh, const mesh::QuadMesh& quads, const BoundSizes& sizes)
      : mesh_(mesh), quads_(quads), sizes_(sizes) {}

  /// Ends of a stretch where it lies on its chain.
  void add_ends(const Stretch& stretch) {
    const auto chain = place_of(quads_, stretch.chain);
    if (!chain || !std::isfinite(stretch.x.length())) return;
    for (const auto& [edge, chains] : mesh_.chains_on) {
      if (std::ranges::find(chains, *chain) == chains.end()) continue;
      for (const int node : {edge.first, edge.second}) {
        const mesh::Point p = mesh_.nodes[index_of(node)];
        const double off = std::min(std::abs(p.x - stretch.x.from), std::abs(p.x - stretch.x.to));
        if (off < 10.0 * mesh::same_place) features_.push_back({p, p, sizes_.at_ends});
      }
    }
  }

  /// Edges of a chain and the ends of it.
  void add_soffit(std::size_t chain) {
    for (const auto& [edge, chains] : mesh_.chains_on) {
      if (std::ranges::find(chains, chain) == chains.end()) continue;
      features_.push_back({mesh_.nodes[index_of(edge.first)], mesh_.nodes[index_of(edge.second)],
                           sizes_.at_soffits});
    }
  }

  [[nodiscard]] double size_at(mesh::Point p) const {
    double size = std::numeric_limits<double>::infinity();
    for (const Feature& feature : features_) {
      size = std::min(size, feature.size + 0.5 * distance(p, feature.from, feature.to));
    }
    return size;
  }

 private:
  const TriangleMesh& mesh_;
  const mesh::QuadMesh& quads_;
  const BoundSizes& sizes_;
  std::vector<Feature> features_;
};

TriangleMesh wall_triangles(const mesh::QuadMesh& quads, const std::vector<Stretch>& pushing,
                            const std::vector<Stretch>& loads, const BoundSizes& sizes) {
  TriangleMesh mesh = triangles_of(quads);
  for (const auto* stretches : {&pushing, &loads}) {
    for (const Stretch& stretch : *stretches) {
      const auto chain = place_of(quads, stretch.chain);
      if (!chain || !std::isfinite(stretch.x.length())) continue;
      split_chain_at(mesh, *chain, stretch.x.from);
      split_chain_at(mesh, *chain, stretch.x.to);
    }
  }
  FeatureList features(mesh, quads, sizes);
  for (const Stretch& stretch : pushing) features.add_ends(stretch);
  for (const Stretch& stretch : loads) {
    if (stretch.x.length() < short_load) features.add_ends(stretch);
  }
  for (std::size_t chain = 0; chain < quads.chains.size(); ++chain) {
    using enum mesh::ChainKind;
    const mesh::ChainKind kind = quads.chains[chain].chain.kind;
    if (kind == soffit || kind == opening_head || kind == block_top) features.add_soffit(chain);
  }
  const SizeAt size = [&](mesh::Point p) { return features.size_at(p); };
  refine(mesh, size, sizes.most_triangles);
  return mesh;
}

void hold_ends(const Job& job, const mesh::QuadMesh& quads, const TriangleMesh& mesh,
               BoundProblem& problem) {
  const auto hold_chain = [&](mesh::ChainKind kind, std::array<bool, 2> held) {
    if (const auto chain = place_of(quads, {kind})) hold(problem, mesh, *chain, held);
  };
  using enum mesh::ChainKind;
  for (const mesh::ChainKind base : {base_left, base_right, base_cut}) {
    hold_chain(base, {true, true});
  }
  if (job.left_end == WallEnd::held) hold_chain(left_end, {true, false});
  if (job.right_end == WallEnd::held) hold_chain(right_end, {true, false});
}

}  // namespace

BoundProblem wall_bound_problem(const Job& job, const StageState& state,
                                const mesh::QuadMesh& quads, const BoundSizes& sizes) {
  const std::vector<Stretch> pushing = pushing_stretches(job, state);
  const std::vector<Stretch> loads = loaded_stretches(job, state);
  const TriangleMesh mesh = wall_triangles(quads, pushing, loads, sizes);
  BoundProblem problem = plain_bound_problem(
      mesh, {job.thickness, job.masonry.compressive_strength, job.masonry.unit_weight});
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const RegionMaterial material = material_of(job, state, quads.region_of(mesh.quad_of[i]));
    problem.thickness[i] = material.thickness;
    problem.compression[i] = material.compression;
    problem.tension[i] = material.tension;
    problem.is_masonry[i] = material.is_masonry ? 1 : 0;
    problem.weight[i] =
        material.unit_weight * material.thickness * problem.area(static_cast<int>(i));
  }
  hold_ends(job, quads, mesh, problem);
  for (const Stretch& stretch : pushing) {
    if (const auto chain = place_of(quads, stretch.chain)) {
      push(problem, mesh, *chain, stretch.x);
    }
  }
  for (const Stretch& stretch : loads) {
    const auto chain = place_of(quads, stretch.chain);
    const double due = stretch.intensity * stretch.x.length();
    const double on = chain ? load(problem, mesh, *chain, stretch.x, stretch.intensity) : 0.0;
    if (std::abs(on - due) > 1e-6 * std::abs(due)) {
      throw SolveError(fmt::format("load \"{}\" has masonry under {:.0f} mm of its {:.0f} mm",
                                   stretch.load, on / stretch.intensity, stretch.x.length()));
    }
  }
  return problem;
}

}  // namespace deadshore::solver
