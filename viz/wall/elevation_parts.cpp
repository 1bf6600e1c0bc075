#include "viz/wall/elevation_parts.h"

#include "solver/job/cut.h"

#include <array>

namespace deadshore::viz {

Pen cut_pen() {
  return {.colour = ink, .width = 1.2, .dash = {5.0, 2.5}};
}

void draw_coursing(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                   const std::vector<Loop>& outline) {
  double course = 75.0;
  while (course * view.scale < 3.2) course *= 2.0;
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
  works.removed = {solver::cut_region};
  works.needles.assign(job.needles.size(), solver::NeedleState::fitted);
  works.shore_tight.assign(job.dead_shores.size(), 1);
  works.padstones = works.beam = job.beam.has_value();
  if (job.beam) works.packed_on = 0.0;
  if (job.analysis.sequence != solver::Sequence::staged) return works;
  for (const mesh::LintelShape& lintel : job.wall.lintels)
    if (solver::takes_out(job.wall, lintel)) works.removed.insert(lintel.name);
  return works;
}

}  // namespace deadshore::viz
