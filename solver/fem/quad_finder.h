#pragma once

#include "mesh/quad_mesh.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace deadshore::solver {

/// Finds the quadrilateral (by its corners, convex) at a point. The mesh must outlive it.
class QuadFinder {
 public:
  explicit QuadFinder(const mesh::QuadMesh& mesh);

  /// The quadrilateral that holds `p`, one of them where `p` lies on a side; -1 outside the mesh.
  [[nodiscard]] int find(mesh::Point p) const;

 private:
  /// Bins `first` to `last` that a stretch of an axis touches.
  struct Bins {
    int first = 0;
    int last = 0;
  };
  [[nodiscard]] Bins columns_of(mesh::Interval x) const;
  [[nodiscard]] Bins rows_of(mesh::Interval y) const;

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

/// Stretch of the line `from + s * along` inside a convex quadrilateral, s in mm for a unit
/// `along`; nothing where they do not meet.
[[nodiscard]] std::optional<mesh::Interval> stretch_inside(const mesh::QuadMesh& mesh, int quad,
                                                           mesh::Point from, mesh::Point along);

}  // namespace deadshore::solver
