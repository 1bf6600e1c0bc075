#pragma once

#include "mesh/quad_mesh.h"

#include <span>
#include <vector>

namespace deadshore::viz {

/// A closed line in the wall's plane, mm; the last point joins the first.
using Ring = std::vector<mesh::Point>;

/// An area bounded by rings: outer ones anticlockwise, holes clockwise.
using Region = std::vector<Ring>;

/// Area of a region, mm2.
[[nodiscard]] double area_of(const Region& region);

/// Polygons over shared points, as point numbers, each anticlockwise and with a rank.
struct RankedPolygons {
  std::vector<int> corners;  ///< of all polygons, one after the other
  std::vector<int> starts;   ///< where each begins in `corners`
  std::vector<int> ranks;    ///< one each; below 0 belongs to no region

  void add(std::span<const int> polygon, int rank);
};

/// Rings of point numbers round the polygons of rank `k` and above, for k = 0 ... `count` - 1.
/// Sides that two such polygons share cancel, so that neighbours merge without a seam.
[[nodiscard]] std::vector<std::vector<std::vector<int>>> nested_rings(
    const RankedPolygons& polygons, int count);

/// Rings of node numbers round the quadrilaterals marked in `chosen`; empty: round the whole mesh.
[[nodiscard]] std::vector<std::vector<int>> boundary_rings(const mesh::QuadMesh& mesh,
                                                           std::span<const char> chosen = {});

/// The area of the whole mesh.
[[nodiscard]] Region region_of(const mesh::QuadMesh& mesh);

/// The area of the quadrilaterals marked in `chosen` (one entry each, any but 0 is a mark; empty:
/// of the whole mesh).
[[nodiscard]] Region region_of(const mesh::QuadMesh& mesh, std::span<const char> chosen);

/// A ring of these points, without those on a straight stretch.
[[nodiscard]] Ring ring_through(std::span<const int> numbers, std::span<const mesh::Point> points);

/// Largest movement of the nodes round the quadrilaterals marked in `chosen` (empty: all of them);
/// 0 where they do not move or a movement is not finite. `movement`: 2 per node.
[[nodiscard]] double largest_movement(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                                      std::span<const double> movement);

/// The outline of those quadrilaterals with each node moved by `factor` times its movement.
[[nodiscard]] Region moved_outline(const mesh::QuadMesh& mesh, std::span<const char> chosen,
                                   std::span<const double> movement, double factor);

}  // namespace deadshore::viz
