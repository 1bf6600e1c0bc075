#include "io/sheet/monitoring.h"

#include "io/note/wording.h"
#include "io/results/stage_facts.h"
#include "solver/cracks/damage_scale.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace deadshore::io {
namespace {

using solver::PanelResult;
using solver::StageResult;

constexpr double beside_jamb = 200.0;  ///< mm from the jamb to a mark on a pier
constexpr double least_reach = 300.0;  ///< mm from a mark to the sound masonry it is fixed to
constexpr double rounding = 1e-9;

bool is_marked(const std::vector<char>& marks, int quad) {
  return !marks.empty() && marks[static_cast<std::size_t>(quad)] != 0;
}

/// The node of sound masonry above the soffit nearest to a mark; -1 where none is near.
int node_near(const solver::JobResult& result, const PanelResult& analysis, mesh::Point mark) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  double least = std::max(least_reach, 1.5 * result.mesh.size);
  int nearest = -1;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (is_marked(analysis.fields.quad_loose, quad) || is_marked(analysis.fields.quad_out, quad)) {
      continue;
    }
    const auto corners = mesh::corners_of(mesh, quad);
    if (0.5 * (corners[0].y + corners[2].y) < result.job.wall.cut.soffit) continue;
    for (const int node : mesh.nodes_of(quad)) {
      const mesh::Point& p = mesh.nodes[static_cast<std::size_t>(node)];
      const double distance = std::hypot(p.x - mark.x, p.y - mark.y);
      if (distance >= least) continue;
      least = distance;
      nearest = node;
    }
  }
  return nearest;
}

/// Downward movement of a mark from one analysis to another of the same model.
double moved(const solver::JobResult& result, const PanelResult& first, const PanelResult& now,
             mesh::Point mark) {
  const int node = node_near(result, now, mark);
  if (node < 0) return not_known;
  const std::size_t i = 2 * static_cast<std::size_t>(node) + 1;
  if (i >= first.fields.displacement.size() || i >= now.fields.displacement.size()) {
    return not_known;
  }
  return first.fields.displacement[i] - now.fields.displacement[i];
}

/// The largest of all analyses of a stage, since the first.
double movement_in(const solver::JobResult& result, const StageResult& stage, mesh::Point mark) {
  double most = -HUGE_VAL;
  for (const PanelResult& analysis : stage.analyses) {
    const PanelResult* first = find_analysis(result.stages.front(), analysis.model);
    if (first == nullptr || !first->stands() || !analysis.stands()) return not_known;
    const double movement = moved(result, *first, analysis, mark);
    if (std::isnan(movement)) return not_known;
    most = std::max(most, movement);
  }
  return std::isfinite(most) ? most : not_known;
}

/// Whether movements can be counted: from the wall as built, before anything was done to it.
bool is_followed_from_the_start(const solver::JobResult& result) {
  return is_staged(result) && !result.stages.empty() && result.stages.front().operations.empty();
}

/// How far from the jamb the mark on a pier of this width is.
double into_pier(double width) {
  return std::min(beside_jamb, 0.5 * width);
}

}  // namespace

std::vector<MonitoringMark> monitoring_marks(const solver::JobResult& result) {
  const mesh::WallShape& wall = result.job.wall;
  const mesh::Cut& cut = wall.cut;
  std::vector<MonitoringMark> marks;
  const auto add = [&](std::string where, double x) {
    marks.push_back({"", std::move(where), {x, cut.soffit}, {}});
  };
  add("left pier", cut.left - into_pier(cut.left));
  for (const solver::Needle& needle : result.job.needles) add("over " + needle.name, needle.x);
  add("middle of the cut", cut.span().middle());
  add("right pier", cut.right + into_pier(wall.length - cut.right));
  std::ranges::stable_sort(marks, {}, [](const MonitoringMark& mark) { return mark.at.x; });
  for (std::size_t i = 0; i < marks.size(); ++i) {
    marks[i].name = fmt::format("M{}", i + 1);
    if (!is_followed_from_the_start(result)) continue;
    for (const StageResult& stage : result.stages) {
      marks[i].movement.push_back(movement_in(result, stage, marks[i].at));
    }
  }
  return marks;
}

double most_movement(std::span<const MonitoringMark> marks, std::size_t stage) {
  double most = -HUGE_VAL;
  for (const MonitoringMark& mark : marks) {
    if (stage >= mark.movement.size() || std::isnan(mark.movement[stage])) continue;
    most = std::max(most, mark.movement[stage]);
  }
  return std::isfinite(most) ? most : not_known;
}

double movement_at_slight_damage(const solver::Job& job) {
  const mesh::Interval cut = job.wall.cut.span();
  const solver::DeepBeam beam{cut.length(), job.wall.top_at(cut.middle()) - job.wall.cut.soffit,
                              job.masonry.nu, solver::Bending::sagging};
  constexpr int slight = 2;
  double below = 0.0;
  double above = beam.length;
  constexpr int halvings = 60;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (below + above);
    const double strain = solver::tensile_strain(beam, middle / beam.length, 0.0);
    (solver::damage_by_strain(strain) < slight ? below : above) = middle;
  }
  return below;
}

double stop_value(double expected, double slight_damage) {
  constexpr double margin = 1.5;
  constexpr double step = 0.5;
  constexpr double least = 1.0;
  constexpr double finest = 10.0;  // to the mm that anyone reads
  const double most = std::floor(slight_damage * finest + rounding) / finest;
  if (!(expected <= most)) return not_known;
  const double usual = step * std::ceil(margin * expected / step - rounding);
  return std::min(std::max(usual, least), most);
}

std::string stop_rule(double slight_damage) {
  return fmt::format(
      "Stop value: 1.5 times the most that any mark is expected to have moved down after the step, "
      "rounded up to 0.5 mm, no less than 1 mm, and never more than {} mm, where the wall over the "
      "cut comes to damage category 2 (slight). Our rule: common practice, no source; the engineer "
      "may set less.",
      two_decimals(slight_damage));
}

}  // namespace deadshore::io
