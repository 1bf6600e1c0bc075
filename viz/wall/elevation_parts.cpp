#include "viz/wall/elevation_parts.h"

#include "solver/job/cut.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace deadshore::viz {

namespace {

using solver::Job;
using solver::NeedleProp;

constexpr double plate_thickness = 1.2;  ///< head and base plates as drawn, points
constexpr double least_tube = 2.4;       ///< points
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
  for (const double y : {top, foot - plate_thickness})
    canvas.fill(Rect{x - outer_width - 0.8, y, x + outer_width + 0.8, y + plate_thickness},
                support);
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

Pen cut_pen() {
  return {.colour = ink, .width = 1.2, .dash = {5.0, 2.5}};
}

void draw_coursing(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                   const std::vector<Loop>& outline) {
  const double course = readable_pitch(75.0, view.scale, 3.2);
  const double stretcher = 3.0 * course;
  std::vector<PagePoint> strokes;
  int row = 0;
  for (double y = 0.0; y < wall.height(); y += course, ++row) {
    strokes.insert(strokes.end(), {view.at({0.0, y}), view.at({wall.length, y})});
    for (double x = row % 2 == 0 ? stretcher : 0.5 * stretcher; x < wall.length; x += stretcher)
      strokes.insert(strokes.end(), {view.at({x, y}), view.at({x, y + course})});
  }
  canvas.clipped(outline, [&] { canvas.strokes(strokes, {.colour = coursing, .width = 0.3}); });
}

void draw_cut(Canvas& canvas, const WallView& view, const solver::Job& job) {
  const mesh::Cut& cut = job.wall.cut;
  const double top = view.down(cut.soffit);
  const double base = view.down(0.0);
  const PagePoint left{view.across(cut.left), top};
  const PagePoint right{view.across(cut.right), top};
  const std::array edges{left, PagePoint{left.x, base}, right, PagePoint{right.x, base}, left,
                         right};
  canvas.strokes(edges, {.colour = white, .width = 1.4});
  canvas.strokes(edges, cut_pen());
}

solver::StageState works_in_the_end(const solver::Job& job) {
  solver::StageState works;
  works.cut_out = true;
  works.lintel_out.assign(job.lintels.size(), 0);
  works.needles.assign(job.needles.size(), solver::NeedleState::fitted);
  works.shore_tight.assign(job.dead_shores.size(), 1);
  works.padstones = works.beam = job.beam.has_value();
  if (job.beam) works.packed_on = 0.0;
  if (job.analysis.sequence != solver::Sequence::staged) return works;
  for (std::size_t i = 0; i < job.lintels.size(); ++i)
    if (solver::takes_out(job.wall, job.lintels[i].shape)) works.lintel_out[i] = 1;
  return works;
}

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
