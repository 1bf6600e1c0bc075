#pragma once

#include "mesh/wall_lines.h"
#include "mesh/wall_mesher.h"
#include "mesh/wall_parts.h"
#include "mesh/wall_shape.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::mesh {

/// An opening as the grid sees it. One that `reaches_top` is a slot without a head.
struct PlacedOpening {
  Opening shape;
  bool reaches_top = false;
  std::size_t number = 0;  ///< among the openings of the shape
};

struct PlacedLintel {
  std::string name;
  LintelExtent extent;
  bool comes_out = false;  ///< lies whole in the cut
};

struct PlacedBlock {
  WallBlock shape;
  int region = masonry;
};

/// The wall after hard lines that lay too close were moved onto one another, with the lines that
/// the grid follows. Everything in it lies on those lines.
struct PlacedWall {
  std::vector<FeatureLine> uprights;
  std::vector<FeatureLine> levels;
  std::vector<TopStretch> top;
  std::vector<PlacedOpening> openings;  ///< without those that went out with the cut
  std::vector<PlacedLintel> lintels;    ///< in the shape's order; empty if gone with the cut
  std::vector<PlacedBlock> blocks;
  Cut cut;
  int cut_region = nothing;      ///< what the cut is filled with
  std::vector<LevelLine> lines;  ///< as given, their levels and ends on the lines kept
  std::vector<std::string> remarks;
};

/// Gathers the lines of a wall, leaves out or moves those nearer than a tenth of `size`, and says
/// so in `remarks`.
/// \throws GeometryError if moving would make a part of the wall or an opening vanish, or a block
///   is
///   misplaced.
[[nodiscard]] PlacedWall place_wall(const WallParts& parts, std::span<const LevelLine> levels,
                                    std::span<const Interval> bearings, double size);

}  // namespace deadshore::mesh
