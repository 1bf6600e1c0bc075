#pragma once

#include "viz/page/canvas.h"

#include <functional>
#include <span>
#include <string>

namespace deadshore::viz {

/// A mark and what it means. `symbol` draws it inside the box it is given.
struct LegendEntry {
  std::function<void(Canvas&, const Rect&)> symbol;
  std::string text;
};

/// Height that the entries take when they run in lines of this width, points.
[[nodiscard]] double legend_height(std::span<const LegendEntry> entries, double width);

/// Draws the entries in lines from `at` (the top left corner).
void draw_legend(Canvas& canvas, std::span<const LegendEntry> entries, PagePoint at, double width);

/// The entry for a line drawn by this pen.
[[nodiscard]] LegendEntry line_entry(const Pen& pen, const std::string& text);

/// The entry for a hatched area with an outline.
[[nodiscard]] LegendEntry hatch_entry(const Hatch& hatch, const std::string& text);

/// The entry for an arrow that points up (or down).
[[nodiscard]] LegendEntry arrow_entry(const Pen& pen, bool up, const std::string& text);

}  // namespace deadshore::viz
