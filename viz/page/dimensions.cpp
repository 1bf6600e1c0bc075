#include "viz/page/dimensions.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

const TextStyle figure_style{.size = 7.0};
const Pen tick_pen{.colour = ink, .width = 0.8};
const Pen line_pen{.colour = quiet_ink, .width = 0.45};
constexpr double gap = 2.5;  ///< between figures of a row
constexpr double tick = 1.9;
constexpr double row_pitch = 8.6;  ///< of rows that hang under a line

}  // namespace

std::vector<DimensionStop> sorted_stops(std::vector<DimensionStop> stops) {
  std::sort(stops.begin(), stops.end(),
            [](const auto& a, const auto& b) { return a.wall < b.wall; });
  std::vector<DimensionStop> kept;
  for (const DimensionStop& stop : stops)
    if (kept.empty() || stop.wall - kept.back().wall > 1.0) kept.push_back(stop);
  return kept;
}

std::vector<DimensionLabel> lay_out_dimensions(std::span<const DimensionStop> stops,
                                               double room_from, double room_to, int hanging) {
  std::vector<DimensionLabel> labels;
  std::vector<double> taken(static_cast<std::size_t>(hanging) + 1, room_from);
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    const std::string text = fmt::format("{:.0f}", std::abs(stops[i + 1].wall - stops[i].wall));
    const double width = text_size(text, figure_style).width;
    const double middle = 0.5 * (stops[i].page + stops[i + 1].page);
    const double from = middle - 0.5 * width;
    const bool fits = stops[i + 1].page - stops[i].page >= width + gap;
    std::size_t row = fits ? 0 : 1;
    while (row < taken.size() && from < taken[row]) ++row;
    if (row == taken.size() || from + width > room_to) continue;
    labels.push_back({text, from, from + width, static_cast<int>(row)});
    taken[row] = from + width + gap;
  }
  return labels;
}

double level_pitch(std::span<const DimensionStop> stops) {
  int deepest = 1;
  for (const DimensionLabel& label : lay_out_dimensions(stops, 0.0, page_width, tight_rows))
    deepest = std::max(deepest, label.row);
  return dimension_pitch + row_pitch * (deepest - 1);
}

void draw_level_dimensions(Canvas& canvas, std::span<const DimensionStop> stops, double y,
                           double reach, int hanging) {
  if (stops.size() < 2) return;
  std::vector<PagePoint> strokes{{stops.front().page - 3.0, y}, {stops.back().page + 3.0, y}};
  std::vector<PagePoint> ticks;
  for (const DimensionStop& stop : stops) {
    strokes.insert(strokes.end(), {{stop.page, reach}, {stop.page, y + 2.5}});
    ticks.insert(ticks.end(), {{stop.page - tick, y + tick}, {stop.page + tick, y - tick}});
  }
  canvas.strokes(strokes, line_pen);
  canvas.strokes(ticks, tick_pen);
  for (const DimensionLabel& label : lay_out_dimensions(stops, 0.0, page_width, hanging))
    canvas.text({label.from, label.row == 0 ? y - 0.6 : y + 1.2 + row_pitch * (label.row - 1)},
                label.text, figure_style, {0.0, label.row == 0 ? 1.0 : 0.0});
}

void draw_dimension_sign(Canvas& canvas, const Rect& box) {
  const double y = box.middle().y;
  canvas.line({box.left, y}, {box.right, y}, line_pen);
  for (const double x : {box.left + 2.0, box.right - 2.0})
    canvas.line({x - tick, y + tick}, {x + tick, y - tick}, tick_pen);
}

void draw_upright_dimensions(Canvas& canvas, std::span<const DimensionStop> stops, double x) {
  if (stops.size() < 2) return;
  // Upwards on the page is falling y; lay out along the rising axis.
  std::vector<DimensionStop> rising(stops.begin(), stops.end());
  for (DimensionStop& stop : rising) stop.page = -stop.page;
  std::vector<PagePoint> strokes{{x, stops.front().page + 3.0}, {x, stops.back().page - 3.0}};
  std::vector<PagePoint> ticks;
  for (const DimensionStop& stop : stops) {
    strokes.insert(strokes.end(), {{x - 2.5, stop.page}, {x + 2.5, stop.page}});
    ticks.insert(ticks.end(), {{x - tick, stop.page + tick}, {x + tick, stop.page - tick}});
  }
  canvas.strokes(strokes, line_pen);
  canvas.strokes(ticks, tick_pen);
  for (const DimensionLabel& label :
       lay_out_dimensions(rising, rising.front().page - 10.0, rising.back().page + 10.0))
    canvas.upright_text({label.row == 0 ? x - 0.6 : x + 1.2, -label.from}, label.text, figure_style,
                        {label.row == 0 ? 1.0 : 0.0, 1.0});
}

}  // namespace deadshore::viz
