#include "solver/beam/beam_checks.h"
#include "solver/job/beam_places.h"
#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::BeamStation;
using solver::Job;

constexpr double left_room = 122.0;  ///< for the diagrams' names
constexpr double right_room = 46.0;
constexpr double wall_strip = 30.0;     ///< of masonry shown over the soffit, points
constexpr double reaction_room = 36.0;  ///< under the padstones
constexpr double diagram_height = 92.0;
constexpr double label_room = 12.0;  ///< over and under a curve
constexpr Colour curve_tint{0.85, 0.89, 0.94};
const Pen analysis_pen{.colour = support, .width = 1.2};
const Pen hand_pen{.colour = ink, .width = 0.9, .dash = {4.0, 2.5}};
const TextStyle analysis_style{.size = 7.5, .bold = true, .colour = support};
const TextStyle hand_style{.size = 7.5};

/// A station's value in the diagram's unit, upwards positive on the page.
using Measure = double (*)(const BeamStation&);

struct Diagram {
  std::string name;
  std::string note;
  std::string unit;
  Measure measure;
};

const std::array diagrams{
    Diagram{"load on the beam", "from the packing", "kN/m",
            [](const BeamStation& s) { return s.packing; }},
    Diagram{"bending moment", "on the side in tension", "kNm",
            [](const BeamStation& s) { return -s.moment / 1e6; }},
    Diagram{"shear force", "", "kN", [](const BeamStation& s) { return s.shear / 1e3; }},
    Diagram{"deflection", "downwards", "mm", [](const BeamStation& s) { return -s.deflection; }}};

/// A curve: x on the page, y the value.
using Curve = std::vector<PagePoint>;

Curve curve_of(const WallView& view, const std::vector<BeamStation>& stations, Measure measure) {
  Curve curve;
  for (const BeamStation& station : stations) {
    const double value = measure(station);
    if (std::isfinite(value) && std::isfinite(station.x))
      curve.push_back({view.across(station.x), value});
  }
  return curve;
}

/// The value axis of a diagram on the page.
struct ValueAxis {
  double zero = 0.0;      ///< page height of 0
  double per_unit = 0.0;  ///< points
  [[nodiscard]] PagePoint at(PagePoint point) const { return {point.x, zero - per_unit * point.y}; }
};

ValueAxis axis_of(const std::array<Curve, 2>& curves, double top) {
  double least = 0.0;
  double most = 0.0;
  for (const Curve& curve : curves)
    for (const PagePoint& point : curve) {
      least = std::min(least, point.y);
      most = std::max(most, point.y);
    }
  const double room = diagram_height - 2.0 * label_room;
  const double per_unit = most > least ? room / (most - least) : 0.0;
  return {top + label_room + per_unit * most, per_unit};
}

void draw_curve(Canvas& canvas, const ValueAxis& axis, const Curve& curve, const Pen& pen,
                LabelRoom& room) {
  std::vector<PagePoint> points;
  for (const PagePoint& point : curve) points.push_back(axis.at(point));
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const PagePoint from = points[i];
    const PagePoint to = points[i + 1];
    const int steps = 1 + static_cast<int>(std::hypot(to.x - from.x, to.y - from.y) / 3.0);
    for (int k = 0; k <= steps; ++k) {
      const double part = static_cast<double>(k) / steps;
      room.take(box_at({from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)},
                       {1.6, 1.6}, {}));
    }
  }
  canvas.path(points, pen);
}

/// Writes the largest and the least value where they are, if they are worth saying.
void label_extremes(Canvas& canvas, const ValueAxis& axis, const Curve& curve,
                    const std::string& unit, const TextStyle& style, LabelRoom& room) {
  if (curve.empty() || axis.per_unit == 0.0) return;
  const auto [low, high] = std::minmax_element(
      curve.begin(), curve.end(), [](const PagePoint& a, const PagePoint& b) { return a.y < b.y; });
  for (const auto& [point, over] : {std::pair{*high, true}, std::pair{*low, false}}) {
    const bool right_side = over ? point.y > 0.0 : point.y < 0.0;
    if (!right_side || std::abs(point.y) * axis.per_unit < 4.0) continue;
    const std::string text = fmt::format("{} {}", short_number(std::abs(point.y)), unit);
    const PagePoint at = axis.at(point);
    const Rect start = plate_box({at.x, at.y + (over ? -7.0 : 7.0)}, text, style);
    draw_plate(canvas, room, text, style, boxes_around(start, {5.0, 2.0}, 18));
  }
}

void draw_diagram(Canvas& canvas, const WallView& view, const Diagram& diagram,
                  const std::vector<BeamStation>& analysis, const std::vector<BeamStation>& hand,
                  double top) {
  const std::array curves{curve_of(view, analysis, diagram.measure),
                          curve_of(view, hand, diagram.measure)};
  const ValueAxis axis = axis_of(curves, top);
  const double middle = top + 0.5 * diagram_height;
  canvas.text({left_room - 26.0, middle}, diagram.name, {.size = 7.5, .bold = true}, {1.0, 1.0});
  canvas.text({left_room - 26.0, middle + 1.0}, diagram.note, {.size = 7.0, .colour = quiet_ink},
              {1.0, 0.0});
  LabelRoom room({4.0, top, page_width - 4.0, top + diagram_height});
  room.take({0.0, middle - 12.0, left_room - 24.0, middle + 12.0});
  if (curves[0].size() > 1) {
    Loop area{axis.at({curves[0].front().x, 0.0})};
    for (const PagePoint& point : curves[0]) area.push_back(axis.at(point));
    area.push_back(axis.at({curves[0].back().x, 0.0}));
    canvas.fill(std::array{area}, curve_tint);
    canvas.line(area.front(), area.back(), {.colour = ink, .width = 0.7});
    room.take({area.front().x, axis.zero - 0.8, area.back().x, axis.zero + 0.8});
  }
  draw_curve(canvas, axis, curves[0], analysis_pen, room);
  draw_curve(canvas, axis, curves[1], hand_pen, room);
  label_extremes(canvas, axis, curves[0], diagram.unit, analysis_style, room);
  label_extremes(canvas, axis, curves[1], diagram.unit, hand_style, room);
}

/// The masonry over the beam and the piers beside it, as far as the sketch shows them.
Region masonry_beside(const Job& job, mesh::Interval x, double top, double bottom) {
  const mesh::Cut& cut = job.wall.cut;
  return {{{x.from, bottom},
           {cut.left, bottom},
           {cut.left, cut.soffit},
           {cut.right, cut.soffit},
           {cut.right, bottom},
           {x.to, bottom},
           {x.to, top},
           {x.from, top}}};
}

/// What an end brings onto its padstone; the figures stand in the opening, clear of the jamb.
void draw_end_load(Canvas& canvas, const WallView& view, mesh::Point stone_foot, double jamb,
                   const std::string& analysis, const std::string& hand) {
  const PagePoint tip = view.at(stone_foot);
  canvas.arrow({tip.x, tip.y + 16.0}, {tip.x, tip.y + 1.0}, reaction_pen());
  const bool left_end = stone_foot.x < jamb;
  const Anchor anchor{left_end ? 0.0 : 1.0, 0.0};
  const double x = view.across(jamb) + (left_end ? 5.0 : -5.0);
  const Rect box = canvas.text({x, tip.y}, analysis, analysis_style, anchor);
  canvas.text({x, box.bottom}, hand, hand_style, anchor);
}

std::string section_words(const solver::PermanentBeam& beam) {
  const std::string& section = beam.member.section.name;
  return beam.count > 1 ? fmt::format("{} × {}", beam.count, section) : section;
}

}  // namespace

Drawing beam_diagrams(const solver::JobResult& result, const solver::PanelResult& panel,
                      const ShownStage& stage) {
  const Job& job = result.job;
  const solver::PermanentBeam& beam = job.beam.value();
  const solver::BeamResult& answer = panel.beam.value();
  const solver::HandBeam hand = solver::hand_beam(job);
  const solver::BeamPlaces places = solver::places_of_beam(job);
  const double stone_bottom = places.padstones.front().y.from;
  const double reach = std::max(beam.bearing, beam.padstone.length) + 60.0;
  const mesh::Interval x{job.wall.cut.left - reach, job.wall.cut.right + reach};

  WallView view;
  view.scale = (page_width - left_room - right_room) / x.length();
  view.origin.x = left_room - view.scale * x.from;
  const double soffit_at = heading_height + 8.0 + wall_strip;
  view.origin.y = soffit_at + view.scale * job.wall.cut.soffit;
  const double bottom = stone_bottom - 30.0 / view.scale;
  const double stone_foot = view.down(stone_bottom);
  const double first_diagram = stone_foot + reaction_room + 4.0;

  const std::vector<LegendEntry> legend{
      line_entry(analysis_pen,
                 fmt::format("analysis of {}, {}", masonry_words(panel.model), stage.words)),
      line_entry(hand_pen, "by hand: everything over it, no arching"),
      arrow_entry(reaction_pen(), true, "what its ends give to the padstones")};
  const double legend_room = legend_height(legend, page_width - 8.0);
  const Size size{
      page_width,
      first_diagram + static_cast<double>(diagrams.size()) * diagram_height + legend_room + 8.0};

  return {
      size, [=, title = job.title](Canvas& canvas) {
        draw_heading(canvas, heading_with("Permanent beam " + section_words(beam), stage), title);
        const auto masonry =
            view.at(masonry_beside(job, x, job.wall.cut.soffit + wall_strip / view.scale, bottom));
        canvas.fill(masonry, masonry_tint);
        canvas.hatch(masonry, {.pen = {.colour = coursing, .width = 0.5}, .spacing = 5.0});
        canvas.line(view.at({job.wall.cut.left, job.wall.cut.soffit}),
                    view.at({job.wall.cut.right, job.wall.cut.soffit}), {.width = 0.9});
        for (const double jamb : {job.wall.cut.left, job.wall.cut.right})
          canvas.line(view.at({jamb, job.wall.cut.soffit}), view.at({jamb, bottom}),
                      {.width = 0.9});
        draw_permanent_works(canvas, view, job, stage.works);
        const auto draw_end = [&](double at, double jamb, double analysis, double by_hand) {
          draw_end_load(canvas, view, {at, stone_bottom}, jamb, kilonewtons(analysis),
                        "by hand " + kilonewtons(by_hand));
        };
        draw_end(places.supports.from, job.wall.cut.left, answer.reaction_left, hand.reaction_left);
        draw_end(places.supports.to, job.wall.cut.right, answer.reaction_right,
                 hand.reaction_right);
        for (const double end : {places.supports.from, places.supports.to})
          canvas.line({view.across(end), first_diagram},
                      {view.across(end),
                       first_diagram + static_cast<double>(diagrams.size()) * diagram_height},
                      {.colour = quiet_ink, .width = 0.3, .dash = {1.0, 2.0}});
        double top = first_diagram;
        for (const Diagram& diagram : diagrams) {
          draw_diagram(canvas, view, diagram, answer.stations, hand.stations, top);
          top += diagram_height;
        }
        draw_legend(canvas, legend, {4.0, size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
