#pragma once

#include "mesh/quad_mesh.h"
#include "mesh/wall_shape.h"

#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::mesh {

/// Region number of what is not wall: an opening, or outside the outline.
constexpr int nothing = -1;
/// Region number of the masonry that stays. Others follow: lintels, the cut, groups of blocks.
constexpr int masonry = 0;

/// What a mesh of a wall has to tell apart.
struct WallParts {
  const WallShape& shape;  ///< must outlive this
  std::span<const WallBlock> blocks;
  bool with_cut = false;  ///< the masonry of the cut is still there
};

/// Region number of the masonry that the cut takes out.
[[nodiscard]] int cut_region(const WallShape& shape);

/// Region number of a group of blocks.
[[nodiscard]] int block_region(const WallShape& shape, std::size_t group);

/// What each region number stands for. Cut and blocks are there only where `parts.with_cut`.
[[nodiscard]] std::vector<Region> regions_of(const WallParts& parts);

/// Region number at a point, or `nothing`. A lintel that the cut halves is part of the cut there.
[[nodiscard]] int material_at(const WallParts& parts, Point p);

/// Whether there is a cut at all; an empty one takes nothing out.
[[nodiscard]] bool is_cut(const Cut& cut);

/// Whether the opening lies wholly in the cut, so that it is gone once the cut is made.
[[nodiscard]] bool comes_out_whole(const WallShape& shape, const Opening& opening);
/// Whether the lintel lies wholly in the cut, so that it comes out with it.
[[nodiscard]] bool comes_out_whole(const WallShape& shape, const LintelShape& lintel);

/// True where cut and lintel have an area in common.
[[nodiscard]] bool meets_cut(const WallShape& shape, const LintelShape& lintel);

/// True where the opening leaves no masonry above its head.
[[nodiscard]] bool reaches_top(const WallShape& shape, const Opening& opening);

/// Checks the places of the blocks.
/// \throws GeometryError where a block is not wholly in masonry outside the cut, or meets another
void refuse_misplaced_blocks(const WallParts& parts);

}  // namespace deadshore::mesh
