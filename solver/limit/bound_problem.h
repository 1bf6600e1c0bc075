#pragma once

#include "mesh/quad_mesh.h"
#include "solver/limit/triangle_mesh.h"

#include <array>
#include <vector>

namespace deadshore::solver {

/// An edge of a bound problem, with what acts on it.
struct BoundEdge {
  EdgeNodes nodes;
  std::array<int, 2> triangle{-1, -1};      ///< those beside it; the second -1 on a boundary
  std::array<bool, 2> held{false, false};   ///< cannot move along x, along y
  bool pushed = false;                      ///< something unyielding can push it upwards
  double load = 0.0;                        ///< downwards, N per mm of the edge

  [[nodiscard]] bool is_boundary() const { return triangle[1] < 0; }
};

/// A wall at one stage as strict bounds see it: triangles with straight sides, rigid and perfectly
/// plastic, -compression <= principal stresses <= tension. N, mm, N/mm2.
///
/// What holds it is unyielding and as strong as need be.
struct BoundProblem {
  std::vector<mesh::Point> nodes;
  std::vector<std::array<int, 3>> triangles;     ///< anticlockwise
  std::vector<std::array<int, 3>> edges_of;      ///< edge i runs from corner i to corner i + 1
  std::vector<BoundEdge> edges;
  std::vector<double> thickness;                 ///< of each triangle, mm
  std::vector<double> compression;               ///< strength of each triangle, N/mm2
  std::vector<double> tension;                   ///< same; 0 for masonry without tension
  std::vector<char> is_masonry;
  std::vector<double> weight;                    ///< of each triangle, N; 0 where it is let go
  double masonry_strength = 0.0;                 ///< unit of stress, N/mm2

  [[nodiscard]] int triangle_count() const { return static_cast<int>(triangles.size()); }
  [[nodiscard]] double area(int triangle) const;
  [[nodiscard]] double length(const BoundEdge& edge) const;
};

/// The triangles of a mesh, all of one masonry, with nothing that acts or holds.
struct PlainMasonry {
  double thickness = 0.0;    ///< mm
  double strength = 0.0;     ///< N/mm2
  double unit_weight = 0.0;  ///< N/mm3
};
[[nodiscard]] BoundProblem plain_bound_problem(const TriangleMesh& mesh, const PlainMasonry& of);

// What acts on the edges of a chain of the mesh that the problem was made from.

/// Holds them along x, along y.
void hold(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain,
          std::array<bool, 2> held);

/// Lets something push them up within `x`: edges that lie in it as a whole.
void push(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain, mesh::Interval x);

/// Loads them downwards by `intensity` N per mm along x within `x`; returns the load, N.
double load(BoundProblem& problem, const TriangleMesh& mesh, std::size_t chain, mesh::Interval x,
            double intensity);

/// Without the triangles of which `goes` is not 0.
[[nodiscard]] BoundProblem without(const BoundProblem& problem, const std::vector<char>& goes);

/// Lets the weight of the fringe go: of masonry beside a free edge that faces down. Without tension
/// nothing holds a straight soffit, however thin the layer. Returns the weight, N.
double let_fringe_go(BoundProblem& problem);

}  // namespace deadshore::solver
