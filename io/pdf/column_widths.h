#pragma once

#include <span>
#include <vector>

namespace deadshore::io {

/// What the cells of a column ask for.
struct ColumnDemand {
  double least = 0.0;  ///< the width at which no word is broken
  double whole = 0.0;  ///< the width at which no line is, but for those of the heading
  double most = 0.0;   ///< the width at which no line is
};

/// Shares out `width` among columns as a browser's automatic table layout does (CSS 2.2, 17.5.2.2,
/// and common practice where that leaves it open): all lines whole if there is room, and the room
/// left over in proportion; else every column its least width and a share of the rest in proportion
/// to what it lacks; else, where not even the words fit, the widest columns give way. Beyond that,
/// narrow columns keep their lines whole as long as the wide ones have words' room enough. The
/// widths add up to `width`.
[[nodiscard]] std::vector<double> column_widths(std::span<const ColumnDemand> asked, double width);

}  // namespace deadshore::io
