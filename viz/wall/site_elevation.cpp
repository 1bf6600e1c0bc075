#include "solver/result/result_stages.h"
#include "viz/figures.h"
#include "viz/page/dimensions.h"
#include "viz/stages/stage_works.h"
#include "viz/wall/elevation_parts.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/region.h"
#include "viz/wall/works_marks.h"

#include <algorithm>
#include <array>
#include <vector>

namespace deadshore::viz {
namespace {

constexpr double site_width = 204.0;   // 72 mm, as it stands on the sheet
constexpr double most_height = 232.0;  // the wall alone
constexpr double side_margin = 16.0;
constexpr double over_wall = 6.0;
constexpr double mark_height = 5.0;

/// The wall across the page, or as high as there is room for.
WallView site_view(const mesh::WallShape& wall) {
  const double scale =
      std::min((site_width - 2.0 * side_margin) / wall.length, most_height / wall.height());
  const double left = 0.5 * (site_width - scale * wall.length);
  return {scale, {left, over_wall + scale * wall.height()}};
}

Loop triangle_of(const WallView& view, const SiteMark& mark) {
  const PagePoint tip = view.at(mark.at);
  const double half = 0.6 * mark_height;
  return {tip, {tip.x - half, tip.y - mark_height}, {tip.x + half, tip.y - mark_height}};
}

/// Filled triangles that point at the places, their names over them in as few rows as there is
/// room for.
void draw_marks(Canvas& canvas, const WallView& view, const std::vector<SiteMark>& marks,
                LabelRoom& room) {
  const TextStyle style{.size = 7.0, .bold = true};
  for (const SiteMark& mark : marks) {
    const Loop triangle = triangle_of(view, mark);
    canvas.fill(std::array{triangle}, ink);
    room.take({triangle[1].x, triangle[1].y, triangle[2].x, triangle[0].y});
  }
  for (const SiteMark& mark : marks) {
    const PagePoint tip = view.at(mark.at);
    std::vector<Rect> rows;
    rows.reserve(4);
    for (int row = 0; row < 4; ++row)
      rows.push_back(plate_box({tip.x, tip.y - mark_height - 6.0 - 9.5 * row}, mark.name, style));
    draw_plate(canvas, room, mark.name, style, rows);
  }
}

void draw_names(Canvas& canvas, const WallView& view, const solver::Job& job,
                const solver::StageState& works, LabelRoom& room) {
  std::vector<NeedleText> texts;
  for (const solver::Needle& needle : job.needles) texts.push_back({needle.name, "", false});
  draw_needles(canvas, view, job, texts, room, setting_of(view, job, works));
}

/// Needles from the cut's left edge to its right, and under it the cut in the wall.
void draw_chains(Canvas& canvas, const WallView& view, const solver::Job& job) {
  const auto stop = [&](double x) { return DimensionStop{view.across(x), x}; };
  const mesh::Cut& cut = job.wall.cut;
  std::vector<DimensionStop> needles{stop(cut.left), stop(cut.right)};
  for (const solver::Needle& needle : job.needles) needles.push_back(stop(needle.x));
  const double y = view.down(0.0) + 14.0;
  draw_level_dimensions(canvas, sorted_stops(needles), y, y - 5.0);
  const std::vector<DimensionStop> edges =
      sorted_stops({stop(0.0), stop(cut.left), stop(cut.right), stop(job.wall.length)});
  draw_level_dimensions(canvas, edges, y + dimension_pitch, y + dimension_pitch - 5.0);
}

Drawing site_elevation(const solver::JobResult& result, const std::vector<SiteMark>& marks) {
  const solver::Job& job = result.job;
  const solver::StageState works = works_in_the_end(job);
  const WallView view = site_view(job.wall);
  const Size size{site_width, view.down(0.0) + 14.0 + 2.0 * dimension_pitch};
  const Region region = region_of(result.mesh.quads, quads_as_cut(result));
  return {size, [=](Canvas& canvas) {
            LabelRoom room({0.0, 0.0, size.width, size.height});
            const std::vector<Loop> outline = view.at(region);
            canvas.fill(outline, masonry_tint);
            draw_coursing(canvas, view, job.wall, outline);
            draw_lintels_there(canvas, view, job.wall, works, LintelStyle::filled);
            canvas.outline(outline, {.colour = ink, .width = 1.1});
            draw_ground(canvas, view, job.wall);
            draw_permanent_works(canvas, view, job, works);
            if (is_staged(result)) draw_taken_out(canvas, view, job.wall);
            draw_cut(canvas, view, job);
            draw_chains(canvas, view, job);
            draw_names(canvas, view, job, works, room);
            draw_marks(canvas, view, marks, room);
          }};
}

}  // namespace

std::string site_elevation_svg(const solver::JobResult& result,
                               const std::vector<SiteMark>& marks) {
  return to_svg(site_elevation(result, marks));
}

}  // namespace deadshore::viz
