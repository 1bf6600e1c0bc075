#include "viz/drawings.h"
#include "viz/legend.h"
#include "viz/panel_marks.h"
#include "viz/works_marks.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <set>
#include <utility>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::JobResult;
using solver::PanelResult;

constexpr double grid = 10.0;     ///< between crosses on the page, points
constexpr double smallest = 0.5;  ///< half length below which nothing is drawn, points
const Pen compression_pen{.colour = ink, .width = 0.85};
const Pen tension_pen{.colour = tension, .width = 0.7, .dash = {1.8, 0.9}};
const Pen spread_pen{.colour = support, .width = 1.0, .dash = {5.0, 3.0}};

/// Half the length of an arm, points, for a stress that is this part of the full one. It grows with
/// the root, so that the direction shows where little flows too.
double half_length(double part) {
  return 0.47 * grid * std::sqrt(std::min(1.0, part));
}

struct Cross {
  PagePoint at;
  solver::Principal stress;
};

bool inside(const std::array<mesh::Point, 4>& corners, mesh::Point p) {
  for (std::size_t i = 0; i < 4; ++i) {
    const mesh::Point& a = corners[i];
    const mesh::Point& b = corners[(i + 1) % 4];
    if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) < 0.0) return false;
  }
  return true;
}

/// Stress at the points of an even grid that fall on masonry which is there and not loose; the grid
/// is symmetric about the wall's middle.
std::vector<Cross> crosses_on_grid(const WallView& view, const mesh::WallShape& wall,
                                   const mesh::QuadMesh& mesh, const solver::PanelFields& fields,
                                   const std::vector<char>& there) {
  std::vector<Cross> crosses;
  if (static_cast<int>(fields.quad_stress.size()) != mesh.quad_count()) return crosses;
  const bool marked = static_cast<int>(fields.quad_loose.size()) == mesh.quad_count();
  const double pitch = grid / view.scale;
  const double left = 0.5 * wall.length;
  const double foot = 0.5 * pitch;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (marked && fields.quad_loose[quad] != 0) continue;
    if (!there.empty() && there[quad] == 0) continue;
    const solver::PlaneTensor& stress = fields.quad_stress[quad];
    if (!std::isfinite(stress.xx + stress.yy + stress.xy)) continue;
    const auto corners = mesh::corners_of(mesh, quad);
    const auto [x_low, x_high] =
        std::minmax({corners[0].x, corners[1].x, corners[2].x, corners[3].x});
    const auto [y_low, y_high] =
        std::minmax({corners[0].y, corners[1].y, corners[2].y, corners[3].y});
    for (double i = std::ceil((x_low - left) / pitch); left + i * pitch < x_high; ++i)
      for (double j = std::ceil((y_low - foot) / pitch); foot + j * pitch < y_high; ++j) {
        const mesh::Point point{left + i * pitch, foot + j * pitch};
        if (inside(corners, point))
          crosses.push_back({view.at(point), solver::principal_of(stress)});
      }
  }
  return crosses;
}

/// Adds an arm of the cross, `angle` from the x axis.
void add_arm(std::vector<PagePoint>& strokes, PagePoint at, double value, double angle,
             double full) {
  const double half = half_length(std::abs(value) / full);
  if (!(half >= smallest)) return;
  const double dx = half * std::cos(angle);
  const double dy = -half * std::sin(angle);
  strokes.insert(strokes.end(), {{at.x - dx, at.y - dy}, {at.x + dx, at.y + dy}});
}

void draw_crosses(Canvas& canvas, const std::vector<Cross>& crosses, double full) {
  std::vector<PagePoint> pressed;
  std::vector<PagePoint> pulled;
  for (const Cross& cross : crosses) {
    const solver::Principal& stress = cross.stress;
    add_arm(stress.major < 0.0 ? pressed : pulled, cross.at, stress.major, stress.angle, full);
    add_arm(stress.minor < 0.0 ? pressed : pulled, cross.at, stress.minor,
            stress.angle + 0.5 * M_PI, full);
  }
  canvas.strokes(pulled, tension_pen);
  canvas.strokes(pressed, compression_pen);
}

void draw_spreads(Canvas& canvas, const WallView& view, const solver::SpreadResult& hand,
                  std::span<const Loop> wall) {
  using Whole = std::pair<double, double>;
  const auto rounded = [](mesh::Point p) { return Whole{std::round(p.x), std::round(p.y)}; };
  std::set<std::pair<Whole, Whole>> sides;
  for (const solver::SpreadSum& sum : hand.needles) {
    if (sum.outline.size() < 3) continue;
    const std::array loops{view.at(sum.outline)};
    canvas.clipped(wall, [&] { canvas.fill(loops, support, 0.06); });
    for (std::size_t i = 0; i < sum.outline.size(); ++i) {
      const mesh::Point& a = sum.outline[i];
      const mesh::Point& b = sum.outline[(i + 1) % sum.outline.size()];
      // Neighbours share an upright; twice dashed it would look full.
      const Whole from = rounded(a);
      const Whole to = rounded(b);
      sides.emplace(std::min(from, to), std::max(from, to));
    }
  }
  for (const auto& [a, b] : sides)
    canvas.line(view.at({a.first, a.second}), view.at({b.first, b.second}), spread_pen);
}

/// The spreads of the needles that are in.
solver::SpreadResult spreads_in(solver::SpreadResult hand, const solver::StageState& works) {
  std::vector<solver::SpreadSum> in;
  for (std::size_t i = 0; i < hand.needles.size() && i < works.needles.size(); ++i)
    if (solver::is_in(works.needles[i])) in.push_back(std::move(hand.needles[i]));
  hand.needles = std::move(in);
  return hand;
}

std::vector<LegendEntry> legend_of(const PanelResult& panel, double full, bool spreads) {
  const auto length_entry = [](double part, const std::string& text) {
    const double half = half_length(part);
    return LegendEntry{
        [half](Canvas& canvas, const Rect& box) {
          const PagePoint middle = box.middle();
          canvas.line({middle.x - half, middle.y}, {middle.x + half, middle.y}, compression_pen);
        },
        text};
  };
  std::vector<LegendEntry> entries{
      length_entry(1.0,
                   fmt::format("principal compression of {} N/mm² and more", short_number(full))),
      length_entry(0.2, fmt::format("of {} N/mm²", short_number(0.2 * full))),
      line_entry(tension_pen, "principal tension, same scale")};
  if (spreads) entries.push_back(line_entry(spread_pen, "45-degree spread of the hand method"));
  if (!panel.loose.empty()) entries.push_back(hatch_entry(loose_hatch(), "loose masonry"));
  return entries;
}

}  // namespace

double full_length_stress(const JobResult& result) {
  std::vector<double> values;
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& panel : stage.analyses) {
      if (!panel.stands()) continue;
      const std::vector<char> there = quads_there(result.mesh.quads, panel.fields);
      for (std::size_t i = 0; i < panel.fields.quad_stress.size(); ++i) {
        if (!there.empty() && there.at(i) == 0) continue;
        const double value = -solver::principal_of(panel.fields.quad_stress[i]).minor;
        if (std::isfinite(value)) values.push_back(value);
      }
    }
  if (values.empty()) return 1.0;
  const auto rank = values.begin() + static_cast<std::ptrdiff_t>(0.85 * (values.size() - 1));
  std::nth_element(values.begin(), rank, values.end());
  return even_scale(*rank).upper();
}

Drawing load_flow(const JobResult& result, const PanelResult& panel, const ShownStage& stage,
                  double full) {
  const Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> there = quads_there(mesh, panel.fields);
  const solver::SpreadResult hand = spreads_in(result.hand, stage.works);
  std::vector<LegendEntry> legend = legend_of(panel, full, !hand.needles.empty());
  const auto works_entries = works_legend(job, stage.works);
  legend.insert(legend.end(), works_entries.begin(), works_entries.end());
  const double legend_room = legend_height(legend, page_width - 8.0);
  const WallPage page = fit_wall(job.wall, {20.0, 20.0, heading_height + 4.0, 12.0 + legend_room});

  return {
      page.size, [=](Canvas& canvas) {
        const WallView& view = page.view;
        LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
        draw_heading(canvas,
                     heading_with("Where the load flows, " + masonry_words(panel.model), stage),
                     job.title);
        draw_lintels_there(canvas, view, job.wall, stage.works, LintelStyle::filled);
        draw_loose(canvas, view, mesh, panel);
        const std::vector<Loop> outline = view.at(region_of(mesh, there));
        draw_spreads(canvas, view, hand, outline);
        draw_crosses(canvas, crosses_on_grid(view, job.wall, mesh, panel.fields, there), full);
        canvas.outline(outline, {.colour = ink, .width = 0.9});
        draw_ground(canvas, view, job.wall);
        draw_held_ends(canvas, view, job);
        draw_permanent_works(canvas, view, job, stage.works);
        draw_dead_shores(canvas, view, job, stage.works, nullptr, room);
        draw_named_needles(canvas, view, job, stage.works, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
