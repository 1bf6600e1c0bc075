#include "viz/page/dimensions.h"
#include "viz/section/frame_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace deadshore::viz {
namespace {

using solver::NeedleProp;
using solver::PropSide;

const Pen level_pen{.colour = quiet_ink, .width = 0.3, .dash = {1.0, 2.0}};

/// Heights at the outermost prop of a side: what it is set to, and the needle's depth.
void draw_heights(Canvas& canvas, const FramePage& page, const ShownFrame& shown, PropSide side) {
  const std::vector<NeedleProp> props = shown.standing(side);
  if (props.empty()) return;
  const bool inside = side == PropSide::inside;
  const NeedleProp& prop = inside ? props.back() : props.front();
  const double out = inside ? 1.0 : -1.0;
  const double chain = inside ? page.right_chain : page.left_chain;
  const double needle_end = page.view.across(inside ? shown.reach().to : shown.reach().from);
  const double sole_edge =
      page.view.across(shown.place(prop)) + out * page.view.scale * shown.half_foot(prop);

  std::vector<DimensionStop> stops;
  const auto add = [&](double level, double from) {
    stops.push_back({page.view.down(level), level});
    canvas.line({from + out * 1.5, page.view.down(level)}, {chain, page.view.down(level)},
                level_pen);
  };
  add(prop.level + prop.footing.sole.timber.section.h, sole_edge);
  add(shown.needle_bottom(), needle_end);
  add(shown.needle_top(), needle_end);
  draw_upright_dimensions(canvas, sorted_stops(stops), chain);
}

/// How high the soffit is, on the outside.
void draw_soffit_level(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  const double y = page.view.down(shown.soffit);
  const double face = page.view.across(-0.5 * shown.wall_thickness);
  const Rect words =
      canvas.text({4.0, y - 1.0}, fmt::format("soffit {:.0f} above the base", shown.soffit),
                  {.size = 7.0, .colour = quiet_ink}, {0.0, 1.0});
  canvas.line({std::min(words.left, face), y}, {face, y}, level_pen);
}

}  // namespace

void draw_frame_dimensions(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  draw_heights(canvas, page, shown, PropSide::outside);
  draw_heights(canvas, page, shown, PropSide::inside);
  draw_soffit_level(canvas, page, shown);

  const auto stop = [&](double z) { return DimensionStop{page.view.across(z), z}; };
  const mesh::Interval reach = shown.reach();
  const double face = 0.5 * shown.wall_thickness;
  std::vector<DimensionStop> places{stop(-face), stop(face)};
  for (const NeedleProp& prop : shown.frame.props) places.push_back(stop(shown.place(prop)));
  places = sorted_stops(places);
  const double first = page.level_chain;
  draw_level_dimensions(canvas, places, first, first - 5.0);
  const double second = first + dimension_pitch;
  draw_level_dimensions(
      canvas, sorted_stops({stop(reach.from), places.front(), places.back(), stop(reach.to)}),
      second, second - 5.0);
  const double left = page.view.across(reach.from) - 12.0;
  const TextStyle name{.size = 7.0, .colour = quiet_ink};
  canvas.text({left, first}, "props and wall", name, {1.0, 0.6});
  canvas.text({left, second}, "needle", name, {1.0, 0.6});
}

}  // namespace deadshore::viz
