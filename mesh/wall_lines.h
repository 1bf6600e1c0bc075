#pragma once

#include "mesh/wall_mesher.h"
#include "mesh/wall_parts.h"

#include <span>
#include <string>
#include <vector>
namespace deadshore::mesh {

/// Hard lines bound material, soft lines only carry load.
enum class LineKind { hard, soft };

/// A line the grid should follow, at `at` mm on its axis. `what` reads on in a sentence:
/// "the left side of opening "A"".
struct FeatureLine {
  double at = 0.0;
  LineKind kind = LineKind::hard;
  std::string what;
};

/// The lines the grid will follow, ascending and nowhere nearer than `tolerance`: every hard line
/// in the order given unless an earlier one is too near, then the soft lines likewise.
[[nodiscard]] std::vector<FeatureLine> keep_lines(std::span<const FeatureLine> lines,
                                                  double tolerance);

/// Index of the line nearest to `at`; `lines` ascending, not empty.
[[nodiscard]] int nearest_line(std::span<const FeatureLine> lines, double at);

/// Index of the value nearest to `at`; `values` ascending, not empty.
[[nodiscard]] int nearest_index(std::span<const double> values, double at);

/// Steps of at most `size` from the first line to the last, with a new one at each line.
[[nodiscard]] double step_count(std::span<const FeatureLine> lines, double size);

/// `lines` and between each two of them equal steps of at most `size`.
[[nodiscard]] std::vector<double> subdivide(std::span<const FeatureLine> lines, double size);

/// The lines of both axes: all of them as given, or those the grid keeps.
struct WallLines {
  std::vector<FeatureLine> uprights;
  std::vector<FeatureLine> levels;
};

/// Every line that a mesh of the wall should follow, in order of precedence: what stays before what
/// comes out with the cut.
[[nodiscard]] WallLines gather_lines(const WallParts& parts, std::span<const LevelLine> levels,
                                     std::span<const Interval> bearings);

/// Moving hard lines onto the lines kept must only shift edges: what lies between two lines that
/// become one must also lie beside them. Only slivers of masonry within a cut may vanish: they come
/// out anyway.
/// \throws GeometryError naming the part that would vanish and the element size that would fit.
void refuse_collapse(const WallParts& parts, const WallLines& lines, const WallLines& kept,
                     double size);

}  // namespace deadshore::mesh
