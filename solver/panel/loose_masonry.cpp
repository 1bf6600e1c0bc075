#include "solver/panel/loose_masonry.h"

#include "mesh/mesh_part.h"
#include "solver/job/cut.h"
#include "solver/panel/newton.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace deadshore::solver {

namespace {

constexpr double loose_movement = 0.1;         // of the reference movement
constexpr double most_loose_area = 1.0 / 3.0;  // of the wall above the soffit
constexpr double most_loose_load = 0.05;       // of the applied loads
constexpr double least_patch = 30.0;         // N, one brick: less is a mesh effect at a crack's tip
constexpr double most_needle_change = 0.05;  // of the largest push
constexpr double least_lean = 0.25;          // of the drop: less is no leaning

double metres(double mm) {
  return mm / 1000.0;
}

Eigen::Vector2d mean_movement(const mesh::QuadMesh& mesh, int quad, const Eigen::VectorXd& u) {
  Eigen::Vector2d mean = Eigen::Vector2d::Zero();
  for (const int node : mesh.nodes_of(quad).first<4>()) mean += 0.25 * u.segment<2>(2 * node);
  return mean;
}

void mark_loose_quads(const mesh::QuadMesh& mesh, const ResidualTrial& trial, double threshold,
                      std::vector<char>& loose) {
  loose.assign(static_cast<std::size_t>(mesh.quad_count()), 0);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const bool moves = mean_movement(mesh, quad, trial.movement).norm() > threshold;
    loose[static_cast<std::size_t>(quad)] = moves ? 1 : 0;
  }
}

/// Whether the masonry of the cut is still in the wall.
bool cut_is_in(const mesh::QuadMesh& mesh) {
  return std::ranges::any_of(mesh.region_of_quad, [&](int region) {
    return mesh.regions[static_cast<std::size_t>(region)].kind == mesh::RegionKind::cut;
  });
}

/// "left" or "right" where a patch at an end that is free moves away from the wall; else empty.
std::string end_that_leans(const Job& job, const LoosePatch& patch,
                           const Eigen::Vector2d& movement) {
  const double least = least_lean * std::abs(movement.y());
  const bool at_left = job.left_end == WallEnd::free && patch.x.from < 1.0;
  const bool at_right = job.right_end == WallEnd::free && patch.x.to > job.wall.length - 1.0;
  if (at_left && -movement.x() > least) return "left";
  if (at_right && movement.x() > least) return "right";
  return "";
}

std::string between_needles(const Job& job, double x) {
  std::string left = "the left jamb";
  std::string right = "the right jamb";
  double left_x = job.wall.cut.left;
  double right_x = job.wall.cut.right;
  for (const Needle& needle : job.needles) {
    if (needle.x <= x && needle.x >= left_x) {
      left = needle.name;
      left_x = needle.x;
    } else if (needle.x > x && needle.x <= right_x) {
      right = needle.name;
      right_x = needle.x;
    }
  }
  return fmt::format(
      "on the soffit between {} and {}: a needle near x = {:.2f} m, or boards propped under it, "
      "would hold it",
      left, right, metres(x));
}

/// What lies under a loose patch, and what would hold it.
std::string describe(const Job& job, const LoosePatch& patch, const Eigen::Vector2d& movement,
                     bool before_cut) {
  const double near = 3.0 * job.analysis.mesh_size;  // a fringe can come apart in thin strips
  for (const mesh::Opening& opening : job.wall.openings) {
    const bool over = patch.y.from > opening.springing() - 1.0 &&
                      patch.y.from < opening.crown() + near && patch.x.from < opening.right() &&
                      patch.x.to > opening.left;
    if (over) return fmt::format("over the head of \"{}\": a lintel would hold it", opening.name);
  }
  const std::string end = end_that_leans(job, patch, movement);
  if (!end.empty()) {
    return fmt::format("at the {} end, which leans away: a hold on that end, or a tie, is needed",
                       end);
  }
  if (before_cut) {
    return fmt::format(
        "before anything is cut, {:.1f} to {:.1f} m above the base: prop it, or take it down, "
        "first",
        metres(patch.y.from), metres(patch.y.to));
  }
  if (patch.y.from > job.wall.cut.soffit + near) {
    return "higher up in the wall: prop it or take it down";
  }
  const double x = patch.x.middle();
  if (x < job.wall.cut.left || x > job.wall.cut.right) {
    return fmt::format(
        "in the {} pier, beside the opening: short props or boards under it would hold it",
        x < job.wall.cut.left ? "left" : "right");
  }
  return between_needles(job, x);
}

/// A loose patch, and whether it is an end of the wall that leans away.
struct JudgedPatch {
  LoosePatch patch;
  bool leans = false;
};

JudgedPatch measure(const Job& job, const PanelModel& model, const PanelLoading& loading,
                    const ResidualTrial& trial, std::span<const int> quads) {
  const mesh::QuadMesh& mesh = model.mesh();
  const mesh::Box box = mesh::box_around(mesh, quads);
  LoosePatch patch;
  patch.x = box.x;
  patch.y = box.y;
  Eigen::Vector2d movement = Eigen::Vector2d::Zero();
  for (const int quad : quads) {
    const PanelMaterial& material = loading.materials[static_cast<std::size_t>(
        mesh.region_of_quad[static_cast<std::size_t>(quad)])];
    const double area = model.geometry().area(quad);
    patch.area += area;
    patch.weight += area * material.thickness * material.unit_weight;
    movement += area * mean_movement(mesh, quad, trial.movement);
  }
  patch.where = describe(job, patch, movement, cut_is_in(mesh));
  return {patch, !end_that_leans(job, patch, movement).empty()};
}

/// Patches of loose quads, heaviest first; unmarks those lighter than a brick.
std::vector<JudgedPatch> patches_of(const Job& job, const PanelModel& model,
                                    const PanelLoading& loading, const ResidualTrial& trial,
                                    std::vector<char>& loose) {
  std::vector<JudgedPatch> patches;
  for (const std::vector<int>& part : mesh::connected_parts(model.mesh(), loose)) {
    const JudgedPatch judged = measure(job, model, loading, trial, part);
    if (judged.patch.weight >= least_patch) {
      patches.push_back(judged);
    } else {
      for (const int quad : part) loose[static_cast<std::size_t>(quad)] = 0;
    }
  }
  std::ranges::sort(patches, std::ranges::greater{},
                    [](const JudgedPatch& judged) { return judged.patch.weight; });
  return patches;
}

/// Part of the applied loads (without weight) on nodes that move by more than `threshold` mm.
double loose_load_share(const PanelModel& model, const PanelLoading& loading,
                        const ResidualTrial& trial, double threshold) {
  const Eigen::VectorXd applied = loading.load - model.weight(loading.materials);
  double all = 0.0;
  double on_loose = 0.0;
  for (int node = 0; node < model.mesh().node_count(); ++node) {
    const double load = -applied(2 * node + 1);
    all += load;
    if (trial.movement.segment<2>(2 * node).norm() > threshold) on_loose += load;
  }
  return all > 0.0 ? on_loose / all : 0.0;
}

/// Names what is missing from the way in which the wall moves in the trial: apart sideways, or
/// down.
std::string what_is_missing(const Job& job, const mesh::QuadMesh& mesh, const ResidualTrial& trial,
                            bool heaviest_leans) {
  double spread = 0.0;
  double drop = 0.0;
  double drop_x = job.wall.cut.span().middle();
  for (int node = 0; node < mesh.node_count(); ++node) {
    const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(node)];
    const double outwards =
        p.x < job.wall.cut.span().middle() ? -trial.movement(2 * node) : trial.movement(2 * node);
    spread = std::max(spread, outwards);
    if (-trial.movement(2 * node + 1) > drop) {
      drop = -trial.movement(2 * node + 1);
      drop_x = p.x;
    }
  }
  const bool free_end = job.left_end == WallEnd::free || job.right_end == WallEnd::free;
  if (heaviest_leans || (free_end && spread > least_lean * drop)) {
    return "it spreads sideways: it needs an end that is held, or a tie, against the arch's thrust";
  }
  return fmt::format("it drops most at x = {:.2f} m: {}", metres(drop_x),
                     cut_is_in(mesh) ? "prop it before anything is cut"
                                     : "it needs a needle or another support there");
}

}  // namespace

ResidualTrial cut_residual(PanelModel& model, const PanelLoading& loading, const Eigen::VectorXd& u,
                           int most_steps) {
  PanelLoading weaker = loading;
  for (PanelMaterial& material : weaker.materials) material.residual *= 0.1;
  Eigen::VectorXd moved = u;
  NewtonOptions options;
  options.most_iterations = most_steps;
  (void)minimise(model, weaker, moved, options);
  ResidualTrial trial;
  trial.movement = moved - u;
  double largest = 0.0;
  for (const ContactBed& bed : loading.beds) {
    if (!stands_on_ground(model.mesh(), bed)) continue;
    largest = std::max(largest, state_of(bed, u).force);
  }
  for (const ContactBed& bed : loading.beds) {
    if (!stands_on_ground(model.mesh(), bed) || largest <= 0.0) continue;
    const double change = state_of(bed, moved).force - state_of(bed, u).force;
    trial.push_change.push_back(change / largest);
  }
  return trial;
}

void judge_trial(const Job& job, const PanelModel& model, const PanelLoading& loading,
                 const ResidualTrial& trial, double reference_movement, PanelResult& result) {
  const mesh::QuadMesh& mesh = model.mesh();
  const double threshold = loose_movement * reference_movement;
  mark_loose_quads(mesh, trial, threshold, result.fields.quad_loose);
  const std::vector<JudgedPatch> patches =
      patches_of(job, model, loading, trial, result.fields.quad_loose);
  result.loose.clear();
  for (const JudgedPatch& judged : patches) result.loose.push_back(judged.patch);

  double area_above = 0.0;
  double loose_area = 0.0;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (mesh::corners_of(mesh, quad)[0].y < job.wall.cut.soffit - 1e-6) continue;
    const double area = model.geometry().area(quad);
    area_above += area;
    if (result.fields.quad_loose[static_cast<std::size_t>(quad)]) loose_area += area;
  }
  double needle_change = 0.0;
  for (const double change : trial.push_change) {
    needle_change = std::max(needle_change, std::abs(change));
  }
  const double load_share = loose_load_share(model, loading, trial, threshold);
  std::string found;
  if (loose_area > most_loose_area * area_above) {
    found = fmt::format("{:.0f}% of the wall above the soffit has nothing to stand on",
                        100.0 * loose_area / area_above);
  } else if (load_share > most_loose_load) {
    found =
        fmt::format("{:.0f}% of the loads stand on masonry that would fall", 100.0 * load_share);
  } else if (needle_change > most_needle_change) {
    found = fmt::format(
        "the needles' loads hang by {:.0f}% on stiffness that cracked masonry does not have",
        100.0 * needle_change);
  }
  if (!found.empty()) {
    const bool heaviest_leans = !patches.empty() && patches.front().leans;
    result.no_equilibrium = found + "; " + what_is_missing(job, mesh, trial, heaviest_leans);
  }
}

}  // namespace deadshore::solver
