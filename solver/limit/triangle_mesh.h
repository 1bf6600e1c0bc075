#pragma once

#include "mesh/quad_mesh.h"

#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <utility>
#include <vector>

namespace deadshore::solver {

/// Two nodes, the smaller number first.
using EdgeNodes = std::pair<int, int>;
[[nodiscard]] inline EdgeNodes edge_between(int a, int b) {
  return a < b ? EdgeNodes{a, b} : EdgeNodes{b, a};
}

/// Triangles with straight sides that fill the quadrilaterals of a mesh, for strict bounds. mm.
struct TriangleMesh {
  std::vector<mesh::Point> nodes;
  std::vector<std::array<int, 3>> triangles;  ///< anticlockwise
  std::vector<int> quad_of;                   ///< quadrilateral that each triangle is part of

  /// Chains of the quadrilaterals (by their place among its chains) that an edge belongs to.
  std::map<EdgeNodes, std::vector<std::size_t>> chains_on;

  [[nodiscard]] int triangle_count() const { return static_cast<int>(triangles.size()); }
  [[nodiscard]] mesh::Point corner(int triangle, int corner) const {
    return nodes[static_cast<std::size_t>(
        triangles[static_cast<std::size_t>(triangle)][static_cast<std::size_t>(corner)])];
  }
};

/// Four triangles for each quadrilateral, about the mean of its corners. Curved sides become
/// straight between corners.
[[nodiscard]] TriangleMesh triangles_of(const mesh::QuadMesh& quads);

/// Puts a node at `x` wherever an edge of the chain passes it.
void split_chain_at(TriangleMesh& mesh, std::size_t chain, double x);

/// Largest side that a triangle may have at a place, mm.
using SizeAt = std::function<double(mesh::Point)>;

/// Cuts triangles in two across their longest sides, and their neighbours with them, until no side
/// is longer than `size` asks at the triangle's middle. Angles stay no less than half of the least
/// one before (Rivara, Int. J. Numer. Meth. Engng 20 (1984) 745-756).
/// \param most_triangles it stops before there are many more
void refine(TriangleMesh& mesh, const SizeAt& size, int most_triangles);

}  // namespace deadshore::solver
