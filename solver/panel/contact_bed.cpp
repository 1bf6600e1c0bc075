#include "solver/panel/contact_bed.h"

#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

std::vector<const ContactPoint*> points_of(std::span<const ContactBed> beds) {
  std::vector<const ContactPoint*> points;
  for (const ContactBed& bed : beds) {
    for (const ContactPoint& point : bed.points) points.push_back(&point);
  }
  return points;
}

const ContactBed* find_bed(std::span<const ContactBed> beds, BedId id) {
  const auto found = std::ranges::find(beds, id, &ContactBed::id);
  return found == beds.end() ? nullptr : &*found;
}

double energy_of(const ContactBed& bed, const Eigen::VectorXd& u) {
  double energy = 0.0;
  for (const ContactPoint& point : bed.points) {
    const double closed = std::max(0.0, point.closure(u));
    energy += 0.5 * point.stiffness * point.length * closed * closed;
  }
  return energy;
}

ContactState state_of(const ContactBed& bed, const Eigen::VectorXd& u) {
  ContactState state;
  double length = 0.0;
  for (const ContactPoint& point : bed.points) {
    length += point.length;
    state.approach += point.approach(u) * point.length;
    const double push = point.force(u);
    if (push <= 0.0) continue;
    state.force += push;
    state.contact += point.length;
  }
  if (length > 0.0) {
    state.approach /= length;
    state.contact /= length;
  }
  return state;
}

bool stands_on_ground(const mesh::QuadMesh& mesh, const ContactBed& bed) {
  if (bed.points.empty()) return true;
  return std::ranges::all_of(
      bed.points.front().form.active_terms(),
      [&](const LinearForm::Term& term) { return term.node() < mesh.node_count(); });
}

ContactBed needle_bed(const mesh::QuadMesh& mesh, std::span<const mesh::Side> soffit,
                      const Needle& needle, NeedleId id) {
  ContactBed bed{bed_of(id), {}};
  double covered = 0.0;
  for (const mesh::Side side : soffit) {
    for (const SidePoint& side_point : points_on_side(mesh, side, needle.bearing())) {
      ContactPoint point;
      point.x = side_point.position.x;
      point.length = side_point.length;
      point.stiffness = needle.stiffness / needle.bearing_width;
      point.rest = needle.slack - needle.preload / needle.stiffness;
      add_rise(side_point, point.form, -1.0);
      covered += point.length;
      bed.points.push_back(point);
    }
  }
  if (std::abs(covered - needle.bearing_width) > 1e-6 * needle.bearing_width) {
    throw SolveError(fmt::format("needle {} has masonry over {:.0f} mm of its {:.0f} mm bearing",
                                 needle.name, covered, needle.bearing_width));
  }
  return bed;
}

}  // namespace deadshore::solver
