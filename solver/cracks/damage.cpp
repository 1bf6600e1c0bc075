#include "solver/cracks/cracks.h"
#include "solver/cracks/damage_scale.h"
#include "solver/cracks/settlement_profile.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace deadshore::solver {

namespace {

using mesh::Point;

/// Height of the soffit in the mesh, which may have moved it by part of an element.
double soffit_level(const Job& job, const mesh::QuadMesh& mesh) {
  const auto sides = mesh.sides_of(mesh::ChainKind::soffit);
  if (sides.empty()) return job.wall.cut.soffit;
  const auto nodes = mesh::nodes_along(mesh, sides.front()).nodes;
  return mesh.nodes[static_cast<std::size_t>(nodes[0])].y;
}

/// Movement of the sound masonry above the soffit since the first stage.
class Movement {
 public:
  Movement(const Job& job, const mesh::QuadMesh& mesh, const PanelFields& fields,
           const std::vector<double>& before)
      : mesh_(mesh), fields_(fields), before_(before), soffit_(soffit_level(job, mesh)) {
    const auto marked = [](const std::vector<char>& marks, int quad) {
      return !marks.empty() && marks[static_cast<std::size_t>(quad)] != 0;
    };
    sound_.assign(mesh.nodes.size(), 0);
    for (int quad = 0; quad < mesh.quad_count(); ++quad) {
      if (marked(fields.quad_loose, quad) || marked(fields.quad_out, quad)) continue;
      double middle = 0.0;
      for (const Point c : mesh::corners_of(mesh, quad)) middle += 0.25 * c.y;
      if (middle < soffit_) continue;
      for (const int node : mesh.nodes_of(quad)) sound_[static_cast<std::size_t>(node)] = 1;
    }
  }

  /// Settlements along the soffit's level, x rising.
  [[nodiscard]] std::vector<SettledPoint> soffit() const {
    std::vector<SettledPoint> profile;
    for (int node = 0; node < mesh_.node_count(); ++node) {
      const Point& p = mesh_.nodes[static_cast<std::size_t>(node)];
      if (sound(node) && std::abs(p.y - soffit_) < 0.5) profile.push_back({p.x, -moved(node, 1)});
    }
    std::ranges::sort(profile, {}, &SettledPoint::x);
    return profile;
  }

  /// Mean level strain between two places, from the nodes of sound masonry nearest to them.
  [[nodiscard]] double level_strain(Point from, Point to) const {
    const int a = nearest(from);
    const int b = nearest(to);
    if (a < 0 || b < 0) return 0.0;
    const double length =
        mesh_.nodes[static_cast<std::size_t>(b)].x - mesh_.nodes[static_cast<std::size_t>(a)].x;
    if (length < 0.5 * (to.x - from.x)) return 0.0;  // an opening is in the way
    return (moved(b, 0) - moved(a, 0)) / length;
  }

 private:
  [[nodiscard]] bool sound(int node) const { return sound_[static_cast<std::size_t>(node)] != 0; }

  [[nodiscard]] double moved(int node, int component) const {
    const std::size_t i = 2 * static_cast<std::size_t>(node) + static_cast<std::size_t>(component);
    return fields_.displacement[i] - (before_.empty() ? 0.0 : before_[i]);
  }

  [[nodiscard]] int nearest(Point place) const {
    int best = -1;
    double least = std::numeric_limits<double>::infinity();
    for (int node = 0; node < mesh_.node_count(); ++node) {
      if (!sound(node)) continue;
      const Point& p = mesh_.nodes[static_cast<std::size_t>(node)];
      const double distance = std::hypot(p.x - place.x, p.y - place.y);
      if (distance >= least) continue;
      least = distance;
      best = node;
    }
    return best;
  }

  const mesh::QuadMesh& mesh_;
  const PanelFields& fields_;
  const std::vector<double>& before_;
  double soffit_;
  std::vector<char> sound_;  ///< by node
};

}  // namespace

Damage damage_of(const Job& job, const mesh::QuadMesh& mesh, const PanelFields& fields,
                 const std::vector<double>& before, const std::vector<Crack>& cracks) {
  if (!before.empty() && before.size() != fields.displacement.size()) {
    throw std::invalid_argument("damage: displacements before and after are of different meshes");
  }
  const Movement movement(job, mesh, fields, before);
  const double soffit = job.wall.cut.soffit;
  Damage damage;
  for (const BentStretch& stretch : bent_stretches(movement.soffit())) {
    const double height = job.wall.top_at(0.5 * (stretch.from + stretch.to)) - soffit;
    const DeepBeam beam{stretch.length(), height, job.masonry.nu, stretch.bending};
    const double axis = soffit + (stretch.bending == Bending::sagging ? 0.5 * height : 0.0);
    const double level =
        std::max(0.0, movement.level_strain({stretch.from, axis}, {stretch.to, axis}));
    const double ratio = stretch.deflection / stretch.length();
    const double strain = tensile_strain(beam, ratio, level);
    if (strain <= damage.tensile_strain) continue;
    damage.tensile_strain = strain;
    damage.deflection_ratio = ratio;
  }
  for (const Crack& crack : cracks) {
    damage.widest_crack = std::max(damage.widest_crack, crack.width);
  }
  damage.by_strain = damage_by_strain(damage.tensile_strain);
  damage.by_width = damage_by_width(damage.widest_crack);
  damage.in_words = damage_in_words(std::max(damage.by_strain, damage.by_width));
  return damage;
}

}  // namespace deadshore::solver
