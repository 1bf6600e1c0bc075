#include "solver/site/monitoring.h"

#include "solver/cracks/damage_scale.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double beside_jamb = 200.0;  // mm from the jamb to a mark on a pier
constexpr double least_reach = 300.0;  // mm from a mark to the sound masonry it is fixed to
constexpr double round_off = 1e-9;

bool is_marked(const std::vector<char>& marks, int quad) {
  return !marks.empty() && marks[static_cast<std::size_t>(quad)] != 0;
}

/// How marks move from stage to stage.
class Movements {
 public:
  Movements(const Job& job, const mesh::WallMesh& wall, std::span<const StageResult> stages)
      : soffit_(job.wall.cut.soffit), wall_(wall), stages_(stages) {}

  /// The largest of all analyses of a stage, since the first.
  [[nodiscard]] double in(const StageResult& stage, mesh::Point mark) const {
    double most = -HUGE_VAL;
    for (const PanelResult& analysis : stage.analyses) {
      const auto& before = stages_.front().analyses;
      const auto first = std::ranges::find(before, analysis.model, &PanelResult::model);
      if (first == before.end() || !first->stands() || !analysis.stands()) return not_known;
      const double movement = between(*first, analysis, mark);
      if (std::isnan(movement)) return not_known;
      most = std::max(most, movement);
    }
    return std::isfinite(most) ? most : not_known;
  }

 private:
  [[nodiscard]] double between(const PanelResult& first, const PanelResult& now,
                               mesh::Point mark) const {
    const int node = node_near(now, mark);
    if (node < 0) return not_known;
    const std::size_t i = 2 * static_cast<std::size_t>(node) + 1;
    if (i >= first.fields.displacement.size() || i >= now.fields.displacement.size()) {
      return not_known;
    }
    return first.fields.displacement[i] - now.fields.displacement[i];
  }

  /// The node of sound masonry above the soffit nearest to a mark; -1 where none is near.
  [[nodiscard]] int node_near(const PanelResult& analysis, mesh::Point mark) const {
    const mesh::QuadMesh& mesh = wall_.quads;
    double least = std::max(least_reach, 1.5 * wall_.size);
    int nearest = -1;
    for (int quad = 0; quad < mesh.quad_count(); ++quad) {
      if (is_marked(analysis.fields.quad_loose, quad) ||
          is_marked(analysis.fields.quad_out, quad)) {
        continue;
      }
      const auto corners = mesh::corners_of(mesh, quad);
      if (0.5 * (corners[0].y + corners[2].y) < soffit_) continue;
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

  double soffit_;
  const mesh::WallMesh& wall_;
  std::span<const StageResult> stages_;
};

/// How far from the jamb the mark on a pier of this width is.
double into_pier(double width) {
  return std::min(beside_jamb, 0.5 * width);
}

std::vector<MonitoringMark> marks_of(const Job& job) {
  const mesh::Cut& cut = job.wall.cut;
  std::vector<MonitoringMark> marks;
  const auto add = [&](MarkPlace place, double x, std::size_t needle = 0) {
    marks.push_back({place, needle, {x, cut.soffit}, {}});
  };
  add(MarkPlace::left_pier, cut.left - into_pier(cut.left));
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    add(MarkPlace::over_needle, job.needles[i].x, i);
  }
  add(MarkPlace::middle_of_cut, cut.span().middle());
  add(MarkPlace::right_pier, cut.right + into_pier(job.wall.length - cut.right));
  std::ranges::stable_sort(marks, {}, [](const MonitoringMark& mark) { return mark.at.x; });
  return marks;
}

/// The largest movement of any mark in one stage; NaN where that of none is known.
double most_movement(std::span<const MonitoringMark> marks, std::size_t stage) {
  double most = not_known;
  for (const MonitoringMark& mark : marks) {
    if (stage < mark.movement.size()) most = std::fmax(most, mark.movement[stage]);
  }
  return most;
}

}  // namespace

Monitoring monitoring_of(const Job& job, const mesh::WallMesh& wall,
                         std::span<const StageResult> stages) {
  Monitoring monitoring;
  monitoring.marks = marks_of(job);
  monitoring.slight_damage = movement_at_slight_damage(job);
  if (!stages.empty() && stages.front().operations.empty()) {
    const Movements movements(job, wall, stages);
    for (MonitoringMark& mark : monitoring.marks) {
      for (const StageResult& stage : stages) mark.movement.push_back(movements.in(stage, mark.at));
    }
  }
  for (std::size_t k = 0; k < stages.size(); ++k) {
    StageMovement& movement = monitoring.stages.emplace_back();
    if (!stages[k].stands()) continue;
    movement.expected = most_movement(monitoring.marks, k);
    if (k == 0) continue;
    movement.stop_at = stop_value(movement.expected, monitoring.slight_damage);
    movement.past_stop = std::isfinite(movement.expected) && std::isnan(movement.stop_at);
  }
  return monitoring;
}

double movement_at_slight_damage(const Job& job) {
  const mesh::Interval cut = job.wall.cut.span();
  const DeepBeam beam{cut.length(), job.wall.top_at(cut.middle()) - job.wall.cut.soffit,
                      job.masonry.nu, Bending::sagging};
  constexpr int slight = 2;
  double below = 0.0;
  double above = beam.length;
  constexpr int halvings = 60;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (below + above);
    const double strain = tensile_strain(beam, middle / beam.length, 0.0);
    (damage_by_strain(strain) < slight ? below : above) = middle;
  }
  return below;
}

double stop_value(double expected, double slight_damage) {
  constexpr double margin = 1.5;
  constexpr double step = 0.5;
  constexpr double least = 1.0;
  constexpr double finest = 10.0;  // to the mm that anyone reads
  const double most = std::floor(slight_damage * finest + round_off) / finest;
  if (!(expected <= most)) return not_known;
  const double usual = step * std::ceil(margin * expected / step - round_off);
  return std::min(std::max(usual, least), most);
}

}  // namespace deadshore::solver
