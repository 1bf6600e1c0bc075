#pragma once

#include "mesh/plane.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::mesh {

/// Number of nodes of an element: bilinear, or quadratic serendipity.
enum class QuadOrder { four_node = 4, eight_node = 8 };

/// One side of a quadrilateral. Side s runs from corner s to corner (s + 1) % 4, so that the
/// element lies on its left (corners go anticlockwise).
struct Side {
  int quad = 0;  ///< number of the quadrilateral
  int side = 0;  ///< 0 to 3
};

/// What the quadrilaterals of a region are: masonry that stays, a lintel, the masonry of the cut,
/// or a group of blocks that the work takes out or changes.
enum class RegionKind { masonry, lintel, cut, block };

/// A region of a mesh. `index` numbers lintels and groups of blocks; it is 0 for the other kinds.
struct Region {
  RegionKind kind = RegionKind::masonry;
  std::size_t index = 0;

  bool operator==(const Region&) const = default;
};

/// Where a chain of sides runs. A chain is a set of sides along one edge or line of the wall, on
/// which supports and loads act; `mesh_wall` and `mesh_whole_wall` say what each one is.
enum class ChainKind {
  base_left,
  base_right,
  base_cut,
  soffit,
  top,
  left_end,
  right_end,
  opening_head,  ///< these two by the number of the opening
  opening_sill,
  block_top,  ///< these three by the group of the blocks
  block_upper,
  block_bed,
  level_line,  ///< by its place among the level lines
  edge,        ///< of a mesh that is no wall's: numbered by whoever makes it
};

/// Names a chain of sides. `index` tells those of one kind apart: the number of the opening, of the
/// group of blocks or of the level line; 0 for the other kinds.
struct Chain {
  ChainKind kind = ChainKind::soffit;
  std::size_t index = 0;

  bool operator==(const Chain&) const = default;
};

/// A chain with its sides, from left to right or from the bottom up.
struct ChainSides {
  Chain chain;
  std::vector<Side> sides;
};

/// A mesh of quadrilaterals in regions, with chains of sides; a plain value, of any shape.
///
/// `connectivity` holds `nodes_per_quad` node numbers for each quadrilateral, one after the other:
/// the four corners anticlockwise, then for 8-node elements the middle of side 0, 1, 2, 3.
struct QuadMesh {
  std::vector<Point> nodes;  ///< coordinates, mm
  QuadOrder order = QuadOrder::four_node;
  std::vector<int> connectivity;    ///< quad_count() * nodes_per_quad() node numbers
  std::vector<int> region_of_quad;  ///< index into `regions`, one per quadrilateral
  std::vector<Region> regions;      ///< masonry first
  std::vector<ChainSides> chains;

  [[nodiscard]] int nodes_per_quad() const { return static_cast<int>(order); }
  [[nodiscard]] int quad_count() const { return static_cast<int>(region_of_quad.size()); }
  [[nodiscard]] int node_count() const { return static_cast<int>(nodes.size()); }

  /// Node numbers of quadrilateral `quad`: 4 or 8 of them.
  [[nodiscard]] std::span<const int> nodes_of(int quad) const;

  /// The region that a quadrilateral is of.
  [[nodiscard]] Region region_of(int quad) const {
    return regions[static_cast<std::size_t>(region_of_quad[static_cast<std::size_t>(quad)])];
  }

  /// The sides of a chain; empty where there is none.
  [[nodiscard]] std::span<const Side> sides_of(Chain chain) const;
  /// The same for a kind of which there is one.
  [[nodiscard]] std::span<const Side> sides_of(ChainKind chain) const {
    return sides_of(Chain{chain});
  }
};

/// Node numbers along a side: its two ends, and for 8-node elements its middle last.
struct SideNodes {
  std::array<int, 3> nodes{};  ///< the first `count` of them are in use
  int count = 0;               ///< 2 or 3
};

/// Node numbers along a side of a mesh, from its start to its end.
[[nodiscard]] SideNodes nodes_along(const QuadMesh& mesh, Side side);

/// Corners of a quadrilateral, anticlockwise, mm.
[[nodiscard]] std::array<Point, 4> corners_of(const QuadMesh& mesh, int quad);

/// Area of a quadrilateral by its corners, mm2; below 0 where they go clockwise.
[[nodiscard]] double area_of(const QuadMesh& mesh, int quad);

/// The same mesh as 8-node elements: with a node in the middle of every side, so that sides stay
/// straight. Nodes keep their numbers; new ones follow.
/// \pre mesh.order == QuadOrder::four_node
[[nodiscard]] QuadMesh with_midside_nodes(const QuadMesh& mesh);

}  // namespace deadshore::mesh
