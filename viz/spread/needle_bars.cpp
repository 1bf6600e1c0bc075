#include "solver/study/envelope.h"
#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/wall_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::JobResult;

constexpr double figure_height = 220.0;
constexpr double widest_bar = 34.0;
const TextStyle value_style{.size = 7.0};

/// One kind of bar: its look, its meaning and a value in kN for each needle (NaN: none).
struct Series {
  std::string meaning;
  Colour tone;
  bool hatched = false;
  std::vector<double> values;
};

bool analysed(const JobResult& result, solver::MasonryModel model) {
  for (const solver::StageResult& stage : result.stages)
    for (const solver::PanelResult& panel : stage.analyses)
      if (panel.model == model) return true;
  return false;
}

std::vector<Series> series_of(const JobResult& result) {
  std::vector<Series> series{{"by hand, 45-degree rule", white, true, {}}};
  const bool uncracked = analysed(result, solver::MasonryModel::uncracked);
  const bool cracked = analysed(result, solver::MasonryModel::cracked);
  if (uncracked) series.push_back({"uncracked masonry", {0.62, 0.72, 0.82}, false, {}});
  if (cracked) series.push_back({"cracked masonry", support, false, {}});
  for (const solver::NeedleComparison& row : result.comparison) {
    std::size_t next = 0;
    series[next++].values.push_back(row.hand / 1000.0);
    if (uncracked) series[next++].values.push_back(row.uncracked / 1000.0);
    if (cracked) series[next++].values.push_back(row.cracked / 1000.0);
  }
  return series;
}

void draw_tone(Canvas& canvas, const Rect& box, const Series& series) {
  canvas.fill(box, series.tone);
  if (series.hatched)
    canvas.hatch(std::array{loop_of(box)}, {.pen = {.colour = quiet_ink, .width = 0.6}});
  canvas.outline(box, {.colour = ink, .width = 0.6});
}

void draw_axis(Canvas& canvas, const Rect& plot, const BandScale& scale) {
  const int rows = scale.count;
  for (int k = 0; k <= rows; ++k) {
    const double y = plot.bottom - plot.height() * k / rows;
    canvas.line({plot.left, y}, {plot.right, y},
                {.colour = k == 0 ? ink : coursing, .width = k == 0 ? 0.9 : 0.5});
    canvas.text({plot.left - 4.0, y}, short_number(k * scale.step), value_style, {1.0, 0.5});
  }
  canvas.upright_text({8.0, plot.middle().y}, "load on the needle, kN", {.size = 7.5}, {0.0, 0.5});
}

void draw_bar(Canvas& canvas, const Rect& slot, double foot, double per_kN, double value,
              const Series& series) {
  const PagePoint base{slot.middle().x, foot};
  const TextStyle quiet{.size = 7.0, .colour = quiet_ink};
  if (!std::isfinite(value)) {
    canvas.upright_text({base.x, base.y - 3.0}, "no equilibrium", quiet, {0.5, 1.0});
    return;
  }
  const double top = foot - value * per_kN;
  if (value > 0.0) draw_tone(canvas, {slot.left, top, slot.right, foot}, series);
  const std::string text = fmt::format("{:.1f}", value);
  if (text_size(text, value_style).width <= slot.width() + 2.0)
    canvas.text({base.x, top - 1.0}, text, value_style, {0.5, 1.0});
  else
    canvas.upright_text({base.x, top - 2.0}, text, value_style, {0.5, 1.0});
}

std::string heading_of(const JobResult& result) {
  const solver::StageResult* compared = solver::compared_stage(result);
  if (!is_staged(result) || compared == nullptr) return "Loads on the needles";
  return fmt::format("Loads on the needles, stage {}: {}", compared - result.stages.data() + 1,
                     compared->name);
}

}  // namespace

Drawing needle_bars(const JobResult& result) {
  const std::vector<Series> series = series_of(result);
  double largest = 0.0;
  for (const Series& kind : series)
    for (const double value : kind.values)
      if (std::isfinite(value)) largest = std::max(largest, value);
  const BandScale scale = even_scale(1.12 * largest);  // room for the figure on the highest bar
  std::vector<std::string> names;
  for (const solver::NeedleComparison& row : result.comparison) names.push_back(row.needle);
  std::vector<LegendEntry> legend;
  legend.reserve(series.size());
  for (const Series& kind : series)
    legend.push_back(
        {[kind](Canvas& canvas, const Rect& box) { draw_tone(canvas, box, kind); }, kind.meaning});

  return {{page_width, figure_height},
          [=, heading = heading_of(result), title = result.job.title](Canvas& canvas) {
            draw_heading(canvas, heading, title);
            const Rect plot{44.0, heading_height + 10.0, page_width - 8.0, figure_height - 36.0};
            draw_axis(canvas, plot, scale);
            const double pitch = plot.width() / std::max<std::size_t>(1, names.size());
            const double bar =
                std::min(widest_bar, 0.8 * pitch / static_cast<double>(series.size()));
            for (std::size_t i = 0; i < names.size(); ++i) {
              const double middle = plot.left + (static_cast<double>(i) + 0.5) * pitch;
              double left = middle - 0.5 * bar * static_cast<double>(series.size());
              for (const Series& kind : series) {
                draw_bar(canvas, {left, plot.top, left + 0.9 * bar, plot.bottom}, plot.bottom,
                         plot.height() / scale.upper(), kind.values[i], kind);
                left += bar;
              }
              canvas.text({middle, plot.bottom + 3.0}, names[i],
                          {.size = 7.5, .bold = true, .width = pitch - 3.0}, {0.5, 0.0});
            }
            draw_legend(canvas, legend, {plot.left, figure_height - 15.0}, plot.width());
          }};
}

}  // namespace deadshore::viz
