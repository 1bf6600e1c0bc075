#include "solver/panel/condensed_wall.h"

#include "solver/fem/dense_symmetric.h"
#include "solver/fem/job_mesh.h"
#include "solver/job/error.h"

namespace deadshore::solver {

namespace {

constexpr int most_patterns = 200;  // sets of closed contacts that are tried

Eigen::VectorXd approaches(std::span<const ContactPoint* const> points, const Eigen::VectorXd& u) {
  return Eigen::VectorXd::NullaryExpr(
      static_cast<Eigen::Index>(points.size()),
      [&](Eigen::Index i) { return points[static_cast<std::size_t>(i)]->approach(u); });
}

}  // namespace

CondensedWall::CondensedWall(PanelModel& model, const PanelLoading& loading) {
  const std::vector<const ContactPoint*> points = points_of(loading.beds);
  PanelLoading bare = loading;
  bare.beds.clear();
  SparseStiffness stiffness = model.empty_stiffness();
  const Eigen::VectorXd resistance = model.resistance(bare, model.start(), &stiffness);
  if (model.rigid_motions().unheld({}) || !model.factor().factorize(stiffness)) {
    throw SolveError("the wall does not stand without its needles");
  }
  const auto moved_by = [&](const Eigen::VectorXd& force) {
    return model.spread_out(model.factor().solve(model.gather_free(force)));
  };
  approach_ = approaches(points, model.start() + moved_by(bare.load - resistance));
  flexibility_.resize(approach_.size(), approach_.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    Eigen::VectorXd push = Eigen::VectorXd::Zero(bare.load.size());
    points[i]->form.push(1.0, push);
    flexibility_.col(static_cast<Eigen::Index>(i)) = approaches(points, moved_by(push));
  }
  left_ = base_of(model, bare, mesh::ChainKind::base_left, points);
  right_ = base_of(model, bare, mesh::ChainKind::base_right, points);
}

/// By reciprocity (Mueller-Breslau): where the base alone is raised by 1, the displacement at a
/// force is the part of that force which the base carries. One solution so gives the reaction to
/// any push.
CondensedWall::Base CondensedWall::base_of(PanelModel& model, const PanelLoading& bare,
                                           mesh::ChainKind chain,
                                           std::span<const ContactPoint* const> points) {
  Eigen::VectorXd shape = Eigen::VectorXd::Zero(bare.load.size());
  for (const int node : nodes_of_chain(model.mesh(), chain)) shape(2 * node + 1) = 1.0;
  const Eigen::VectorXd held = model.gather_free(model.resistance(bare, shape));
  shape += model.spread_out(model.factor().solve(-held));
  return {-shape.dot(bare.load), approaches(points, shape)};
}

/// Finds the set of closed contacts: solves with a set, closes the points that would press and
/// opens the others, until the set does not change.
Eigen::VectorXd CondensedWall::pushes_on(std::span<const ContactPoint* const> points) const {
  const Eigen::Index count = approach_.size();
  std::vector<Eigen::Index> closed(points.size());
  for (Eigen::Index i = 0; i < count; ++i) closed[static_cast<std::size_t>(i)] = i;
  Eigen::VectorXd closing(count);     // of each by the loads, were there no beds, mm
  Eigen::VectorXd compliance(count);  // of its bed, mm/N
  for (Eigen::Index i = 0; i < count; ++i) {
    const ContactPoint& point = *points[static_cast<std::size_t>(i)];
    closing(i) = approach_(i) - point.rest;
    compliance(i) = 1.0 / (point.stiffness * point.length);
  }
  for (int trial = 0; trial < most_patterns; ++trial) {
    Eigen::MatrixXd system = flexibility_(closed, closed);
    system.diagonal() += compliance(closed);
    Eigen::VectorXd push = Eigen::VectorXd::Zero(count);
    if (!closed.empty()) {
      const Eigen::VectorXd load = closing(closed);
      const Eigen::VectorXd pressed = solve_semidefinite(system, load);
      push(closed) = pressed;
    }
    const Eigen::VectorXd closure = closing - flexibility_ * push;
    std::vector<Eigen::Index> pressing;
    for (Eigen::Index i = 0; i < count; ++i) {
      if (closure(i) >= 0.0) pressing.push_back(i);
    }
    if (pressing == closed) return push;
    closed = std::move(pressing);
  }
  throw SolveError("the contact of wall and needles does not settle");
}

CondensedWall::Reactions CondensedWall::on(std::span<const ContactBed> beds) const {
  const Eigen::VectorXd push = pushes_on(points_of(beds));
  Reactions reactions;
  Eigen::Index first = 0;
  for (const ContactBed& bed : beds) {
    const Eigen::Index count = static_cast<Eigen::Index>(bed.points.size());
    reactions.beds.push_back(push.segment(first, count).sum());
    first += count;
  }
  reactions.base_left = left_.without_beds + left_.per_push.dot(push);
  reactions.base_right = right_.without_beds + right_.per_push.dot(push);
  return reactions;
}

}  // namespace deadshore::solver
