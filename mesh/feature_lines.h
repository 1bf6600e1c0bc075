#pragma once

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

}  // namespace deadshore::mesh
