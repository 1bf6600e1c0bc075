#pragma once

#include "mesh/wall_mesher.h"
#include "mesh/wall_parts.h"

#include <span>
#include <string>
#include <vector>
namespace deadshore::mesh {

/// Hard lines bound material (outline, opening, cut, lintel) and must be edges of elements; soft
/// lines only carry load, which can be put on part of an element too.
enum class LineKind { hard, soft };

/// A line that the grid should follow: an upright (x = `at`) or a level (y = `at`).
struct FeatureLine {
  double at = 0.0;  ///< mm
  LineKind kind = LineKind::hard;
  std::string what;  ///< for messages, within a sentence: `the left side of opening "A"`
};

/// Chooses the lines that the grid will follow, ascending and nowhere nearer than `tolerance` mm:
/// every hard line in the order given unless one kept before it is too near, then the soft lines
/// likewise. Earlier lines therefore take precedence.
[[nodiscard]] std::vector<FeatureLine> keep_lines(std::span<const FeatureLine> lines,
                                                  double tolerance);

/// Index of the line nearest to `at`; `lines` ascending, not empty.
[[nodiscard]] int nearest_line(std::span<const FeatureLine> lines, double at);

/// Index of the value nearest to `at`; `values` ascending, not empty.
[[nodiscard]] int nearest_index(std::span<const double> values, double at);

/// Number of steps into which `subdivide` would cut the lines: as a double, so that a size much too
/// small can be refused before memory is asked for.
/// \param size largest step, mm
[[nodiscard]] double step_count(std::span<const FeatureLine> lines, double size);

/// Coordinates of the lines and, between each two of them, of equal steps of at most `size`, mm.
[[nodiscard]] std::vector<double> subdivide(std::span<const FeatureLine> lines, double size);

/// The lines of both axes: all of them as given, or those the grid keeps.
struct WallLines {
  std::vector<FeatureLine> uprights;  ///< lines of constant x
  std::vector<FeatureLine> levels;    ///< lines of constant y
};

/// Every line that a mesh of the wall should follow, in order of precedence (`keep_lines`): what
/// stays before what comes out with the cut.
/// \param levels lines that carry load
/// \param bearings where needles will bear, x in mm
[[nodiscard]] WallLines gather_lines(const WallParts& parts, std::span<const LevelLine> levels,
                                     std::span<const Interval> bearings);

/// Checks that merging close lines only shifts edges and loses no part of the wall.
///
/// `lines` has every hard line as given, `kept` the lines that the grid follows; each line given
/// moves onto the nearest one kept. What lies between two lines that become one vanishes there, so
/// it must also lie on one side of them. Slivers of masonry within the cut may vanish: they come
/// out anyway. \param size element size, mm; lines nearer than a tenth of it have been merged
/// \throws GeometryError naming the part that would vanish and the element size that would fit.
void refuse_collapse(const WallParts& parts, const WallLines& lines, const WallLines& kept,
                     double size);

}  // namespace deadshore::mesh
