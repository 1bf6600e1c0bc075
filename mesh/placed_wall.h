#pragma once

#include "mesh/wall_lines.h"
#include "mesh/wall_mesher.h"
#include "mesh/wall_parts.h"
#include "mesh/wall_shape.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::mesh {

/// An opening with its edges on lines of the grid.
struct PlacedOpening {
  Opening shape;
  bool reaches_top = false;  ///< leaves no masonry over its head: a slot in the wall's top
  std::size_t number = 0;    ///< among the openings of the shape
};

/// A lintel with its edges on lines of the grid.
struct PlacedLintel {
  std::string name;
  LintelExtent extent;
  bool comes_out = false;  ///< lies wholly in the cut
};

/// A block with its edges on lines of the grid.
struct PlacedBlock {
  WallBlock shape;
  int region = masonry;  ///< number of its group's region
};

/// The wall after hard lines that lay too close were moved onto one another, with the lines that
/// the grid follows. Every edge in it lies on one of those lines. All in mm.
struct PlacedWall {
  std::vector<FeatureLine> uprights;    ///< ascending
  std::vector<FeatureLine> levels;      ///< ascending, nominal heights
  std::vector<TopStretch> top;          ///< from left to right
  std::vector<PlacedOpening> openings;  ///< without those that went out with the cut
  std::vector<PlacedLintel> lintels;    ///< in the shape's order; empty if gone with the cut
  std::vector<PlacedBlock> blocks;
  Cut cut;
  int cut_region = nothing;          ///< region of its masonry, or `nothing` once it is out
  std::vector<LevelLine> lines;      ///< as given, their levels and ends on the lines kept
  std::vector<std::string> remarks;  ///< plain sentences: which lines moved or were left out
};

/// Gathers the lines of a wall, leaves out or moves those nearer than a tenth of `size`, and says
/// so in `remarks`.
/// \param levels lines that carry load
/// \param bearings where needles will bear, x in mm
/// \throws GeometryError if moving would make a part of the wall or an opening vanish, or a block
///   is misplaced
[[nodiscard]] PlacedWall place_wall(const WallParts& parts, std::span<const LevelLine> levels,
                                    std::span<const Interval> bearings, double size);

}  // namespace deadshore::mesh
