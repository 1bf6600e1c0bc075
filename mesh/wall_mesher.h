#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"
#include "mesh/wall_shape.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::mesh {

/// A line that the mesh should follow because a load acts on it: at height `level` from `x.from` to
/// `x.to`, or along the outline's top where `follows_top`. Its sides become a
/// `ChainKind::level_line`.
/// Where `x` could not be aligned (see `mesh_wall`) the chain reaches past `x` by part of an
/// element.
struct LevelLine {
  std::string name;          ///< for messages
  Interval x;                ///< mm
  double level = 0.0;        ///< mm above the base; of no account where `follows_top`
  bool follows_top = false;  ///< lies on the outline's top, sloping or stepped
};

/// How fine a mesh is wanted, and of which elements.
struct MeshOptions {
  double size = 50.0;  ///< target element size, mm, > 0
  QuadOrder order = QuadOrder::four_node;
};

/// The mesh of a wall and what had to be done to make it.
struct WallMesh {
  QuadMesh quads;                    ///< no element is folded
  double size = 0.0;                 ///< target size it was made for, mm
  double worst_aspect = 1.0;         ///< longest over shortest mean side, worst element
  std::vector<std::string> remarks;  ///< plain sentences: lines moved, lines not followed
};

/// Cuts the wall into quadrilaterals aligned with every edge, opening, lintel, level and bearing.
///
/// Lines are of two kinds. *Hard* lines bound material (outline, openings, cut, lintels) and *soft*
/// ones only carry load (level lines, their ends, edges of `bearings` on the soffit). Two lines
/// closer than a tenth of the element size would leave slivers: a soft line is then not followed
/// (the load is still put in its right place, over part of an element), and of two hard lines the
/// later moves onto the earlier; `remarks` names each case. Sloping and stepped tops and
/// arched heads are met by sliding nodes along the vertical grid lines, so that every element is a
/// trapezium with upright sides and never folds.
///
/// Regions: masonry, then the lintels in their order. Chains: `base_left`, `base_right` (either may
/// be empty), `soffit`, `top`, `left_end`, `right_end` (the last two only above the soffit),
/// `opening_head` and `opening_sill` for each opening, and a `level_line` for each of `levels`.
///
/// A wall of 3 m by 2.4 m with a window, and a cut of 1.6 m under it:
/// \code
/// WallShape wall;
/// wall.length = 3000.0;
/// wall.top = {{0.0, 2400.0}, {3000.0, 2400.0}};
/// wall.openings = {{"window", 1000.0, 1400.0, 1000.0, 600.0}};  // left, sill, width, height
/// wall.cut = {700.0, 2300.0, 1000.0};                           // left, right, soffit
/// const Interval needle{1424.0, 1576.0};                        // where one will bear
/// const WallMesh made = mesh_wall(wall, {}, {&needle, 1}, {.size = 100.0});
/// double area = 0.0;
/// for (int quad = 0; quad < made.quads.quad_count(); ++quad) area += area_of(made.quads, quad);
/// fmt::print("{:.2f} m2 in {} elements, {} sides of soffit\n", area / 1e6,
///            made.quads.quad_count(), made.quads.sides_of(ChainKind::soffit).size());
/// \endcode
///
/// \param levels lines that loads act on
/// \param bearings where needles will bear on the soffit, x in mm
/// \throws GeometryError if the element size is too coarse for an opening, a pier or the band over
///   the cut, if lines cross so that no such grid exists, or if a part of the wall hangs on nothing
///   (touches neither base nor `bearings`).
[[nodiscard]] WallMesh mesh_wall(const WallShape& shape, std::span<const LevelLine> levels,
                                 std::span<const Interval> bearings, const MeshOptions& options);

/// The wall before any work, cut into quadrilaterals that the work can take out region by region.
///
/// As `mesh_wall`, but the masonry of the cut is there, with the openings and lintels that the cut
/// will take out whole, and the grid follows `blocks` as hard lines. A lintel that the cut halves
/// counts as masonry of the cut there, and a remark says so. Slivers of the cut's masonry beside an
/// opening or lintel in it may vanish.
///
/// Regions: masonry (0), one for each lintel (1 + its number), the cut (1 + number of lintels),
/// then one for each group of blocks. Chains as `mesh_wall`, and:
/// - `base_cut`: the base under the cut's masonry;
/// - `soffit`: the lower sides of what stays over the cut, as in `mesh_wall`;
/// - `block_top`: for each group of blocks, lower sides of what lies over it, left to right;
/// - `block_upper`: the upper sides of the blocks' own elements there;
/// - `block_bed`: upper sides of what lies under it.
///
/// \throws GeometryError as `mesh_wall`, both for the wall before the cut, standing on its base
///   alone, and for the wall as cut; also if a block meets an opening, the cut, a lintel or another
///   block
[[nodiscard]] WallMesh mesh_whole_wall(const WallShape& shape, std::span<const WallBlock> blocks,
                                       std::span<const LevelLine> levels,
                                       std::span<const Interval> bearings,
                                       const MeshOptions& options);

/// The regions of `mesh_whole_wall` that stand once the cut is made: all but the cut itself and the
/// lintels that come out whole with it. One entry per region, as `part_of` takes them.
[[nodiscard]] std::vector<char> regions_left_by_cut(const WallShape& shape, const QuadMesh& whole);

}  // namespace deadshore::mesh
