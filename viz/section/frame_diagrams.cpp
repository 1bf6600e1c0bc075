#include "viz/section/frame_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace deadshore::viz {
namespace {

using solver::NeedleStation;

constexpr double label_room = 10.0;
constexpr double gap = 4.0;  ///< between diagrams
const TextStyle value_style{.size = 7.0};
constexpr Colour curve_tint{0.85, 0.89, 0.94};

/// One diagram: what it shows, and its values as they are drawn, upwards positive.
struct Diagram {
  std::string name;
  std::string note;
  std::string unit;
  double largest = 0.0;           ///< by size, between the points too
  std::vector<PagePoint> points;  ///< x on the page, y the value
};

/// A station's value in the unit of the diagram, upwards positive on the page.
using Measure = double (*)(const NeedleStation&);

std::vector<PagePoint> points_of(const FramePage& page, const ShownFrame& shown, Measure measure) {
  std::vector<PagePoint> points;
  for (const NeedleStation& station : shown.design.answer.stations) {
    const double value = measure(station);
    if (std::isfinite(value)) points.push_back({page.view.across(station.z), value});
  }
  return points;
}

std::string deflection_note(const solver::NeedleAnswer& answer) {
  if (!std::isfinite(answer.bending_deflection)) return "props and ground give";
  return fmt::format("{} mm of it is bending", short_number(answer.bending_deflection));
}

/// The size of an extreme, over it or under it.
void label_extreme(Canvas& canvas, const Diagram& diagram, PagePoint at, double size, bool over) {
  const std::string text = fmt::format("{} {}", short_number(size), diagram.unit);
  const double half = 0.5 * text_size(text, value_style).width;
  const double x = std::clamp(
      at.x, diagram.points.front().x + half - 4.0,
      std::max(diagram.points.front().x + half - 4.0, diagram.points.back().x - half + 4.0));
  canvas.text({x, over ? at.y - 0.8 : at.y + 0.8}, text, value_style, {0.5, over ? 1.0 : 0.0});
}

/// Draws the diagram, its name left of `left`.
void draw_diagram(Canvas& canvas, const Diagram& diagram, double left, double top) {
  canvas.text({left - 12.0, top + 0.5 * diagram_pitch}, diagram.name, {.size = 7.5, .bold = true},
              {1.0, 1.0});
  canvas.text({left - 12.0, top + 0.5 * diagram_pitch + 1.0}, diagram.note,
              {.size = 7.0, .colour = quiet_ink}, {1.0, 0.0});
  if (diagram.points.size() < 2) return;
  const auto [low, high] =
      std::minmax_element(diagram.points.begin(), diagram.points.end(),
                          [](const PagePoint& a, const PagePoint& b) { return a.y < b.y; });
  const double least = std::min(0.0, low->y);
  const double most = std::max(0.0, high->y);
  const double room = diagram_pitch - 2.0 * label_room - gap;
  const double per_unit = most > least ? room / (most - least) : 0.0;
  const double zero = top + label_room + per_unit * most;
  Loop outline{{diagram.points.front().x, zero}};
  for (const PagePoint& point : diagram.points)
    outline.push_back({point.x, zero - per_unit * point.y});
  outline.push_back({diagram.points.back().x, zero});
  canvas.fill(std::array{outline}, curve_tint);
  std::vector<PagePoint> curve;
  for (std::size_t i = 0; i + 1 < outline.size(); ++i)
    curve.insert(curve.end(), {outline[i], outline[i + 1]});
  canvas.strokes(curve, {.colour = support, .width = 1.0});
  canvas.line(outline.front(), outline.back(), {.colour = ink, .width = 0.7});
  const double worth_saying = 0.02 * (most - least);
  const double greatest = std::max(-least, most);
  const auto label = [&](const PagePoint& at, double size, bool over) {
    if (size <= worth_saying) return;
    const double exact = size < greatest ? size : std::fmax(size, diagram.largest);
    label_extreme(canvas, diagram, {at.x, zero - per_unit * at.y}, exact, over);
  };
  label(*low, -least, false);
  label(*high, most, true);
}

}  // namespace

void draw_frame_diagrams(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  const double bottom = page.diagrams + 3.0 * diagram_pitch - label_room - gap;
  std::vector<double> guides{-0.5 * shown.wall_thickness, 0.5 * shown.wall_thickness};
  for (const solver::NeedleProp& prop : shown.frame.props) guides.push_back(shown.place(prop));
  for (const double z : guides)
    canvas.line({page.view.across(z), page.diagrams}, {page.view.across(z), bottom},
                {.colour = quiet_ink, .width = 0.3, .dash = {1.0, 2.0}});
  const solver::NeedleAnswer& answer = shown.design.answer;
  const std::array diagrams{
      Diagram{"bending moment", "on the side in tension", "kNm", answer.largest_moment / 1e6,
              points_of(page, shown, [](const NeedleStation& s) { return -s.moment / 1e6; })},
      Diagram{"shear force", "", "kN", answer.largest_shear / 1e3,
              points_of(page, shown, [](const NeedleStation& s) { return s.shear / 1e3; })},
      Diagram{"deflection", deflection_note(answer), "mm", 0.0,
              points_of(page, shown, [](const NeedleStation& s) { return -s.deflection; })}};
  double top = page.diagrams;
  for (const Diagram& diagram : diagrams) {
    draw_diagram(canvas, diagram, page.view.across(shown.reach().from), top);
    top += diagram_pitch;
  }
}

}  // namespace deadshore::viz
