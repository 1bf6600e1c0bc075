#include "solver/fem/point_location.h"
#include "viz/drawings.h"
#include "viz/page/legend.h"
#include "viz/page/round_number.h"
#include "viz/wall/crack_map.h"
#include "viz/wall/panel_marks.h"
#include "viz/wall/region.h"
#include "viz/wall/works_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using solver::PanelResult;

constexpr double drawn_share = 0.05;  ///< of the wall's size: the largest movement drawn at most
constexpr double net_pitch = 20.0;    ///< of the lines that move with the wall, points
const Pen moved_pen{.colour = ink, .width = 1.3};
const Pen net_pen{.colour = {0.72, 0.66, 0.58}, .width = 0.45};
const Pen settled_pen{.colour = tension, .width = 1.4};

/// Movement of masonry that is there and not loose, between its nodes too.
class Movement {
 public:
  Movement(const mesh::QuadMesh& mesh, std::span<const char> sound, std::vector<double> of_nodes)
      : finder_(mesh, sound), of_nodes_(std::move(of_nodes)) {}

  /// mm; nothing where there is no such masonry.
  [[nodiscard]] std::optional<mesh::Point> at(mesh::Point p) const {
    const auto place = finder_.shares_at(p);
    if (!place || of_nodes_.empty()) return std::nullopt;
    mesh::Point sum;
    for (std::size_t i = 0; i < place->nodes.size(); ++i) {
      const auto node = static_cast<std::size_t>(place->nodes[i]);
      sum.x += place->shares[i] * of_nodes_[2 * node];
      sum.y += place->shares[i] * of_nodes_[2 * node + 1];
    }
    if (!std::isfinite(sum.x + sum.y)) return std::nullopt;
    return sum;
  }

 private:
  solver::QuadFinder finder_;
  std::vector<double> of_nodes_;
};

/// Draws a straight line of the wall where it has gone to, broken where there is no masonry.
void draw_moved_line(Canvas& canvas, const WallView& view, const Movement& movement, double factor,
                     mesh::Point from, mesh::Point to) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const int steps = std::max(2, static_cast<int>(std::lround(length * view.scale / 4.0)));
  std::vector<PagePoint> path;
  const auto end_path = [&] {
    if (path.size() > 1) canvas.path(path, net_pen);
    path.clear();
  };
  for (int i = 0; i <= steps; ++i) {
    const double part = static_cast<double>(i) / steps;
    const mesh::Point p{from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)};
    const auto by = movement.at(p);
    if (by)
      path.push_back(view.at({p.x + factor * by->x, p.y + factor * by->y}));
    else
      end_path();
  }
  end_path();
}

/// Lines of courses and uprights that went with the wall.
void draw_net(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
              const Movement& movement, double factor) {
  const double pitch = readable_pitch(300.0, view.scale, net_pitch);  // four courses and more
  const double top = wall.height();
  for (double y = pitch; y < top; y += pitch)
    draw_moved_line(canvas, view, movement, factor, {0.0, y}, {wall.length, y});
  const double first = std::fmod(0.5 * wall.length, pitch);
  for (double x = first; x < wall.length; x += pitch)
    draw_moved_line(canvas, view, movement, factor, {x, 0.0}, {x, top});
}

struct Settled {
  mesh::Point at;
  double down = 0.0;  ///< mm
};

/// The node of sound masonry that went down most.
std::optional<Settled> most_settled(const mesh::QuadMesh& mesh, const std::vector<char>& sound,
                                    const std::vector<double>& movement) {
  if (movement.size() != 2 * mesh.nodes.size()) return std::nullopt;
  std::optional<Settled> most;
  const std::vector<char> there = nodes_there(mesh, sound);
  for (std::size_t node = 0; node < there.size(); ++node) {
    const double down = -movement[2 * node + 1];
    if (there[node] == 0 || !std::isfinite(down + movement[2 * node])) continue;
    if (down > (most ? most->down + 1e-9 : 0.0)) most = Settled{mesh.nodes[node], down};
  }
  return most;
}

void mark_settled(Canvas& canvas, const WallView& view, const Settled& settled, double factor,
                  LabelRoom& room) {
  const PagePoint from = view.at(settled.at);
  const PagePoint to{from.x, from.y + view.scale * factor * settled.down};
  canvas.line({from.x - 6.0, from.y}, {from.x + 6.0, from.y}, settled_pen);
  canvas.arrow(from, to, settled_pen);
  room.take({from.x - 6.0, from.y, from.x + 6.0, to.y});
  const TextStyle style{.size = 8.0, .bold = true};
  const std::string text = "largest settlement " + crack_width(settled.down);
  const Rect start = plate_box({from.x, to.y + 8.0}, text, style);
  draw_plate(canvas, room, text, style, boxes_around(start, {5.0, 4.0}, 16));
}

/// Needles where they have gone to, each with how far it went down.
void draw_moved_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                        const solver::StageState& works, const Movement& movement, double factor,
                        LabelRoom& room) {
  std::vector<NeedleText> texts;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const solver::Needle& needle = job.needles[i];
    const bool there = i < works.needles.size() && solver::is_in(works.needles[i]);
    const auto by = movement.at({needle.x, job.wall.cut.soffit + 1.0});
    NeedleText text{needle.name, by ? crack_width(-by->y) : "", false, there};
    if (by) text.moved = -view.scale * factor * by->y;
    texts.push_back(text);
  }
  draw_needles(canvas, view, job, texts, room, setting_of(view, job, works));
}

/// A length on the page that stands for a round part of a millimetre.
LegendEntry scale_entry(double view_scale, double factor) {
  const double movement = largest_round(18.0 / (view_scale * factor));
  const double length = movement * factor * view_scale;
  return {[length](Canvas& canvas, const Rect& box) {
            const double y = box.middle().y;
            const double left = box.middle().x - 0.5 * length;
            canvas.line({left, y}, {left + length, y}, {.width = 1.0});
            for (const double x : {left, left + length})
              canvas.line({x, y - 2.5}, {x, y + 2.5}, {.width = 0.8});
          },
          fmt::format("{} mm of movement", short_number(movement))};
}

}  // namespace

std::vector<double> movement_shown(const JobResult& result, const PanelResult& panel) {
  std::vector<double> movement = panel.fields.displacement;
  if (!is_staged(result) || result.stages.size() < 2) return movement;
  for (const PanelResult& first : result.stages.front().analyses) {
    if (first.model != panel.model || !first.stands()) continue;
    const std::vector<double>& before = first.fields.displacement;
    if (before.size() != movement.size()) continue;
    for (std::size_t i = 0; i < movement.size(); ++i) movement[i] -= before[i];
  }
  return movement;
}

std::vector<char> masonry_that_moved(const JobResult& result, const PanelResult& panel) {
  std::vector<char> moved = sound_masonry(result.mesh.quads, panel.fields);
  for (const solver::StageResult& stage : result.stages)
    for (const PanelResult& before : stage.analyses) {
      if (&before == &panel) return moved;
      const std::vector<char>& out = before.fields.quad_out;
      if (out.size() != moved.size()) continue;
      for (std::size_t quad = 0; quad < moved.size(); ++quad)
        if (out[quad] != 0) moved[quad] = 0;
    }
  return moved;
}

double largest_settlement(const JobResult& result, const PanelResult& panel) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const auto most =
      most_settled(mesh, masonry_that_moved(result, panel), movement_shown(result, panel));
  return most ? most->down : 0.0;
}

double movement_factor(const JobResult& result, std::span<const std::size_t> stages) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  double largest = 0.0;
  for (const std::size_t stage : stages)
    for (const PanelResult& panel : result.stages.at(stage).analyses)
      if (panel.stands())
        largest = std::max(largest, largest_movement(mesh, masonry_that_moved(result, panel),
                                                     movement_shown(result, panel)));
  const mesh::WallShape& wall = result.job.wall;
  if (!(largest > 0.0)) return 1.0;
  return std::max(1.0, largest_round(drawn_share * std::max(wall.length, wall.height()) / largest));
}

Drawing deformed_wall(const JobResult& result, const PanelResult& panel, const ShownStage& stage,
                      double factor) {
  const solver::Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> sound = masonry_that_moved(result, panel);
  const std::vector<double> nodes = movement_shown(result, panel);
  const Region moved = moved_outline(mesh, sound, nodes, factor);
  const Region still = region_of(mesh, sound);
  const auto most = most_settled(mesh, sound, nodes);

  std::vector<LegendEntry> legend{
      line_entry(before_pen, is_staged(result) ? "before the work" : "before it moved"),
      line_entry(moved_pen, fmt::format("as it moved, drawn {:.0f} times as large", factor))};
  const auto works_entries = works_legend(job, stage.works);
  const auto finish_legend = [&](double scale) {
    legend.push_back(scale_entry(scale, factor));
    if (!panel.loose.empty())
      legend.push_back(hatch_entry(loose_hatch(), "loose masonry: its movement means nothing"));
    legend.insert(legend.end(), works_entries.begin(), works_entries.end());
  };
  // The scale does not change how many lines the legend takes by more than one.
  Margins margins{14.0, 14.0, heading_height + 8.0, 0.0};
  add_room_for(moved, job.wall, fit_wall(job.wall, margins).view.scale, margins);
  finish_legend(fit_wall(job.wall, margins).view.scale);
  const double legend_room = legend_height(legend, page_width - 8.0);
  margins.bottom = 12.0 + legend_room;
  const WallPage page = fit_wall(job.wall, margins);
  legend[2] = scale_entry(page.view.scale, factor);

  return {
      page.size, [=, &result, &panel](Canvas& canvas) {
        const solver::Job& drawn = result.job;
        const WallView& view = page.view;
        const Movement movement(result.mesh.quads, sound, nodes);
        LabelRoom room(
            {0.0, heading_height, page.size.width, page.size.height - legend_room - 4.0});
        draw_heading(canvas, heading_with("How it moves, " + masonry_words(panel.model), stage),
                     drawn.title);
        // Under the wall, which bends down over the beam's place.
        draw_permanent_works(canvas, view, drawn, stage.works);
        canvas.fill(view.at(moved), masonry_tint);
        draw_net(canvas, view, drawn.wall, movement, factor);
        canvas.outline(view.at(still), before_pen);
        draw_ground(canvas, view, drawn.wall);
        draw_held_ends(canvas, view, drawn);
        draw_dead_shores(canvas, view, drawn, stage.works, nullptr, room);
        draw_loose(canvas, view, result.mesh.quads, panel);
        canvas.outline(view.at(moved), moved_pen);
        draw_moved_needles(canvas, view, drawn, stage.works, movement, factor, room);
        if (most) mark_settled(canvas, view, *most, factor, room);
        draw_legend(canvas, legend, {4.0, page.size.height - legend_room - 2.0}, page_width - 8.0);
      }};
}

}  // namespace deadshore::viz
