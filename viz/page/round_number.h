#pragma once

namespace deadshore::viz {

/// The largest of 1, 2 and 5 times a power of ten that is not above `value`; 1 for a value that is
/// not positive and finite.
[[nodiscard]] double largest_round(double value);

/// The next smaller number of that series: 0.2 -> 0.1, 0.5 -> 0.2, 1 -> 0.5.
[[nodiscard]] double next_round_below(double round);

}  // namespace deadshore::viz
