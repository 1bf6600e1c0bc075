#pragma once

#include "mesh/plane.h"

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::mesh {

/// Number of nodes of an element: bilinear, or quadratic serendipity.
enum class QuadOrder { four_node = 4, eight_node = 8 };

/// One side of a quadrilateral. Side s runs from corner s to corner (s + 1) % 4, so that the
/// element lies on its left (corners go anticlockwise).
struct Side {
  int quad = 0;
  int side = 0;
};

/// A chain of sides with a name: "soffit", "top", "base left", "base right", "left end",
/// "right end", or the name given with a level line.
struct NamedSides {
  std::string name;
  std::vector<Side> sides;
};

/// Quadrilaterals with named regions and named chains of sides; a plain value, any shape.
///
/// `connectivity` holds `nodes_per_quad` node numbers for each quadrilateral: the four corners
/// anticlockwise, then for 8-node elements the middle of side 0, 1, 2, 3. Coordinates in mm.
struct QuadMesh {
  std::vector<Point> nodes;
  QuadOrder order = QuadOrder::four_node;
  std::vector<int> connectivity;
  std::vector<int> region_of_quad;   ///< index into `regions`, one per quadrilateral
  std::vector<std::string> regions;  ///< "masonry", a lintel's name each, then more
  std::vector<NamedSides> chains;

  [[nodiscard]] int nodes_per_quad() const { return static_cast<int>(order); }
  [[nodiscard]] int quad_count() const { return static_cast<int>(region_of_quad.size()); }
  [[nodiscard]] int node_count() const { return static_cast<int>(nodes.size()); }

  /// Node numbers of quadrilateral `quad`: 4 or 8 of them.
  [[nodiscard]] std::span<const int> nodes_of(int quad) const;

  /// The chain with this name; empty where there is none.
  [[nodiscard]] std::span<const Side> sides_of(std::string_view name) const;
};

/// Node numbers along a side: its two ends, and for 8-node elements its middle last.
struct SideNodes {
  std::array<int, 3> nodes{};
  int count = 0;
};
[[nodiscard]] SideNodes nodes_along(const QuadMesh& mesh, Side side);

/// Corners of a quadrilateral, anticlockwise, mm.
[[nodiscard]] std::array<Point, 4> corners_of(const QuadMesh& mesh, int quad);

/// Area of a quadrilateral by its corners, mm2.
[[nodiscard]] double area_of(const QuadMesh& mesh, int quad);

/// The same mesh with a node in the middle of every side (straight sides); for a 4-node mesh only.
[[nodiscard]] QuadMesh with_midside_nodes(const QuadMesh& mesh);

}  // namespace deadshore::mesh
