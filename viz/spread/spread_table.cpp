#include "viz/spread/spread_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::SpreadItem;
using solver::SpreadSum;

constexpr double text_indent = 2.0 * disc_radius + 4.0;
const TextStyle small{.size = 7.0};
const TextStyle strong{.size = 7.0, .bold = true};

/// What a line of the sum says, without its load.
std::string words_of(const SpreadItem& item, const Job& job) {
  const std::string round = item.over_opening ? " round openings" : "";
  if (item.area > 0.0)
    return fmt::format("{}{}, {:.3f} m² × {:.2f} kN/m²", item.name, round, item.area / 1e6,
                       item.load / item.area * 1e3);
  for (const solver::LineLoad& load : job.line_loads)
    if (load.name == item.name && load.characteristic() > 0.0)
      return fmt::format("{}{}, {:.3f} m × {:.2f} kN/m", item.name, round,
                         item.load / load.characteristic() / 1e3, load.characteristic());
  for (const solver::PointLoad& load : job.point_loads)
    if (load.name == item.name) {
      const std::string part =
          item.share > 0.9995 ? "all" : fmt::format("{:.1f}%", 100.0 * item.share);
      return fmt::format("{}{}, {} of {}", item.name, round, part,
                         kilonewtons(load.characteristic()));
    }
  return item.name + round;
}

TextStyle words_style(double width) {
  return {.size = 7.0, .width = width - text_indent - 40.0, .overflow = Overflow::wrap};
}

double row_height(const std::string& words, double width) {
  return std::max(2.0 * disc_radius + 1.0, text_size(words, words_style(width)).height + 1.5);
}

}  // namespace

std::string exact_kilonewtons(double newtons) {
  return fmt::format("{:.2f} kN", newtons / 1000.0);
}

double spread_table_height(const SpreadSum& sum, const Job& job, double width) {
  double height = 14.0;
  for (const SpreadItem& item : sum.items) height += row_height(words_of(item, job), width);
  return height;
}

void draw_spread_table(Canvas& canvas, const SpreadSum& sum, const Job& job, PagePoint corner,
                       double width) {
  const double left = corner.x + text_indent;
  const double right = corner.x + width;
  double y = corner.y;
  int number = 0;
  for (const SpreadItem& item : sum.items) {
    const std::string words = words_of(item, job);
    const double height = row_height(words, width);
    const double middle = y + 0.5 * height;
    draw_disc(canvas, {corner.x + disc_radius, middle}, ++number);
    canvas.text({left, middle}, words, words_style(width), {0.0, 0.5});
    canvas.text({right, middle}, exact_kilonewtons(item.load), small, {1.0, 0.5});
    y += height;
  }
  canvas.line({corner.x, y + 1.0}, {right, y + 1.0}, {.colour = ink, .width = 0.7});
  canvas.text({left, y + 3.0}, sum.support + " by hand",
              {.size = 7.0, .bold = true, .width = words_style(width).width}, {0.0, 0.0});
  if (std::isfinite(sum.total))
    canvas.text({right, y + 3.0}, exact_kilonewtons(sum.total), strong, {1.0, 0.0});
}

}  // namespace deadshore::viz
