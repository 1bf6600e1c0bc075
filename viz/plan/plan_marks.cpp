#include "viz/plan/plan_marks.h"

#include "solver/job/beam_places.h"
#include "solver/job/cut.h"
#include "viz/page/page.h"
#include "viz/section/frame_marks.h"

#include <algorithm>
#include <array>

namespace deadshore::viz {
namespace {

using mesh::Interval;
using solver::Job;

const Pen lane_pen{.colour = tension, .width = 0.8, .dash = {4.0, 2.0}};

/// The stretches of wall that a level cut through it, half way up to the soffit, meets.
std::vector<Interval> solid_stretches(const mesh::WallShape& wall) {
  const double level = 0.5 * wall.cut.soffit;
  std::vector<Interval> gaps{wall.cut.span()};
  for (const mesh::Opening& opening : wall.openings)
    if (!solver::takes_out(wall.cut, opening) && opening.sill < level && opening.crown() > level)
      gaps.push_back(opening.span());
  std::sort(gaps.begin(), gaps.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  std::vector<Interval> solid;
  double from = 0.0;
  for (const Interval& gap : gaps) {
    if (gap.from > from + 1.0) solid.push_back({from, gap.from});
    from = std::max(from, gap.to);
  }
  if (wall.length > from + 1.0) solid.push_back({from, wall.length});
  return solid;
}

/// Along the way from its ends, and in to the wall as far as the beam comes in sideways.
void draw_way(Canvas& canvas, const PlanPage& page, const PlanWay& way, const Job& job) {
  const Rect lane = page.at(way.lane);
  const double y = lane.middle().y;
  canvas.arrow({lane.left, y}, {lane.left + 20.0, y}, way_pen());
  canvas.arrow({lane.right, y}, {lane.right - 20.0, y}, way_pen());
  const Interval beam = solver::places_of_beam(job).beam.x;
  if (job.lifting->entry != solver::BeamEntry::sideways) return;
  for (const double x : {beam.from + 0.5 * job.beam->bearing, beam.to - 0.5 * job.beam->bearing})
    canvas.arrow({page.across(x), y}, {page.across(x), page.down(0.0)}, way_pen());
}

}  // namespace

void draw_prop_sign(Canvas& canvas, const Rect& box, double radius, bool holds_down) {
  canvas.fill(box, white);
  canvas.outline(box, plan_edge_pen);
  if (radius <= 0.0) {
    canvas.fill(box, timber_tint);
    canvas.outline(box, plan_edge_pen);
    return;
  }
  const std::array circle{circle_at(box.middle(), radius)};
  canvas.fill(circle, holds_down ? white : support);
  canvas.outline(circle, {.colour = support, .width = 0.8});
}

void draw_sole_sign(Canvas& canvas, const Rect& box) {
  canvas.fill(box, timber_tint);
  canvas.outline(box, {.colour = quiet_ink, .width = 0.5});
}

void draw_stand_sign(Canvas& canvas, const Rect& box) {
  constexpr double leg = 1.3;
  canvas.outline(box, {.colour = ink, .width = 0.9});
  for (const double x : {box.left, box.right})
    for (const double y : {box.top, box.bottom})
      canvas.fill(Rect{x - leg, y - leg, x + leg, y + leg}, ink);
}

void draw_lifter_sign(Canvas& canvas, const Rect& box, bool mast_on_top) {
  const double mast = mast_on_top ? box.top : box.bottom;
  const double tip = mast_on_top ? box.bottom : box.top;
  canvas.line({box.left, mast}, {box.right, mast}, {.colour = ink, .width = 2.2});
  for (const double part : {0.3, 0.7}) {
    const double x = box.left + part * box.width();
    canvas.line({x, mast}, {x, tip}, {.colour = ink, .width = 1.3});
  }
}

void draw_wall_sign(Canvas& canvas, const Rect& box) {
  canvas.fill(box, masonry_tint);
  canvas.hatch(std::array{loop_of(box)}, section_hatch());
  canvas.outline(box, {.colour = ink, .width = 1.1});
}

Pen needle_pen() {
  return {.colour = support, .width = 0.8};
}
Pen head_plate_pen() {
  return {.colour = quiet_ink, .width = 0.5, .dash = {3.0, 2.0}};
}
Pen beam_place_pen() {
  return {.colour = ink, .width = 0.9, .dash = {6.0, 2.0, 1.5, 2.0}};
}
Pen way_pen() {
  return {.colour = tension, .width = 1.1};
}

void draw_wall_band(Canvas& canvas, const PlanPage& page, const Job& job) {
  const double half = 0.5 * job.thickness;
  for (const double z : {-half, half})
    canvas.line(page.point({0.0, z}), page.point({job.wall.length, z}), head_plate_pen());
  for (const Interval& stretch : solid_stretches(job.wall)) {
    draw_wall_sign(canvas, page.at({stretch, {-half, half}}));
  }
}

void draw_beam_from_above(Canvas& canvas, const PlanPage& page, const Job& job) {
  const double width = job.beam->flange_width();
  const solver::BeamPlaces places = solver::places_of_beam(job);
  if (job.lifting) {
    const double half = 0.5 * job.thickness;
    const mesh::Cut& cut = job.wall.cut;
    for (const Interval& pocket : {Interval{cut.left - job.lifting->pocket_left, cut.left},
                                   Interval{cut.right, cut.right + job.lifting->pocket_right}}) {
      if (!(pocket.length() > 0.0)) continue;
      const Rect box = page.at({pocket, {-half, half}});
      canvas.fill(box, white);
      canvas.outline(box, plan_edge_pen);
    }
  }
  canvas.outline(page.at({places.beam.x, {-0.5 * width, 0.5 * width}}), beam_place_pen());
}

void draw_lane(Canvas& canvas, const PlanPage& page, const PlanWay& way) {
  const Rect box = page.at(way.lane);
  canvas.fill(box, tension, lane_shade);
  for (const double y : {box.top, box.bottom}) canvas.line({box.left, y}, {box.right, y}, lane_pen);
}

void draw_lifting(Canvas& canvas, const PlanPage& page, const PlanWay& way, const Job& job,
                  LabelRoom& room) {
  draw_way(canvas, page, way, job);
  for (const PlanProp& stand : way.stands) {
    draw_stand_sign(canvas, page.at(stand.base));
    room.take(page.at(stand.base));
  }
  for (const PlanProp& lifter : way.lifters) {
    draw_lifter_sign(canvas, page.at(lifter.base), way.inwards > 0.0);
    room.take(page.at(lifter.base));
  }
}

void draw_soles(Canvas& canvas, const PlanPage& page, const PlanParts& parts, LabelRoom& room) {
  for (const PlanShore& shore : parts.shores) draw_sole_sign(canvas, page.at(shore.sole));
  for (const PlanBox& sole : parts.soles) draw_sole_sign(canvas, page.at(sole));
  // Once more, so that where they overlap both edges show.
  for (const PlanBox& sole : parts.soles)
    canvas.outline(page.at(sole), {.colour = quiet_ink, .width = 0.5});
  for (const PlanShore& shore : parts.shores) {
    canvas.outline(page.at(shore.head), head_plate_pen());
    room.take(page.at(shore.sole));
  }
}

void draw_needles_from_above(Canvas& canvas, const PlanPage& page, const PlanParts& parts,
                             LabelRoom& room) {
  for (const PlanNeedle& needle : parts.needles) {
    const Rect box = page.at(needle.box);
    canvas.fill(box, steel_tint);
    canvas.outline(box, needle_pen());
    if (needle.known)
      canvas.line({box.middle().x, box.top}, {box.middle().x, box.bottom},
                  {.colour = support, .width = 0.4});
    room.take(box);
  }
  const auto draw = [&](const PlanProp& prop) {
    const Rect box = page.at(prop.base);
    draw_prop_sign(canvas, box, 0.5 * page.scale * prop.tube, prop.holds_down);
    room.take(box);
  };
  for (const PlanProp& prop : parts.props) draw(prop);
  for (const PlanProp& upright : parts.uprights) draw(upright);
}

}  // namespace deadshore::viz
