#include "viz/wall/crack_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

void stroke_crack(Canvas& canvas, PagePoint from, PagePoint to, double width) {
  canvas.line(from, to, {.colour = white, .width = crack_stroke(width) + 1.4});
  canvas.line(from, to, {.colour = ink, .width = crack_stroke(width)});
}

}  // namespace

double crack_stroke(double width) {
  return std::clamp(0.7 + 0.5 * width, 0.7, 4.5);
}

std::string crack_width(double width) {
  return fmt::format("{:.{}f} mm", width, width < 0.995 ? 2 : 1);
}

void draw_cracks(Canvas& canvas, const WallView& view, const std::vector<solver::Crack>& cracks) {
  for (const solver::Crack& crack : cracks) {
    const double sum = crack.width + crack.from.x + crack.from.y + crack.to.x + crack.to.y;
    if (std::isfinite(sum))
      stroke_crack(canvas, view.at(crack.from), view.at(crack.to), crack.width);
  }
}

std::vector<LegendEntry> crack_legend() {
  std::vector<LegendEntry> entries;
  for (const double width : {0.2, 1.0, 5.0})
    entries.push_back(
        {[width](Canvas& canvas, const Rect& box) {
           stroke_crack(canvas, {box.left, box.middle().y}, {box.right, box.middle().y}, width);
         },
         width < 0.5 ? "crack 0.2 mm wide" : fmt::format("{:.0f} mm", width)});
  return entries;
}

}  // namespace deadshore::viz
