#include "viz/section/frame_view.h"

#include "viz/page/dimensions.h"
#include "viz/section/frame_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

namespace deadshore::viz {

namespace {

using solver::NeedleProp;
using solver::PropAction;

constexpr double usual_height = 606.0;   ///< the tallest that the note prints at full width
constexpr double side_room = 112.0;      ///< beside the frame: heights, and the props' particulars
constexpr double load_room = 37.0;       ///< over the wall: its load
constexpr double prop_head_room = 48.0;  ///< over what a prop is wedged against: its load
constexpr double foot_room = 26.0;       ///< under the ground: the arrow of a prop's load
constexpr double chain_room = 10.0 + 2.0 * dimension_pitch;

/// How much wall is shown over the soffit, mm.
double stub_of(double frame_height) {
  return std::clamp(0.17 * frame_height, 250.0, 550.0);
}

/// The page with a number of rows under the props' feet.
FramePage page_with(const ShownFrame& shown, double legend_height, int foot_rows) {
  FramePage page;
  mesh::Interval across = shown.reach();
  double highest = -std::numeric_limits<double>::infinity();
  for (const NeedleProp& prop : shown.frame.props) {
    const double half = shown.half_foot(prop);
    across = {std::min(across.from, shown.place(prop) - half),
              std::max(across.to, shown.place(prop) + half)};
    page.deepest = std::min(page.deepest, prop.level);
    if (prop.action == PropAction::down) highest = std::max(highest, prop.level);
  }
  page.wall_top = shown.soffit + stub_of(shown.soffit - page.deepest);
  const double above = heading_height + 4.0;
  const double below =
      foot_room + foot_rows * foot_row + chain_room + 3.0 * diagram_pitch + legend_height + 8.0;

  const double wide = page_width - 2.0 * side_room;
  const auto scale_under = [&](double room, double top) {
    return (usual_height - above - room - below) / (top - page.deepest);
  };
  double scale = std::min(wide / across.length(), scale_under(load_room, page.wall_top));
  if (std::isfinite(highest)) scale = std::min(scale, scale_under(prop_head_room, highest));

  page.view.scale = scale;
  page.view.origin.x = 0.5 * page_width - scale * across.middle();
  page.view.origin.y =
      above + std::max(load_room + scale * page.wall_top,
                       std::isfinite(highest) ? prop_head_room + scale * highest : 0.0);
  page.left_chain = page.view.across(across.from) - 13.0;
  page.right_chain = page.view.across(across.to) + 24.0;
  page.level_chain = page.view.down(page.deepest) + foot_room + foot_rows * foot_row + 10.0;
  page.diagrams = page.level_chain + chain_room - 14.0;
  page.legend = page.diagrams + 3.0 * diagram_pitch + 4.0;
  page.size = {page_width, page.legend + legend_height + 2.0};
  return page;
}

/// In which row each prop's load stands so that none runs into its neighbour's.
std::vector<int> foot_rows_of(const ShownFrame& shown, const WallView& view) {
  const auto& props = shown.frame.props;
  std::vector<std::size_t> order(props.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return shown.place(props[a]) < shown.place(props[b]);
  });
  std::vector<int> rows(props.size(), 0);
  double taken = -std::numeric_limits<double>::infinity();
  for (const std::size_t i : order) {
    if (props[i].action == PropAction::down) continue;
    const double half = 0.5 * std::max(text_size(props[i].mark, foot_mark_style).width,
                                       text_size(foot_value(shown, i), foot_value_style).width);
    const double x = view.across(shown.place(props[i]));
    if (x - half < taken + 3.0)
      rows[i] = 1;
    else
      taken = x + half;
  }
  return rows;
}

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

mesh::Interval ShownFrame::reach() const {
  if (!design.answer.stations.empty())
    return {design.answer.stations.front().z, design.answer.stations.back().z};
  mesh::Interval ends{-0.5 * wall_thickness, 0.5 * wall_thickness};
  for (const NeedleProp& prop : frame.props)
    ends = {std::min(ends.from, place(prop)), std::max(ends.to, place(prop))};
  return {ends.from - frame.overhang, ends.to + frame.overhang};
}

double ShownFrame::half_foot(const NeedleProp& prop) const {
  return 0.5 * std::max(prop.footing.sole.prop_base, prop.footing.sole.timber.section.b);
}

std::vector<NeedleProp> ShownFrame::standing(solver::PropSide side) const {
  std::vector<NeedleProp> props;
  for (const NeedleProp& prop : frame.props)
    if (prop.side == side && prop.action == PropAction::up) props.push_back(prop);
  std::stable_sort(props.begin(), props.end(), [this](const NeedleProp& a, const NeedleProp& b) {
    return place(a) < place(b);
  });
  return props;
}

double ShownFrame::prop_load(std::size_t index) const {
  return index < design.answer.props.size() ? design.answer.props[index].load : std::nan("");
}

ShownFrame shown_frame(const solver::JobResult& result, const solver::NeedleDesign& design) {
  ShownFrame shown;
  const auto& needles = result.job.needles;
  const solver::Needle& needle = needles.at(index_of(design.needle));
  shown.frame = result.job.needle_frames.at(needle.frame.value());
  shown.design = design;
  shown.wall_thickness = result.job.thickness;
  shown.soffit = result.job.wall.cut.soffit;
  shown.needles =
      static_cast<int>(std::count_if(needles.begin(), needles.end(), [&](const auto& entry) {
        return entry.frame == needle.frame;
      }));
  return shown;
}

std::string foot_value(const ShownFrame& shown, std::size_t prop) {
  const double load = shown.prop_load(prop);
  return std::isfinite(load) ? kilonewtons(load) : std::string();
}

FramePage fit_frame(const ShownFrame& shown, double legend_height) {
  FramePage page = page_with(shown, legend_height, 1);
  page.foot_rows = foot_rows_of(shown, page.view);
  if (std::count(page.foot_rows.begin(), page.foot_rows.end(), 1) == 0) return page;
  page = page_with(shown, legend_height, 2);
  page.foot_rows = foot_rows_of(shown, page.view);
  return page;
}

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
