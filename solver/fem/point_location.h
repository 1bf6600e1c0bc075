#pragma once

#include "mesh/quad_mesh.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// Where a point of the wall lies in a mesh, and what a nodal field is there.
namespace deadshore::solver {

/// Values of the shape functions at a point of a mesh: a field there is the sum of its values at
/// `nodes`, each times its share.
struct NodeShares {
  std::span<const int> nodes;      ///< of the quadrilateral that holds the point
  std::array<double, 8> shares{};  ///< one for each of `nodes`; they add up to 1
};

/// Finds the quadrilateral at a point, and what a nodal field is there. Goes by corners: sides are
/// straight, so that nodes in their middles change nothing. The mesh must outlive it.
///
///     const QuadFinder finder(mesh);
///     if (const auto here = finder.shares_at(p)) { ... sum of here->shares[i] * field[node] ... }
class QuadFinder {
 public:
  /// Quadrilaterals whose mark in `chosen` is 0 are not there; empty: all are.
  explicit QuadFinder(const mesh::QuadMesh& mesh, std::span<const char> chosen = {});

  /// The quadrilateral that holds `p`, one of them where `p` lies on a side; -1 outside the mesh.
  [[nodiscard]] int find(mesh::Point p) const;

  /// By the shape functions of the quadrilateral that holds `p`; nothing outside the mesh.
  [[nodiscard]] std::optional<NodeShares> shares_at(mesh::Point p) const;

  /// The same; where `p` lies in none, at the nearest point of those around it.
  /// \pre a mesh that is not empty
  [[nodiscard]] NodeShares nearest_shares(mesh::Point p) const;

 private:
  /// Bins `first` to `last` that a stretch of an axis touches.
  struct Bins {
    int first = 0;
    int last = 0;
  };
  [[nodiscard]] Bins columns_of(mesh::Interval x) const;
  [[nodiscard]] Bins rows_of(mesh::Interval y) const;
  [[nodiscard]] std::span<const int> quads_in(int column, int row) const;

  [[nodiscard]] std::size_t bin_at(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }

  const mesh::QuadMesh& mesh_;
  mesh::Point corner_;      ///< lower left of all bins, mm
  double bin_ = 1.0;        ///< side of a bin, mm
  int columns_ = 1;         ///< of bins
  int rows_ = 1;            ///< of bins
  std::vector<int> start_;  ///< first entry of each bin in `quads_`, and the end of the last
  std::vector<int> quads_;  ///< those whose box touches a bin, bin after bin
};

/// Stretch of the line `from + s * along` inside a convex quadrilateral, as an interval of s;
/// nothing where they do not meet.
/// \param along direction of the line; a unit vector makes s a length in mm
[[nodiscard]] std::optional<mesh::Interval> stretch_inside(const mesh::QuadMesh& mesh, int quad,
                                                           mesh::Point from, mesh::Point along);

/// Interpolates displacements from one mesh of a wall to another of the same wall, by the shape
/// functions of the element that each new node lies in. A node that lies in none, because a mesh
/// line moved, takes the nearest element's. Meant as a start for Newton, not as a result.
/// \param displacement 2 per node of `from`, mm
/// \returns 2 per node of `to`, mm
[[nodiscard]] Eigen::VectorXd carry_over(const mesh::QuadMesh& from,
                                         std::span<const double> displacement,
                                         const mesh::QuadMesh& to);

}  // namespace deadshore::solver
