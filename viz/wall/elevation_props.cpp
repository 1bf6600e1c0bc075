#include "viz/wall/elevation_props.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::NeedleProp;

constexpr double plate = 1.2;       ///< head and base plates as drawn, points
constexpr double least_tube = 2.4;  ///< points
const Pen tube_pen{.colour = support, .width = 0.5};
const Pen ground_pen{.colour = ink, .width = 0.9};

bool stands(const NeedleProp& prop) {
  return prop.action == solver::PropAction::up;
}

void draw_sole_from_its_side(Canvas& canvas, const Rect& box) {
  canvas.fill(box, timber_tint);
  canvas.outline(box, {.colour = ink, .width = 0.5});
}

/// From `top` down to `foot`: an inner tube in an outer one, `outer` points long.
void draw_tubes(Canvas& canvas, double x, double top, double foot, double outer, double outer_width,
                double inner_width) {
  const double neck = std::max(top + 2.0, foot - outer);
  const auto tube = [&](double from, double to, double width) {
    const Rect box{x - 0.5 * width, from, x + 0.5 * width, to};
    canvas.fill(box, white);
    canvas.outline(box, tube_pen);
  };
  tube(top, neck, inner_width);
  tube(neck, foot, outer_width);
  canvas.fill(Rect{x - outer_width, neck - 0.6, x + outer_width, neck + 0.6}, support);
  for (const double y : {top, foot - plate})
    canvas.fill(Rect{x - outer_width - 0.8, y, x + outer_width + 0.8, y + plate}, support);
}

void draw_prop(Canvas& canvas, const WallView& view, const Job& job, const solver::Needle& needle,
               const NeedleProp& prop) {
  const Rect end = needle_box(view, job, needle);
  const double x = end.middle().x;
  const solver::SolePlate& sole = prop.footing.sole;
  const double ground = view.down(prop.level);
  const double half = 0.5 * view.scale * sole.length;
  const double thickness = std::max(1.6, view.scale * sole.timber.section.h);
  if (std::abs(prop.level) > 1.0)
    canvas.line({x - half - 3.0, ground}, {x + half + 3.0, ground}, ground_pen);
  draw_sole_from_its_side(canvas, {x - half, ground - thickness, x + half, ground});
  const double foot = ground - thickness;
  if (foot < end.bottom + 8.0) return;
  const double outer = std::max(least_tube, view.scale * prop.prop.outer.diameter);
  const double inner = std::max(0.7 * least_tube, view.scale * prop.prop.inner.diameter);
  draw_tubes(canvas, x, end.bottom, foot, view.scale * prop.prop.shortest, outer, inner);
}

}  // namespace

double deepest_foot(const Job& job) {
  double deepest = 0.0;
  for (const solver::Needle& needle : job.needles)
    if (needle.frame)
      for (const NeedleProp& prop : job.needle_frames.at(*needle.frame).props)
        if (stands(prop)) deepest = std::min(deepest, prop.level);
  return deepest;
}

void draw_needle_props(Canvas& canvas, const WallView& view, const Job& job) {
  // Those that stand lower first, so that their soles do not hide the others'.
  std::vector<std::pair<const solver::Needle*, const NeedleProp*>> props;
  for (const solver::Needle& needle : job.needles)
    if (needle.frame)
      for (const NeedleProp& prop : job.needle_frames.at(*needle.frame).props)
        if (stands(prop)) props.emplace_back(&needle, &prop);
  std::stable_sort(props.begin(), props.end(),
                   [](const auto& a, const auto& b) { return a.second->level < b.second->level; });
  for (const auto& [needle, prop] : props) draw_prop(canvas, view, job, *needle, *prop);
}

std::vector<LegendEntry> prop_legend(const Job& job) {
  std::set<double> levels;
  for (const solver::Needle& needle : job.needles)
    if (needle.frame)
      for (const NeedleProp& prop : job.needle_frames.at(*needle.frame).props)
        if (stands(prop)) levels.insert(std::round(prop.level));
  if (levels.empty()) return {};
  return {{[](Canvas& canvas, const Rect& box) {
             const double foot = box.bottom - 2.0;
             draw_sole_from_its_side(canvas, {box.left, foot, box.right, box.bottom});
             draw_tubes(canvas, box.middle().x, box.top, foot, 0.5 * box.height(), 2.8, 2.0);
           },
           levels.size() > 1 ? "needle's props on their sole plates, inside and outside at their "
                               "levels"
                             : "needle's props on their sole plates, inside and outside in line"}};
}

}  // namespace deadshore::viz
