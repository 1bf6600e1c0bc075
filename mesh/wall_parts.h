#pragma once

#include "mesh/quad_mesh.h"
#include "mesh/wall_shape.h"

#include <cstddef>
#include <span>
#include <vector>

namespace deadshore::mesh {

/// Number of what is not wall; regions count from 0: masonry, lintels, the cut, groups of blocks.
constexpr int nothing = -1;
constexpr int masonry = 0;

/// What a mesh of a wall has to tell apart.
struct WallParts {
  const WallShape& shape;
  std::span<const WallBlock> blocks;
  bool with_cut = false;  ///< the masonry of the cut is still there
};

[[nodiscard]] int cut_region(const WallShape& shape);

/// Region of a group of blocks.
[[nodiscard]] int block_region(const WallShape& shape, std::size_t group);

/// All regions by number; the cut and the blocks only with the cut.
[[nodiscard]] std::vector<Region> regions_of(const WallParts& parts);

/// Region at `p`, or `nothing`. A lintel that the cut halves is part of the cut there.
[[nodiscard]] int material_at(const WallParts& parts, Point p);

/// False where `cut` has no area.
[[nodiscard]] bool is_cut(const Cut& cut);

/// True for what lies whole in the cut.
[[nodiscard]] bool comes_out_whole(const WallShape& shape, const Opening& opening);
[[nodiscard]] bool comes_out_whole(const WallShape& shape, const LintelShape& lintel);

/// True where cut and lintel have an area in common.
[[nodiscard]] bool meets_cut(const WallShape& shape, const LintelShape& lintel);

/// True where the opening leaves no masonry above its head.
[[nodiscard]] bool reaches_top(const WallShape& shape, const Opening& opening);

/// \throws GeometryError where a block is not wholly in masonry outside the cut, or meets another
void refuse_misplaced_blocks(const WallParts& parts);

}  // namespace deadshore::mesh
