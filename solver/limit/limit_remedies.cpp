#include "solver/limit/limit_remedies.h"

#include "solver/fem/index.h"
#include "solver/fem/job_mesh.h"
#include "solver/limit/limit_analysis.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

namespace deadshore::solver {

namespace {

constexpr double clear_drop = 1.0 / 3.0;  // of the largest velocity
constexpr double usual_bearing = 150.0;   // mm, of a needle where the job has none

struct Drop {
  double x = 0.0;
  double velocity = 0.0;
};

Drop largest_drop(const LimitProblem& problem, mesh::Chain chain,
                  std::span<const double> mechanism) {
  Drop drop;
  for (const int node : nodes_of_chain(problem.quads, chain)) {
    const double velocity = -mechanism[index_of(2 * node + 1)];
    if (velocity > drop.velocity) drop = {problem.quads.nodes[index_of(node)].x, velocity};
  }
  return drop;
}

/// Supports next to `x` on the soffit: needles that are in, or the jambs.
void find_neighbours(const Job& job, const StageState& state, LettingGo& letting_go) {
  std::string left = "the left jamb";
  std::string right = "the right jamb";
  letting_go.between = job.wall.cut.span();
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Needle& needle = job.needles[i];
    if (!is_in(state.needles[i])) continue;
    if (needle.x <= letting_go.soffit_x && needle.x > letting_go.between.from) {
      letting_go.between.from = needle.x;
      left = needle.name;
    } else if (needle.x > letting_go.soffit_x && needle.x < letting_go.between.to) {
      letting_go.between.to = needle.x;
      right = needle.name;
    }
  }
  letting_go.between_names = left + " and " + right;
}

/// A change to the problem, and what it is called.
struct Remedy {
  std::string what;
  std::function<void(LimitProblem&)> apply;
};

Remedy held_end(mesh::ChainKind chain, const char* what) {
  return {what, [chain](LimitProblem& problem) {
            for (const int node : nodes_of_chain(problem.quads, chain)) {
              problem.supports.push_back({node, 0, 0.0});
            }
          }};
}

Remedy push_from_below(std::string what, mesh::Chain chain, mesh::Interval x) {
  return {std::move(what), [chain, x](LimitProblem& problem) { add_pushing(problem, chain, x); }};
}

std::vector<Remedy> candidates(const Job& job, const LimitProblem& problem,
                               const LettingGo& letting_go) {
  const mesh::Chain over_cut{mesh::ChainKind::soffit};
  std::vector<Remedy> remedies;
  if (letting_go.soffit_drops) {
    remedies.push_back(
        push_from_below(fmt::format("boards under the soffit between {}", letting_go.between_names),
                        over_cut, letting_go.between));
    const double bearing = job.needles.empty() ? usual_bearing : job.needles[0].bearing_width;
    const mesh::Interval x{letting_go.soffit_x - 0.5 * bearing,
                           letting_go.soffit_x + 0.5 * bearing};
    remedies.push_back(push_from_below(
        fmt::format("a needle at x = {:.2f} m", letting_go.soffit_x / 1000.0), over_cut, x));
  }
  for (const std::size_t opening : letting_go.heads) {
    const mesh::Opening& hole = job.wall.openings[opening];
    remedies.push_back(push_from_below(fmt::format("a lintel or boards over \"{}\"", hole.name),
                                       {mesh::ChainKind::opening_head, opening}, hole.span()));
  }
  using enum mesh::ChainKind;
  const auto is_there = [&](mesh::ChainKind end) { return !problem.quads.sides_of(end).empty(); };
  if (job.left_end == WallEnd::free && is_there(left_end)) {
    remedies.push_back(held_end(left_end, "holding its left end against moving sideways"));
  }
  if (job.right_end == WallEnd::free && is_there(right_end)) {
    remedies.push_back(held_end(right_end, "holding its right end against moving sideways"));
  }
  return remedies;
}

bool stands_with(const LimitProblem& problem, std::span<const Remedy> remedies, int& iterations) {
  LimitProblem held = problem;
  for (const Remedy& remedy : remedies) remedy.apply(held);
  LimitAnalysis analysis(held);
  const bool stands = analysis.stands();
  iterations += analysis.iterations();
  return stands;
}

}  // namespace

LettingGo read_mechanism(const Job& job, const StageState& state, const LimitProblem& problem,
                         std::span<const double> mechanism) {
  LettingGo letting_go;
  double apart = 0.0;
  double drop = 0.0;
  const double middle = job.wall.cut.span().middle();
  for (int node = 0; node < problem.quads.node_count(); ++node) {
    const double outwards = problem.quads.nodes[index_of(node)].x < middle
                                ? -mechanism[index_of(2 * node)]
                                : mechanism[index_of(2 * node)];
    apart = std::max(apart, outwards);
    if (-mechanism[index_of(2 * node + 1)] <= drop) continue;
    drop = -mechanism[index_of(2 * node + 1)];
    letting_go.lowest = problem.quads.nodes[index_of(node)];
  }
  letting_go.spreads = apart > 0.25 * drop;
  const Drop soffit = largest_drop(problem, {mesh::ChainKind::soffit}, mechanism);
  letting_go.soffit_drops = state.cut_out && soffit.velocity > clear_drop * drop;
  letting_go.soffit_x = soffit.x;
  find_neighbours(job, state, letting_go);
  for (std::size_t i = 0; i < job.wall.openings.size(); ++i) {
    const bool has_lintel =
        std::ranges::count(job.wall.lintels, i, &mesh::LintelShape::opening) > 0;
    const double velocity =
        largest_drop(problem, {mesh::ChainKind::opening_head, i}, mechanism).velocity;
    if (!has_lintel && velocity > clear_drop * drop) letting_go.heads.push_back(i);
  }
  return letting_go;
}

Remedies remedies_for(const Job& job, const LimitProblem& problem, const LettingGo& letting_go) {
  Remedies result;
  const std::vector<Remedy> remedies = candidates(job, problem, letting_go);
  std::vector<std::string> names;
  for (const Remedy& remedy : remedies) {
    names.push_back(remedy.what);
    if (!stands_with(problem, {&remedy, 1}, result.iterations)) continue;
    result.alone = remedy.what;
    return result;
  }
  if (remedies.size() > 1 && stands_with(problem, remedies, result.iterations)) {
    result.together = fmt::format("{}", fmt::join(names, "; "));
  }
  return result;
}

}  // namespace deadshore::solver
