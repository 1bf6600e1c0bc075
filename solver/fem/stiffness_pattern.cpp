#include "solver/fem/stiffness_pattern.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <map>

namespace deadshore::solver {

namespace {

/// Elements that are assembled colour by colour before the next: few enough for what they write to
/// stay in the cache, a quarter less time than with colours of the whole mesh.
constexpr int stretch = 2048;

/// The nodes that share an element with each node (itself included), sorted, as compressed rows.
struct NodeGraph {
  std::vector<int> start;
  std::vector<int> neighbour;
};

NodeGraph graph_of(const mesh::QuadMesh& mesh, std::span<const std::vector<int>> couplings) {
  const std::size_t per_quad = static_cast<std::size_t>(mesh.nodes_per_quad());
  std::vector<int> quad_start(mesh.nodes.size() + 1, 0);
  for (const int node : mesh.connectivity) ++quad_start[static_cast<std::size_t>(node) + 1];
  for (std::size_t i = 1; i < quad_start.size(); ++i) quad_start[i] += quad_start[i - 1];
  std::vector<int> quads(mesh.connectivity.size());
  std::vector<int> next(quad_start.begin(), quad_start.end() - 1);
  for (std::size_t i = 0; i < mesh.connectivity.size(); ++i) {
    int& place = next[static_cast<std::size_t>(mesh.connectivity[i])];
    quads[static_cast<std::size_t>(place++)] = static_cast<int>(i / per_quad);
  }

  std::map<std::size_t, std::vector<int>> coupled;
  std::size_t node_count = mesh.nodes.size();
  for (const std::vector<int>& group : couplings) {
    for (const int node : group) {
      const std::size_t n = static_cast<std::size_t>(node);
      coupled[n].insert(coupled[n].end(), group.begin(), group.end());
      node_count = std::max(node_count, n + 1);
    }
  }

  NodeGraph graph;
  graph.start.push_back(0);
  std::vector<int> around;
  for (std::size_t node = 0; node < node_count; ++node) {
    around.clear();
    for (int q = node < mesh.nodes.size() ? quad_start[node] : 0;
         node < mesh.nodes.size() && q < quad_start[node + 1]; ++q) {
      const auto nodes = mesh.nodes_of(quads[static_cast<std::size_t>(q)]);
      around.insert(around.end(), nodes.begin(), nodes.end());
    }
    if (const auto more = coupled.find(node); more != coupled.end()) {
      around.insert(around.end(), more->second.begin(), more->second.end());
    }
    std::sort(around.begin(), around.end());
    around.erase(std::unique(around.begin(), around.end()), around.end());
    graph.neighbour.insert(graph.neighbour.end(), around.begin(), around.end());
    graph.start.push_back(static_cast<int>(graph.neighbour.size()));
  }
  return graph;
}

SparseStiffness pattern_of(const mesh::QuadMesh& mesh, const EquationMap& equations,
                           std::span<const std::vector<int>> couplings) {
  const NodeGraph graph = graph_of(mesh, couplings);
  std::vector<std::vector<int>> rows(static_cast<std::size_t>(equations.count()));
  for (std::size_t n = 0; n + 1 < graph.start.size(); ++n) {
    const int node = static_cast<int>(n);
    for (int c = 0; c < 2; ++c) {
      const int column = equations.equation(node, c);
      if (column < 0) continue;
      std::vector<int>& below = rows[static_cast<std::size_t>(column)];
      for (int k = graph.start[n]; k < graph.start[n + 1]; ++k) {
        for (int d = 0; d < 2; ++d) {
          const int row = equations.equation(graph.neighbour[static_cast<std::size_t>(k)], d);
          if (row >= column) below.push_back(row);
        }
      }
      std::sort(below.begin(), below.end());
    }
  }
  SparseStiffness matrix(equations.count(), equations.count());
  std::size_t entries = 0;
  for (const auto& below : rows) entries += below.size();
  matrix.resizeNonZeros(static_cast<Eigen::Index>(entries));
  int place = 0;
  for (int column = 0; column < equations.count(); ++column) {
    matrix.outerIndexPtr()[column] = place;
    for (const int row : rows[static_cast<std::size_t>(column)]) {
      matrix.innerIndexPtr()[place++] = row;
    }
  }
  matrix.outerIndexPtr()[equations.count()] = place;
  std::fill_n(matrix.valuePtr(), place, 0.0);
  return matrix;
}

/// Greedy colouring of one stretch of elements after the other; 64 colours are far more than a mesh
/// of quads needs.
std::vector<std::vector<int>> colours_of(const mesh::QuadMesh& mesh) {
  std::vector<std::uint64_t> used(mesh.nodes.size(), 0);  // colours, in this stretch
  std::vector<std::vector<int>> colours;
  for (int begin = 0; begin < mesh.quad_count(); begin += stretch) {
    const int end = std::min(begin + stretch, mesh.quad_count());
    const std::size_t first = colours.size();
    for (int quad = begin; quad < end; ++quad) {
      std::uint64_t taken = 0;
      for (const int node : mesh.nodes_of(quad)) taken |= used[static_cast<std::size_t>(node)];
      const std::size_t colour = static_cast<std::size_t>(std::countr_one(taken));
      for (const int node : mesh.nodes_of(quad)) {
        used[static_cast<std::size_t>(node)] |= std::uint64_t{1} << colour;
      }
      if (first + colour >= colours.size()) colours.resize(first + colour + 1);
      colours[first + colour].push_back(quad);
    }
    for (int quad = begin; quad < end; ++quad) {
      for (const int node : mesh.nodes_of(quad)) used[static_cast<std::size_t>(node)] = 0;
    }
  }
  return colours;
}

}  // namespace

StiffnessPattern::StiffnessPattern(const mesh::QuadMesh& mesh, const EquationMap& equations,
                                   std::span<const std::vector<int>> couplings)
    : empty_(pattern_of(mesh, equations, couplings)), colours_(colours_of(mesh)) {
  const int size = 2 * mesh.nodes_per_quad();
  places_per_quad_ = size * (size + 1) / 2;
  places_.reserve(static_cast<std::size_t>(mesh.quad_count()) *
                  static_cast<std::size_t>(places_per_quad_));
  std::vector<int> numbers(static_cast<std::size_t>(size));
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto nodes = mesh.nodes_of(quad);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      numbers[i] = equations.equation(nodes[i / 2], static_cast<int>(i % 2));
    }
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      for (std::size_t j = 0; j <= i; ++j) places_.push_back(place(numbers[i], numbers[j]));
    }
  }
}

int StiffnessPattern::place(int row, int column) const {
  if (row < 0 || column < 0) return -1;
  if (row < column) std::swap(row, column);
  const int* first = empty_.innerIndexPtr() + empty_.outerIndexPtr()[column];
  const int* last = empty_.innerIndexPtr() + empty_.outerIndexPtr()[column + 1];
  const int* found = std::lower_bound(first, last, row);
  return static_cast<int>(found - empty_.innerIndexPtr());
}

}  // namespace deadshore::solver
