#include "viz/wall/works_marks.h"

#include "solver/job/beam_places.h"
#include "solver/job/cut.h"
#include "viz/wall/load_marks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::StageState;

constexpr double prop_height = 8.0;
constexpr double least_prop_height = 4.5;  ///< in a small picture, clear of what is below
constexpr double prop_length = 150.0;      ///< mm that it is drawn as, between these
constexpr double prop_pitch = 30.0;
const Pen part_pen{.colour = ink, .width = 0.6};

Rect box_of(const WallView& view, mesh::Interval x, double bottom, double top) {
  return {view.across(x.from), view.down(top), view.across(x.to), view.down(bottom)};
}

Hatch packing_hatch() {
  return {.pen = {.colour = ink, .width = 0.4}, .spacing = 1.6, .angle = 60.0};
}

/// The beam from its side: the edges of its flanges show as lines.
void draw_beam_side(Canvas& canvas, const Rect& box, double flange) {
  canvas.fill(box, steel_tint);
  if (flange > 1.0)
    for (const double y : {box.top + flange, box.bottom - flange})
      canvas.line({box.left, y}, {box.right, y}, {.colour = ink, .width = 0.35});
  canvas.outline(box, part_pen);
}

void draw_packing(Canvas& canvas, const Rect& box) {
  canvas.fill(box, white);
  canvas.hatch(std::array{loop_of(box)}, packing_hatch());
  canvas.outline(box, {.colour = ink, .width = 0.4});
}

void draw_padstone(Canvas& canvas, const Rect& box) {
  canvas.fill(box, lintel_tint);
  canvas.line({box.left, box.bottom}, {box.right, box.top}, {.colour = ink, .width = 0.35});
  canvas.line({box.left, box.top}, {box.right, box.bottom}, {.colour = ink, .width = 0.35});
  canvas.outline(box, part_pen);
}

/// A prop under a head plate whose top is at `head`.
void draw_prop(Canvas& canvas, PagePoint head, double height) {
  const double foot = head.y + height;
  const double half_plate = std::min(3.5, 0.45 * height);
  const double half_base = std::min(2.0, 0.25 * height);
  const std::array strokes{PagePoint{head.x - half_plate, head.y},
                           PagePoint{head.x + half_plate, head.y},
                           head,
                           PagePoint{head.x, foot},
                           PagePoint{head.x - half_base, foot},
                           PagePoint{head.x + half_base, foot}};
  canvas.strokes(strokes, {.colour = white, .width = 2.6});
  canvas.strokes(strokes, {.colour = ink, .width = 1.1});
}

void label_joists(Canvas& canvas, const WallView& view, const solver::PanelResult& panel,
                  solver::ShoreId shore, mesh::Point at, LabelRoom& room) {
  const TextStyle style{.size = 7.5, .colour = support};
  for (const solver::JoistReaction& joists : panel.joists) {
    if (joists.shore != shore || !(joists.force >= smallest_shown_force)) continue;
    const std::string text = "joists " + kilonewtons(joists.force);
    const PagePoint place = view.at(at);
    draw_plate(canvas, room, text, style,
               boxes_around(plate_box({place.x, place.y + 16.0}, text, style), {10.0, 4.0}, 12));
  }
}

}  // namespace

void draw_permanent_works(Canvas& canvas, const WallView& view, const Job& job,
                          const StageState& works) {
  if (!job.beam) return;
  const solver::BeamPlaces places = solver::places_of_beam(job);
  if (works.padstones)
    for (const mesh::Box& stone : places.padstones)
      draw_padstone(canvas, box_of(view, stone.x, stone.y.from, stone.y.to));
  if (!works.beam) return;
  const auto& [x, y] = places.beam;
  if (works.packed_on) draw_packing(canvas, box_of(view, x, y.to, job.wall.cut.soffit));
  draw_beam_side(canvas, box_of(view, x, y.from, y.to), view.scale * job.beam->member.section.tf);
}

void draw_lintels_there(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                        const StageState& works, LintelStyle style) {
  mesh::WallShape shown = wall;
  shown.lintels.clear();
  for (std::size_t i = 0; i < wall.lintels.size(); ++i)
    if (!works.is_out({mesh::RegionKind::lintel, i})) shown.lintels.push_back(wall.lintels[i]);
  draw_lintels(canvas, view, shown, style);
}

Pen taken_out_pen() {
  return {.colour = quiet_ink, .width = 0.5, .dash = {2.5, 2.0}};
}

void draw_taken_out(Canvas& canvas, const WallView& view, const mesh::WallShape& wall) {
  constexpr int steps = 24;
  for (const mesh::Opening& opening : wall.openings) {
    if (!solver::takes_out(wall.cut, opening)) continue;
    Loop loop{view.at({opening.left, opening.sill})};
    for (int i = 0; i <= steps; ++i) {
      const double x = opening.left + opening.width * i / steps;
      loop.push_back(view.at({x, opening.head(x)}));
    }
    loop.push_back(view.at({opening.right(), opening.sill}));
    canvas.outline(std::array{loop}, taken_out_pen());
  }
  for (const mesh::LintelShape& lintel : wall.lintels) {
    if (!solver::takes_out(wall, lintel)) continue;
    const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
    canvas.outline(box_of(view, extent.x, extent.y.from, extent.y.to), taken_out_pen());
  }
}

void draw_dead_shores(Canvas& canvas, const WallView& view, const Job& job, const StageState& works,
                      const solver::PanelResult* panel, LabelRoom& room) {
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    if (i >= works.shore_tight.size() || works.shore_tight[i] == 0) continue;
    const solver::LineLoad& load = job.line_loads.at(index_of(job.dead_shores[i].carries));
    const double length = view.scale * load.x.length();
    const int props = std::max(2, static_cast<int>(std::lround(length / prop_pitch)));
    for (int k = 0; k < props; ++k) {
      const double x = load.x.from + load.x.length() * (k + 0.5) / props;
      const PagePoint head = view.at({x, level_at(job, load, x)});
      const double height = std::clamp(view.scale * prop_length, least_prop_height, prop_height);
      draw_prop(canvas, head, height);
      room.take({head.x - 4.0, head.y, head.x + 4.0, head.y + height});
    }
    const double middle = load.x.middle();
    if (panel != nullptr)
      label_joists(canvas, view, *panel, solver::ShoreId{i}, {middle, level_at(job, load, middle)},
                   room);
  }
}

Pen taken_away_pen() {
  return {.colour = support, .width = 0.6, .dash = {1.2, 0.9}};
}

void draw_bare_needles(Canvas& canvas, const WallView& view, const Job& job,
                       const StageState& works) {
  for (std::size_t i = 0; i < job.needles.size() && i < works.needles.size(); ++i) {
    const Rect box = needle_box(view, job, job.needles[i]);
    if (solver::is_in(works.needles[i])) {
      if (!works.cut_out) canvas.fill(box, white);
      draw_needle_section(canvas, box);
    } else if (works.needles[i] == solver::NeedleState::released) {
      canvas.fill(box, white);
      canvas.outline(box, taken_away_pen());
    }
  }
}

std::vector<LegendEntry> works_legend(const Job& job, const StageState& works) {
  std::vector<LegendEntry> entries;
  if (job.beam && works.beam)
    entries.push_back(
        {[](Canvas& canvas, const Rect& box) { draw_beam_side(canvas, box, 1.8); },
         works.packed_on ? "permanent beam, packed" : "permanent beam, not packed yet"});
  if (job.beam && works.padstones)
    entries.push_back(
        {[](Canvas& canvas, const Rect& box) {
           draw_padstone(canvas, {box.left + 3.0, box.top, box.right - 3.0, box.bottom});
         },
         "padstone"});
  if (std::count(works.shore_tight.begin(), works.shore_tight.end(), 0) <
      static_cast<std::ptrdiff_t>(works.shore_tight.size()))
    entries.push_back({[](Canvas& canvas, const Rect& box) {
                         draw_prop(canvas, {box.middle().x, box.top + 0.5}, box.height() - 1.0);
                       },
                       "dead shore: props carry this floor"});
  return entries;
}

}  // namespace deadshore::viz
