#pragma once

#include <optional>
#include <span>
#include <vector>

namespace deadshore::solver {

/// How far the middle of a beam may be from the middle of the one piece that holds it, or has to be
/// inside the outermost pieces, so that it does not tip, mm. Common practice, no source.
inline constexpr double off_middle = 25.0;

/// Part of a stiff beam's weight on one of the places that hold it.
struct BeamShare {
  double part = 1.0;             ///< 0 to 1
  std::optional<double> across;  ///< the place that takes the rest; none: it takes all
};

/// Largest share of each place, by statics, of a weight at `middle`. A stiff beam on more than two
/// places may rock onto any pair that straddles its middle, so the worst pair counts. Where none
/// does, the beam tips, and every place is given the whole of it.
[[nodiscard]] std::vector<BeamShare> largest_shares(std::span<const double> places, double middle);

}  // namespace deadshore::solver
