#include "solver/limit/stage_bounds.h"

#include "mesh/error.h"
#include "solver/fem/index.h"
#include "solver/fem/job_mesh.h"
#include "solver/limit/bound_analysis.h"
#include "solver/limit/stage_safety.h"

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

namespace deadshore::solver {

namespace {

constexpr double hangs = 0.02;             // of a triangle's weight: it goes
constexpr double most_loose_share = 1e-3;  // of all loads: what must hang is masonry alone
constexpr int most_rounds = 3;

/// Whether the mesher moved an edge of material or a load: such a mesh is of another wall.
bool is_true_to_shape(const mesh::WallMesh& mesh) {
  return std::ranges::none_of(mesh.remarks, [](const std::string& remark) {
    return remark.starts_with("Moved") || remark.starts_with("Put");
  });
}

/// The coarsest mesh of the wall as it is, or the job's own.
mesh::WallMesh mesh_for_bounds(const Job& job) {
  Job coarse = job;
  coarse.analysis.element = mesh::QuadOrder::four_node;
  for (const double size : {400.0, 300.0, 200.0, 150.0, 100.0}) {
    if (size <= job.analysis.mesh_size) break;
    try {
      mesh::WallMesh mesh = whole_mesh_of(coarse, size);
      if (is_true_to_shape(mesh)) return mesh;
    } catch (const mesh::GeometryError&) {
    }
  }
  return whole_mesh_of(coarse, job.analysis.mesh_size);
}

double weight_of(const BoundProblem& problem) {
  double sum = 0.0;
  for (const double weight : problem.weight) sum += weight;
  return sum;
}

double all_loads(const BoundProblem& problem) {
  double sum = weight_of(problem);
  for (const BoundEdge& edge : problem.edges) sum += edge.load * problem.length(edge);
  return sum;
}

/// Whether a load, a support or something other than masonry is on a triangle.
bool stays(const BoundProblem& problem, std::size_t triangle) {
  return problem.is_masonry[triangle] == 0 ||
         std::ranges::any_of(problem.edges_of[triangle], [&](int k) {
           const BoundEdge& edge = problem.edges[index_of(k)];
           return edge.pushed || edge.held[0] || edge.held[1] || edge.load != 0.0;
         });
}

/// Calls `work(neighbour)` for each triangle across an edge of one.
template <class Work>
void across_edges(const BoundProblem& problem, int triangle, const Work& work) {
  for (const int k : problem.edges_of[index_of(triangle)]) {
    const BoundEdge& edge = problem.edges[index_of(k)];
    const int other = edge.triangle[0] == triangle ? edge.triangle[1] : edge.triangle[0];
    if (other >= 0) work(other);
  }
}

/// The weightless fringe goes with what is loose above it.
void add_fringe_of(const BoundProblem& problem, std::vector<char>& goes) {
  const std::vector<char> loose = goes;
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    if (problem.weight[index_of(triangle)] > 0.0 || stays(problem, index_of(triangle))) continue;
    across_edges(problem, triangle, [&](int other) {
      if (loose[index_of(other)] != 0) goes[index_of(triangle)] = 1;
    });
  }
}

/// And so does what is then joined to no support and bears no load.
void add_islands(const BoundProblem& problem, std::vector<char>& goes) {
  std::vector<char> seen = goes;
  for (int start = 0; start < problem.triangle_count(); ++start) {
    if (seen[index_of(start)] != 0) continue;
    std::vector<int> part{start};
    seen[index_of(start)] = 1;
    bool is_needed = false;
    for (std::size_t k = 0; k < part.size(); ++k) {
      is_needed = is_needed || stays(problem, index_of(part[k]));
      across_edges(problem, part[k], [&](int other) {
        if (seen[index_of(other)] != 0) return;
        seen[index_of(other)] = 1;
        part.push_back(other);
      });
    }
    if (is_needed) continue;
    for (const int triangle : part) goes[index_of(triangle)] = 1;
  }
}

/// Triangles that hang and what goes with them.
std::vector<char> going(const BoundProblem& problem, const LooseTriangles& loose) {
  std::vector<char> goes(problem.triangles.size(), 0);
  for (std::size_t i = 0; i < goes.size(); ++i) {
    if (!stays(problem, i) && loose.part[i] > hangs) goes[i] = 1;
  }
  if (std::ranges::count(goes, 1) == 0) return goes;
  add_fringe_of(problem, goes);
  add_islands(problem, goes);
  return goes;
}

mesh::Point place_of_most_work(const BoundProblem& problem, const UpperBound& upper) {
  const auto most = std::ranges::max_element(upper.work);
  if (most == upper.work.end()) return {};
  const auto& t = problem.triangles[static_cast<std::size_t>(most - upper.work.begin())];
  mesh::Point middle;
  for (const int node : t) {
    middle.x += problem.nodes[index_of(node)].x / 3.0;
    middle.y += problem.nodes[index_of(node)].y / 3.0;
  }
  return middle;
}

}  // namespace

StageBounds stage_bounds(const Job& job, const StageState& state, const BoundSizes& sizes) {
  const mesh::WallMesh whole = mesh_for_bounds(job);
  BoundProblem problem =
      wall_bound_problem(job, state, part_at(whole.quads, state).quads, sizes);
  const double before = weight_of(problem);
  StageBounds bounds;
  bounds.fringe = let_fringe_go(problem);
  LowerBound lower = lower_bound(problem, most_factor);
  bounds.iterations += lower.iterations;
  for (int round = 0; round < most_rounds && lower.factor < 1.0; ++round) {
    const LooseTriangles loose = loose_triangles(problem);
    bounds.iterations += loose.iterations;
    if (loose.load > most_loose_share * all_loads(problem)) break;  // no equilibrium at all
    const std::vector<char> goes = going(problem, loose);
    if (std::ranges::count(goes, 1) == 0) break;
    BoundProblem rest = without(problem, goes);
    const double fringe = let_fringe_go(rest);
    const LowerBound of_rest = lower_bound(rest, most_factor);
    bounds.iterations += of_rest.iterations;
    if (!(of_rest.factor > lower.factor)) break;
    problem = std::move(rest);
    lower = of_rest;
    bounds.fringe += fringe;
  }
  bounds.let_go = before - weight_of(problem);
  bounds.lower = lower.factor;
  bounds.tension = lower.tension;
  bounds.out_of_balance = lower.out_of_balance;
  const UpperBound upper = upper_bound(problem, most_factor);
  bounds.iterations += upper.iterations;
  bounds.upper = upper.factor;
  bounds.gives_way = place_of_most_work(problem, upper);
  bounds.velocity = upper.velocity;
  bounds.problem = std::move(problem);
  return bounds;
}

std::vector<double> velocities_at(const StageBounds& bounds, std::span<const mesh::Point> points) {
  const BoundProblem& problem = bounds.problem;
  std::vector<std::size_t> by_x(points.size());
  std::iota(by_x.begin(), by_x.end(), std::size_t{0});
  std::ranges::sort(by_x, {}, [&](std::size_t i) { return points[i].x; });
  std::vector<double> found(2 * points.size(), 0.0);
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const auto& t = problem.triangles[index_of(triangle)];
    const mesh::Point a = problem.nodes[index_of(t[0])];
    const mesh::Point b = problem.nodes[index_of(t[1])];
    const mesh::Point c = problem.nodes[index_of(t[2])];
    const double twice = 2.0 * problem.area(triangle);
    auto next = std::ranges::lower_bound(by_x, std::min({a.x, b.x, c.x}) - mesh::same_place, {},
                                         [&](std::size_t i) { return points[i].x; });
    for (; next != by_x.end(); ++next) {
      const mesh::Point p = points[*next];
      if (p.x > std::max({a.x, b.x, c.x}) + mesh::same_place) break;
      const double at_b = ((p.x - a.x) * (c.y - a.y) - (c.x - a.x) * (p.y - a.y)) / twice;
      const double at_c = ((b.x - a.x) * (p.y - a.y) - (p.x - a.x) * (b.y - a.y)) / twice;
      if (std::min({at_b, at_c, 1.0 - at_b - at_c}) < -1e-6) continue;
      const auto at = [&](int node) { return bounds.velocity[index_of(node)]; };
      found[2 * *next] = (1.0 - at_b - at_c) * at(t[0]).x + at_b * at(t[1]).x + at_c * at(t[2]).x;
      found[2 * *next + 1] =
          (1.0 - at_b - at_c) * at(t[0]).y + at_b * at(t[1]).y + at_c * at(t[2]).y;
    }
  }
  return found;
}

}  // namespace deadshore::solver
