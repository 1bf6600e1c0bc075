#pragma once

#include "mesh/quad_mesh.h"
#include "mesh/wall_mesher.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::mesh::testing {

/// Checks what must hold for every mesh of a wall, and adds a test failure for each thing that does
/// not: corners anticlockwise with positive Jacobians, no node double or unused, sides shared by at
/// most two quads and no node on another's side, chains ordered and on the boundary where they
/// bound the wall, midside nodes in the middle, `worst_aspect` true.
void expect_sound(const WallMesh& mesh);

/// The same but for the aspect.
void expect_sound(const QuadMesh& quads);

/// Sum of the areas of the quads, mm2; of one region if `region` >= 0.
[[nodiscard]] double total_area(const QuadMesh& mesh, int region = -1);

/// Exact area of a wall whose openings neither overlap one another nor half the cut, mm2. Over a
/// slot past the top there must be one straight stretch of it.
[[nodiscard]] double exact_area(const WallShape& shape);

/// Level length of a chain, mm, and of its part within `x`.
[[nodiscard]] double level_length(const QuadMesh& mesh, std::span<const Side> chain);
[[nodiscard]] double level_length(const QuadMesh& mesh, std::span<const Side> chain, Interval x);

/// A chain without a number, or with one.
[[nodiscard]] constexpr Chain numbered(ChainKind kind, std::size_t index = 0) {
  return {kind, index};
}

/// For messages: the place of its kind among all, and its number.
[[nodiscard]] std::string in_words(const Chain& chain);

/// Ends of the sides of a chain.
[[nodiscard]] std::vector<Point> ends_of(const QuadMesh& mesh, std::span<const Side> chain);

/// True if some node lies on the upright at `x`, or at the height `y`.
[[nodiscard]] bool has_upright(const QuadMesh& mesh, double x);
[[nodiscard]] bool has_height(const QuadMesh& mesh, double y);

/// The wall seen from its other face.
[[nodiscard]] WallShape mirrored(const WallShape& shape);

}  // namespace deadshore::mesh::testing
