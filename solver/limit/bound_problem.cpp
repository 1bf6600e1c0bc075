#include "solver/limit/bound_problem.h"

#include "solver/fem/index.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double level_enough = 1e-9;  // of an edge's length

/// Edges of all triangles, each once.
void find_edges(BoundProblem& problem) {
  std::map<EdgeNodes, int> number;
  problem.edges.clear();
  problem.edges_of.clear();
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const auto& t = problem.triangles[index_of(triangle)];
    std::array<int, 3> own{};
    for (std::size_t i = 0; i < 3; ++i) {
      const EdgeNodes nodes = edge_between(t[i], t[(i + 1) % 3]);
      const auto [found, is_new] = number.try_emplace(nodes, static_cast<int>(problem.edges.size()));
      if (is_new) problem.edges.push_back({.nodes = nodes});
      own[i] = found->second;
      BoundEdge& edge = problem.edges[index_of(found->second)];
      edge.triangle[is_new ? 0 : 1] = triangle;
    }
    problem.edges_of.push_back(own);
  }
}

/// Calls `work(edge)` for each edge of a chain.
template <class Work>
void along_chain(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain,
                 const Work& work) {
  for (BoundEdge& edge : problem.edges) {
    const auto found = mesh.chains_on.find(edge.nodes);
    if (found == mesh.chains_on.end()) continue;
    if (std::ranges::find(found->second, chain) != found->second.end()) work(edge);
  }
}

mesh::Interval span_of(const BoundProblem& problem, const BoundEdge& edge) {
  const double a = problem.nodes[index_of(edge.nodes.first)].x;
  const double b = problem.nodes[index_of(edge.nodes.second)].x;
  return {std::min(a, b), std::max(a, b)};
}

bool lies_in(mesh::Interval part, mesh::Interval whole) {
  constexpr double near = 10.0 * mesh::same_place;
  return whole.from - near <= part.from && part.to <= whole.to + near;
}

/// Whether masonry's weight hangs over the edge of a triangle: its outward normal looks down.
bool faces_down(const BoundProblem& problem, int triangle, std::size_t i) {
  const auto& t = problem.triangles[index_of(triangle)];
  const mesh::Point a = problem.nodes[index_of(t[i])];
  const mesh::Point b = problem.nodes[index_of(t[(i + 1) % 3])];
  return b.x - a.x > level_enough * std::hypot(b.x - a.x, b.y - a.y);
}

}  // namespace

double BoundProblem::area(int triangle) const {
  const auto& t = triangles[index_of(triangle)];
  const mesh::Point a = nodes[index_of(t[0])];
  const mesh::Point b = nodes[index_of(t[1])];
  const mesh::Point c = nodes[index_of(t[2])];
  return 0.5 * ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y));
}

double BoundProblem::length(const BoundEdge& edge) const {
  const mesh::Point a = nodes[index_of(edge.nodes.first)];
  const mesh::Point b = nodes[index_of(edge.nodes.second)];
  return std::hypot(b.x - a.x, b.y - a.y);
}

BoundProblem plain_bound_problem(const TriangleMesh& mesh, const PlainMasonry& of) {
  BoundProblem problem;
  problem.nodes = mesh.nodes;
  problem.triangles = mesh.triangles;
  const std::size_t count = mesh.triangles.size();
  problem.thickness.assign(count, of.thickness);
  problem.compression.assign(count, of.strength);
  problem.tension.assign(count, 0.0);
  problem.is_masonry.assign(count, 1);
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    problem.weight.push_back(of.unit_weight * of.thickness * problem.area(triangle));
  }
  problem.masonry_strength = of.strength;
  find_edges(problem);
  return problem;
}

void hold(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain,
          std::array<bool, 2> held) {
  along_chain(problem, mesh, chain, [&](BoundEdge& edge) {
    for (std::size_t c = 0; c < 2; ++c) edge.held[c] = edge.held[c] || held[c];
  });
}

void push(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain, mesh::Interval x) {
  along_chain(problem, mesh, chain, [&](BoundEdge& edge) {
    if (lies_in(span_of(problem, edge), x)) edge.pushed = true;
  });
}

double load(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain, mesh::Interval x,
            double intensity) {
  double sum = 0.0;
  along_chain(problem, mesh, chain, [&](BoundEdge& edge) {
    const mesh::Interval span = span_of(problem, edge);
    if (!lies_in(span, x)) return;
    edge.load += intensity * span.length() / problem.length(edge);
    sum += intensity * span.length();
  });
  return sum;
}

BoundProblem without(const BoundProblem& problem, const std::vector<char>& goes) {
  BoundProblem rest;
  rest.nodes = problem.nodes;
  rest.masonry_strength = problem.masonry_strength;
  for (std::size_t i = 0; i < problem.triangles.size(); ++i) {
    if (goes[i] != 0) continue;
    rest.triangles.push_back(problem.triangles[i]);
    rest.thickness.push_back(problem.thickness[i]);
    rest.compression.push_back(problem.compression[i]);
    rest.tension.push_back(problem.tension[i]);
    rest.is_masonry.push_back(problem.is_masonry[i]);
    rest.weight.push_back(problem.weight[i]);
  }
  find_edges(rest);
  std::map<EdgeNodes, const BoundEdge*> before;
  for (const BoundEdge& edge : problem.edges) before[edge.nodes] = &edge;
  for (BoundEdge& edge : rest.edges) {
    const BoundEdge& old = *before.at(edge.nodes);
    edge.held = old.held;
    edge.pushed = old.pushed;
    edge.load = old.load;
  }
  return rest;
}

double let_fringe_go(BoundProblem& problem) {
  double sum = 0.0;
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    if (problem.is_masonry[index_of(triangle)] == 0) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      const BoundEdge& edge = problem.edges[index_of(problem.edges_of[index_of(triangle)][i])];
      const bool is_free = edge.is_boundary() && !edge.pushed && !edge.held[1];
      if (!is_free || !faces_down(problem, triangle, i)) continue;
      sum += problem.weight[index_of(triangle)];
      problem.weight[index_of(triangle)] = 0.0;
    }
  }
  return sum;
}

}  // namespace deadshore::solver
