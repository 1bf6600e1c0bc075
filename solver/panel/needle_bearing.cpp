#include "solver/panel/needle_bearing.h"

#include "solver/model/error.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

Eigen::Index vertical(const SidePoint& point, int i) {
  return 2 * point.nodes.nodes[static_cast<std::size_t>(i)] + 1;
}

double settlement_at(const SidePoint& point, const Eigen::VectorXd& u) {
  double settlement = 0.0;
  for (int i = 0; i < point.nodes.count; ++i) {
    settlement -= point.shape[static_cast<std::size_t>(i)] * u(vertical(point, i));
  }
  return settlement;
}

}  // namespace

NeedleBearing::NeedleBearing(const mesh::QuadMesh& mesh, std::span<const mesh::Side> soffit,
                             const Needle& needle)
    : width_(needle.bearing_width),
      bed_stiffness_(needle.stiffness / needle.bearing_width),
      rest_(needle.slack - needle.preload / needle.stiffness) {
  double covered = 0.0;
  for (const mesh::Side side : soffit) {
    for (const SidePoint& point : points_on_side(mesh, side, needle.bearing())) {
      points_.push_back(point);
      covered += point.length;
    }
  }
  if (std::abs(covered - width_) > 1e-6 * width_) {
    throw SolveError(fmt::format("needle {} has masonry over {:.0f} mm of its {:.0f} mm bearing",
                                 needle.name, covered, width_));
  }
}

double NeedleBearing::closure(const SidePoint& point, const Eigen::VectorXd& u) const {
  return settlement_at(point, u) - rest_;
}

double NeedleBearing::energy(const Eigen::VectorXd& u) const {
  double energy = 0.0;
  for (const SidePoint& point : points_) {
    const double closed = std::max(0.0, closure(point, u));
    energy += 0.5 * bed_stiffness_ * point.length * closed * closed;
  }
  return energy;
}

void NeedleBearing::add_force(const Eigen::VectorXd& u, Eigen::VectorXd& force) const {
  for (const SidePoint& point : points_) {
    const double closed = closure(point, u);
    if (closed <= 0.0) continue;
    for (int i = 0; i < point.nodes.count; ++i) {
      force(vertical(point, i)) -=
          bed_stiffness_ * point.length * closed * point.shape[static_cast<std::size_t>(i)];
    }
  }
}

void NeedleBearing::add_tangent(const Eigen::VectorXd& u, const EquationMap& equations,
                                const StiffnessPattern& pattern, SparseStiffness& stiffness) const {
  for (const SidePoint& point : points_) {
    if (closure(point, u) < 0.0) continue;  // just touching counts as closed
    for (int i = 0; i < point.nodes.count; ++i) {
      for (int j = 0; j < point.nodes.count; ++j) {
        const std::size_t a = static_cast<std::size_t>(i);
        const std::size_t b = static_cast<std::size_t>(j);
        const int row = equations.equation(point.nodes.nodes[a], 1);
        const int column = equations.equation(point.nodes.nodes[b], 1);
        if (row < column || column < 0) continue;
        stiffness.valuePtr()[pattern.place(row, column)] +=
            bed_stiffness_ * point.length * point.shape[a] * point.shape[b];
      }
    }
  }
}

NeedleBearing::State NeedleBearing::state(const Eigen::VectorXd& u) const {
  State state;
  for (const SidePoint& point : points_) {
    const double closed = closure(point, u);
    state.settlement += settlement_at(point, u) * point.length / width_;
    if (closed <= 0.0) continue;
    state.force += bed_stiffness_ * point.length * closed;
    state.contact += point.length / width_;
  }
  return state;
}

}  // namespace deadshore::solver
