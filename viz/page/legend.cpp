#include "viz/page/legend.h"

#include <array>
#include <vector>

namespace deadshore::viz {
namespace {

// Points on the page.
constexpr double symbol_width = 18.0;
constexpr double symbol_gap = 4.0;
constexpr double entry_gap = 14.0;
constexpr double row_height = 12.0;

TextStyle style_within(double width) {
  return {.size = 7.0,
          .colour = ink,
          .width = width - symbol_width - symbol_gap,
          .overflow = Overflow::wrap};
}

/// Calls `place` with each entry, its top left corner (from 0, 0) and its size; returns the height.
template <class Place>
double run_through(std::span<const LegendEntry> entries, double width, const Place& place) {
  double x = 0.0;
  double y = 0.0;
  double row = row_height;
  for (const LegendEntry& entry : entries) {
    const Size text = text_size(entry.text, style_within(width));
    const double entry_width = symbol_width + symbol_gap + text.width;
    if (x > 0.0 && x + entry_width > width) {
      x = 0.0;
      y += row;
      row = row_height;
    }
    place(entry, PagePoint{x, y}, text);
    x += entry_width + entry_gap;
    row = std::max(row, text.height + 3.0);
  }
  return entries.empty() ? 0.0 : y + row;
}

}  // namespace

double legend_height(std::span<const LegendEntry> entries, double width) {
  return run_through(entries, width, [](const LegendEntry&, PagePoint, Size) {});
}

void draw_legend(Canvas& canvas, std::span<const LegendEntry> entries, PagePoint at, double width) {
  run_through(entries, width, [&](const LegendEntry& entry, PagePoint corner, Size) {
    const double left = at.x + corner.x;
    const double top = at.y + corner.y;
    entry.symbol(canvas, {left, top + 0.5, left + symbol_width, top + row_height - 2.5});
    canvas.text({left + symbol_width + symbol_gap, top + 0.5}, entry.text, style_within(width),
                {0.0, 0.0});
  });
}

LegendEntry line_entry(const Pen& pen, const std::string& text) {
  return {[pen](Canvas& canvas, const Rect& box) {
            canvas.line({box.left, box.middle().y}, {box.right, box.middle().y}, pen);
          },
          text};
}

LegendEntry hatch_entry(const Hatch& hatch, const std::string& text) {
  return {[hatch](Canvas& canvas, const Rect& box) {
            canvas.hatch(std::array{loop_of(box)}, hatch);
            canvas.outline(box, hatch.pen);
          },
          text};
}

LegendEntry arrow_entry(const Pen& pen, bool up, const std::string& text) {
  return {[pen, up](Canvas& canvas, const Rect& box) {
            const double x = box.middle().x;
            canvas.arrow({x, up ? box.bottom : box.top}, {x, up ? box.top : box.bottom}, pen);
          },
          text};
}

}  // namespace deadshore::viz
