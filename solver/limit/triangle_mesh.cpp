#include "solver/limit/triangle_mesh.h"

#include "solver/fem/index.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

double squared_length(const TriangleMesh& mesh, EdgeNodes edge) {
  const mesh::Point a = mesh.nodes[index_of(edge.first)];
  const mesh::Point b = mesh.nodes[index_of(edge.second)];
  return (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y);
}

/// A mesh with its neighbours, so that edges can be cut.
class EdgeCutter {
 public:
  explicit EdgeCutter(TriangleMesh& mesh) : mesh_(mesh) {
    for (int triangle = 0; triangle < mesh.triangle_count(); ++triangle) enter(triangle);
  }

  /// Longest edge of a triangle; of edges as long as each other the one with the least nodes, so
  /// that neighbours agree.
  [[nodiscard]] EdgeNodes longest_of(int triangle) const {
    const auto& t = mesh_.triangles[index_of(triangle)];
    EdgeNodes longest = edge_between(t[0], t[1]);
    for (const EdgeNodes edge : {edge_between(t[1], t[2]), edge_between(t[2], t[0])}) {
      const double more = squared_length(mesh_, edge) - squared_length(mesh_, longest);
      const double same = 1e-9 * squared_length(mesh_, longest);
      if (more > same || (more > -same && edge < longest)) longest = edge;
    }
    return longest;
  }

  /// Cuts a triangle across its longest edge, after whichever neighbours have a longer one.
  void cut_longest(int triangle) {
    const EdgeNodes edge = longest_of(triangle);
    for (;;) {
      const int other = beyond(triangle, edge);
      if (other < 0 || longest_of(other) == edge) break;
      cut_longest(other);
    }
    cut(edge, {0.5 * (at(edge.first).x + at(edge.second).x),
               0.5 * (at(edge.first).y + at(edge.second).y)});
  }

  /// Puts a node on an edge and joins it to the corner opposite in each triangle.
  void cut(EdgeNodes edge, mesh::Point at) {
    const int node = static_cast<int>(mesh_.nodes.size());
    mesh_.nodes.push_back(at);
    const std::array<int, 2> both = beside_.at(edge);
    for (const int triangle : both) {
      if (triangle >= 0) cut_triangle(triangle, edge, node);
    }
    beside_.erase(edge);
    if (const auto found = mesh_.chains_on.find(edge); found != mesh_.chains_on.end()) {
      const std::vector<std::size_t> chains = found->second;
      mesh_.chains_on.erase(found);
      mesh_.chains_on[edge_between(edge.first, node)] = chains;
      mesh_.chains_on[edge_between(edge.second, node)] = chains;
    }
  }

 private:
  [[nodiscard]] mesh::Point at(int node) const { return mesh_.nodes[index_of(node)]; }

  [[nodiscard]] int beyond(int triangle, EdgeNodes edge) const {
    const std::array<int, 2>& both = beside_.at(edge);
    return both[0] == triangle ? both[1] : both[0];
  }

  void enter(int triangle) {
    const auto& t = mesh_.triangles[index_of(triangle)];
    for (int i = 0; i < 3; ++i) {
      const EdgeNodes edge = edge_between(t[index_of(i)], t[index_of((i + 1) % 3)]);
      auto [found, is_new] = beside_.try_emplace(edge, std::array<int, 2>{triangle, -1});
      if (!is_new) (found->second[0] < 0 ? found->second[0] : found->second[1]) = triangle;
    }
  }

  void leave(int triangle) {
    const auto& t = mesh_.triangles[index_of(triangle)];
    for (int i = 0; i < 3; ++i) {
      std::array<int, 2>& both =
          beside_.at(edge_between(t[index_of(i)], t[index_of((i + 1) % 3)]));
      (both[0] == triangle ? both[0] : both[1]) = -1;
    }
  }

  void cut_triangle(int triangle, EdgeNodes edge, int node) {
    leave(triangle);
    const std::array<int, 3> t = mesh_.triangles[index_of(triangle)];
    std::array<int, 3> first = t;
    std::array<int, 3> second = t;
    std::replace(first.begin(), first.end(), edge.second, node);
    std::replace(second.begin(), second.end(), edge.first, node);
    mesh_.triangles[index_of(triangle)] = first;
    mesh_.triangles.push_back(second);
    mesh_.quad_of.push_back(mesh_.quad_of[index_of(triangle)]);
    enter(triangle);
    enter(mesh_.triangle_count() - 1);
  }

  TriangleMesh& mesh_;
  std::map<EdgeNodes, std::array<int, 2>> beside_;
};

}  // namespace

TriangleMesh triangles_of(const mesh::QuadMesh& quads) {
  TriangleMesh mesh;
  std::vector<int> number(quads.nodes.size(), -1);
  const auto number_of = [&](int node) {
    int& known = number[index_of(node)];
    if (known < 0) {
      known = static_cast<int>(mesh.nodes.size());
      mesh.nodes.push_back(quads.nodes[index_of(node)]);
    }
    return known;
  };
  for (int quad = 0; quad < quads.quad_count(); ++quad) {
    mesh::Point middle;
    std::array<int, 4> corners{};
    for (std::size_t i = 0; i < 4; ++i) {
      const int node = quads.nodes_of(quad)[i];
      corners[i] = number_of(node);
      middle.x += 0.25 * quads.nodes[index_of(node)].x;
      middle.y += 0.25 * quads.nodes[index_of(node)].y;
    }
    const int centre = static_cast<int>(mesh.nodes.size());
    mesh.nodes.push_back(middle);
    for (std::size_t i = 0; i < 4; ++i) {
      mesh.triangles.push_back({corners[i], corners[(i + 1) % 4], centre});
      mesh.quad_of.push_back(quad);
    }
  }
  for (std::size_t chain = 0; chain < quads.chains.size(); ++chain) {
    for (const mesh::Side side : quads.chains[chain].sides) {
      const auto nodes = quads.nodes_of(side.quad);
      const int a = number_of(nodes[index_of(side.side)]);
      const int b = number_of(nodes[index_of((side.side + 1) % 4)]);
      mesh.chains_on[edge_between(a, b)].push_back(chain);
    }
  }
  return mesh;
}

void split_chain_at(TriangleMesh& mesh, std::size_t chain, double x) {
  std::vector<EdgeNodes> crossed;
  for (const auto& [edge, chains] : mesh.chains_on) {
    if (std::ranges::find(chains, chain) == chains.end()) continue;
    const double from = mesh.nodes[index_of(edge.first)].x;
    const double to = mesh.nodes[index_of(edge.second)].x;
    if (std::min(from, to) < x - mesh::same_place && x + mesh::same_place < std::max(from, to)) {
      crossed.push_back(edge);
    }
  }
  if (crossed.empty()) return;
  EdgeCutter cutter(mesh);
  for (const EdgeNodes edge : crossed) {
    const mesh::Point a = mesh.nodes[index_of(edge.first)];
    const mesh::Point b = mesh.nodes[index_of(edge.second)];
    cutter.cut(edge, {x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)});
  }
}

void refine(TriangleMesh& mesh, const SizeAt& size, int most_triangles) {
  EdgeCutter cutter(mesh);
  for (bool changed = true; changed && mesh.triangle_count() < most_triangles;) {
    changed = false;
    const int count = mesh.triangle_count();
    for (int triangle = 0; triangle < count && mesh.triangle_count() < most_triangles; ++triangle) {
      mesh::Point middle;
      for (int i = 0; i < 3; ++i) {
        middle.x += mesh.corner(triangle, i).x / 3.0;
        middle.y += mesh.corner(triangle, i).y / 3.0;
      }
      const double longest = std::sqrt(squared_length(mesh, cutter.longest_of(triangle)));
      if (longest <= (1.0 + 1e-9) * size(middle)) continue;
      cutter.cut_longest(triangle);
      changed = true;
    }
  }
}

}  // namespace deadshore::solver
