#include "viz/drawings.h"
#include "viz/page/dimensions.h"
#include "viz/page/labels.h"
#include "viz/page/legend.h"
#include "viz/plan/plan_marks.h"
#include "viz/wall/wall_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace deadshore::viz {
namespace {

using mesh::Interval;
using solver::Job;

constexpr double left_room = 62.0;    ///< for dimensions across and the words of the sides
constexpr double right_room = 104.0;  ///< for what each row of props is
constexpr double most_height = 330.0;
constexpr double past_wall = 450.0;  ///< mm of the beam's way shown beyond the wall's ends
const Pen leader_pen{.colour = quiet_ink, .width = 0.3, .dash = {1.0, 2.0}};
const TextStyle name_style{.size = 7.5, .bold = true, .colour = support};
const TextStyle quiet_style{.size = 7.0, .colour = quiet_ink};

/// Where a name may stand: just past an edge of its box, then anywhere near.
void name_box(Canvas& canvas, LabelRoom& room, const Rect& box, const std::string& name,
              bool above) {
  const TextStyle style{.size = 7.5, .bold = true};
  const double y = above ? box.top - 6.0 : box.bottom + 6.0;
  draw_plate(canvas, room, name, style,
             boxes_around(plate_box({box.middle().x, y}, name, style), {3.0, 3.0}, 14));
}

/// The names of the needles over their outer ends; all upright where they are tight.
double names_height(const std::vector<PlanNeedle>& needles, double scale, bool& upright) {
  upright = false;
  double tallest = 0.0;
  double widest = 0.0;
  for (const PlanNeedle& needle : needles) {
    const Size size = text_size(needle.name, name_style);
    tallest = std::max(tallest, size.height);
    widest = std::max(widest, size.width);
    for (const PlanNeedle& other : needles)
      if (&other != &needle) {
        const double apart = scale * std::abs(other.box.x.middle() - needle.box.x.middle());
        const double due = 0.5 * (size.width + text_size(other.name, name_style).width) + 3.0;
        upright = upright || apart < due;
      }
  }
  return upright ? std::min(widest, 90.0) : tallest;
}

void draw_needle_names(Canvas& canvas, const PlanPage& page, const PlanParts& parts, bool upright,
                       LabelRoom& room) {
  TextStyle style = name_style;
  style.width = 90.0;
  style.overflow = Overflow::cut_middle;
  for (const PlanNeedle& needle : parts.needles) {
    const PagePoint foot{page.across(needle.box.x.middle()), page.down(parts.z.from) - 3.0};
    room.take(upright ? canvas.upright_text(foot, needle.name, style, {0.5, 1.0})
                      : canvas.text(foot, needle.name, style, {0.5, 1.0}));
  }
}

/// What a row of props is, at the right end of the row.
void name_rows(Canvas& canvas, const PlanPage& page, const PlanParts& parts, double x,
               LabelRoom& room) {
  std::map<std::pair<long, std::string>, double> rows;  // z and words -> right end
  const auto add = [&](const std::string& words, const PlanBox& box) {
    const auto [row, fresh] =
        rows.emplace(std::pair{std::lround(box.z.middle()), words}, page.across(box.x.to));
    if (!fresh) row->second = std::max(row->second, page.across(box.x.to));
  };
  for (const PlanProp& prop : parts.props) add(prop.kind, prop.base);
  for (const PlanProp& upright : parts.uprights) add(upright.kind, upright.base);
  const TextStyle style{.size = 7.0, .width = right_room - 14.0, .overflow = Overflow::wrap};
  for (const auto& [row, right] : rows) {
    const auto& [z, words] = row;
    const double y = page.down(static_cast<double>(z));
    const Size size = text_size(words, style);
    std::vector<Rect> places;
    for (double off = 0.0; off < 80.0; off += 2.0)
      for (const double side : {1.0, -1.0})
        places.push_back(box_at({x, y + side * off}, size, {0.0, 0.5}));
    const auto place = room.place(places);
    if (!place) continue;
    canvas.line({right + 2.0, y}, {x - 2.0, place->middle().y}, leader_pen);
    canvas.text({place->left, place->top}, words, style, {0.0, 0.0});
  }
}

struct Chain {
  std::string name;
  std::vector<DimensionStop> stops;
};

std::vector<Chain> lower_chains(const PlanPage& page, const Job& job, const PlanParts& parts) {
  const auto stop = [&](double x) { return DimensionStop{page.across(x), x}; };
  std::vector<Chain> chains;
  if (!parts.uprights.empty()) {
    std::vector<DimensionStop> stops{stop(0.0), stop(job.wall.length)};
    for (const PlanProp& upright : parts.uprights) stops.push_back(stop(upright.base.x.middle()));
    chains.push_back({"uprights", sorted_stops(stops)});
  }
  const mesh::Cut& cut = job.wall.cut;
  chains.push_back(
      {"cut", sorted_stops({stop(0.0), stop(cut.left), stop(cut.right), stop(job.wall.length)})});
  chains.push_back({"wall", {stop(0.0), stop(job.wall.length)}});
  return chains;
}

std::vector<DimensionStop> needle_stops(const PlanPage& page, const Job& job,
                                        const PlanParts& parts) {
  const auto stop = [&](double x) { return DimensionStop{page.across(x), x}; };
  std::vector<DimensionStop> stops{stop(job.wall.cut.left), stop(job.wall.cut.right)};
  for (const PlanNeedle& needle : parts.needles) stops.push_back(stop(needle.box.x.middle()));
  return sorted_stops(stops);
}

void draw_chains(Canvas& canvas, const PlanPage& page, const Job& job, const PlanParts& parts,
                 double needle_chain, double foot, double left) {
  const auto stop = [&](double x) { return DimensionStop{page.across(x), x}; };
  std::vector<DimensionStop> needles{stop(job.wall.cut.left), stop(job.wall.cut.right)};
  for (const PlanNeedle& needle : parts.needles) needles.push_back(stop(needle.box.x.middle()));
  if (!parts.needles.empty()) {
    draw_level_dimensions(canvas, needle_stops(page, job, parts), needle_chain, needle_chain - 3.0,
                          tight_rows);
    canvas.text({page.across(0.0) - 8.0, needle_chain}, "needles", quiet_style, {1.0, 0.6});
  }
  double y = foot + 12.0;
  for (const Chain& chain : lower_chains(page, job, parts)) {
    draw_level_dimensions(canvas, chain.stops, y, y - 3.0, tight_rows);
    canvas.text({page.across(0.0) - 8.0, y}, chain.name, quiet_style, {1.0, 0.6});
    y += level_pitch(chain.stops);
  }
  // Upwards on the page z falls, and a chain rises upwards.
  const auto across = [&](double z) { return DimensionStop{page.down(z), -z}; };
  const double half = 0.5 * job.thickness;
  std::vector<DimensionStop> stops{across(-half), across(half)};
  std::vector<DimensionStop> ends;
  for (const PlanNeedle& needle : parts.needles)
    if (needle.known)
      for (const double z : {needle.box.z.from, needle.box.z.to}) ends.push_back(across(z));
  stops.insert(stops.end(), ends.begin(), ends.end());
  for (const PlanProp& prop : parts.props) stops.push_back(across(prop.base.z.middle()));
  for (const PlanShore& shore : parts.shores) stops.push_back(across(shore.head.z.middle()));
  draw_upright_dimensions(canvas, sorted_stops(stops), left);
  if (!ends.empty()) {
    const auto sorted = sorted_stops(ends);
    draw_upright_dimensions(canvas, std::array{sorted.front(), sorted.back()},
                            left - dimension_pitch);
  }
}

void name_sides(Canvas& canvas, const PlanPage& page, const PlanParts& parts) {
  const TextStyle style{.size = 8.0, .bold = true, .colour = quiet_ink};
  const auto name = [&](const std::string& words, double z) {
    canvas.upright_text({6.0, page.down(z)}, words, style, {0.0, 0.5});
  };
  name("outside", 0.5 * std::min(parts.z.from, -60.0 / page.scale));
  name("inside", 0.5 * std::max(parts.z.to, 60.0 / page.scale));
}

}  // namespace

Drawing plan(const solver::JobResult& result) {
  const Job& job = result.job;
  PlanParts parts = plan_parts(result);
  const bool lifted = job.beam && job.lifting;
  Interval x{0.0, job.wall.length};
  PlanWay way;
  if (lifted) {
    way = plan_way(job);
    way.lane.x = {std::max(way.lane.x.from, -past_wall),
                  std::min(way.lane.x.to, job.wall.length + past_wall)};
    x = {std::min(x.from, way.lane.x.from), std::max(x.to, way.lane.x.to)};
    for (const auto* pieces : {&way.stands, &way.lifters})
      for (const PlanProp& piece : *pieces)
        parts.z = {std::min(parts.z.from, piece.base.z.from),
                   std::max(parts.z.to, piece.base.z.to)};
    parts.z = {std::min(parts.z.from, way.lane.z.from), std::max(parts.z.to, way.lane.z.to)};
  }
  for (const PlanBox& sole : parts.soles)
    x = {std::min(x.from, sole.x.from), std::max(x.to, sole.x.to)};
  const std::vector<LegendEntry> legend = plan_legend(job, parts);
  const double legend_room = legend_height(legend, page_width - 8.0);

  PlanPage page;
  page.scale = std::min((page_width - left_room - right_room) / x.length(),
                        most_height / std::max(parts.z.length(), 1.0));
  bool upright = false;
  const double names = names_height(parts.needles, page.scale, upright);
  const double needle_chain = heading_height + 16.0;
  page.origin.x = left_room - page.scale * x.from +
                  0.5 * (page_width - left_room - right_room - page.scale * x.length());
  const double top = needle_chain - 5.0 + level_pitch(needle_stops(page, job, parts)) + names + 5.0;
  page.origin.y = top - page.scale * parts.z.from;
  const double foot = page.down(parts.z.to);
  double chains = 0.0;
  for (const Chain& chain : lower_chains(page, job, parts)) chains += level_pitch(chain.stops);
  page.size = {page_width, foot + 12.0 + chains + legend_room + 4.0};

  return {
      page.size, [=, &result](Canvas& canvas) {
        const Job& drawn = result.job;
        LabelRoom room({0.0, needle_chain + 8.0, page_width, foot + 4.0});
        draw_heading(canvas, "Plan of needles and props", drawn.title);
        if (lifted) draw_lane(canvas, page, way);
        draw_soles(canvas, page, parts, room);
        draw_wall_band(canvas, page, drawn);
        room.take(
            page.at({{0.0, drawn.wall.length}, {-0.5 * drawn.thickness, 0.5 * drawn.thickness}}));
        draw_needles_from_above(canvas, page, parts, room);
        if (drawn.beam) draw_beam_from_above(canvas, page, drawn);
        if (lifted) draw_lifting(canvas, page, way, drawn, room);
        draw_needle_names(canvas, page, parts, upright, room);
        name_rows(canvas, page, parts, page.across(x.to) + 12.0, room);
        name_sides(canvas, page, parts);
        for (const PlanProp& stand : way.stands)
          name_box(canvas, room, page.at(stand.base), stand.kind, way.inwards < 0.0);
        for (const PlanProp& lifter : way.lifters)
          name_box(canvas, room, page.at(lifter.base), lifter.kind, way.inwards > 0.0);
        draw_chains(canvas, page, drawn, parts, needle_chain, foot, page.across(x.from) - 10.0);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
