#include "solver/fem/index.h"
#include "solver/job/error.h"
#include "solver/limit/interior_point.h"

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double least_raise = 1e-14;
constexpr double most_raise = 1e-5;
constexpr int most_refinements = 3;
constexpr double good_enough = 1e-7;  // residual of the solution over its right-hand side

const Mohr unit = Mohr::UnitX();

}  // namespace

void InteriorPoint::scale_and_factorise() {
  for (std::size_t p = 0; p < points(); ++p) {
    const PointCones& cones = cones_[p];
    PointScaling& scaling = scaling_[p];
    scaling.tension = LorentzScaling(cones.slack_tension, cones.opening);
    scaling.compression = LorentzScaling(cones.slack_compression, cones.crushing);
    scaling.scaled_tension = scaling.tension.apply(cones.opening);
    scaling.scaled_compression = scaling.compression.apply(cones.crushing);
    give_root_[p] =
        inverse_root_of(scaling.tension.inverse_square() + scaling.compression.inverse_square());
    give_[p].noalias() = give_root_[p].transpose() * give_root_[p];
  }
  std::fill_n(stiffness_.valuePtr(), stiffness_.nonZeros(), 0.0);
  equilibrium_.add_stiffness(give_root_, stiffness_);
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    force_give_[j] = 1.0 / (low_[j].stiffness() + (bounded(j) ? high_[j].stiffness() : 0.0));
    for (int a = 0; a < force.terms; ++a) {
      for (int b = 0; b < force.terms; ++b) {
        const int row = force.equation[at(a)];
        const int column = force.equation[at(b)];
        if (row < column || column < 0) continue;
        stiffness_.valuePtr()[equilibrium_.pattern().place(row, column)] +=
            force_give_[j] * force.share[at(a)] * force.share[at(b)];
      }
    }
  }
  factorise();
  if (has_parameter_) eliminate_parameter();
  if (has_budget_) eliminate_budget();
}

/// Factorises the Schur complement. Parts that nothing holds, and round-off near the end, must not
/// stop it: the factor is that of a matrix with its diagonal raised by as little as will do, which
/// `solve` makes good.
void InteriorPoint::factorise() {
  for (double raise = least_raise; raise < most_raise; raise *= 100.0) {
    raised_ = stiffness_;
    for (int i = 0; i < raised_.cols(); ++i) {
      double& diagonal = raised_.valuePtr()[raised_.outerIndexPtr()[i]];
      diagonal = (1.0 + raise) * diagonal + std::numeric_limits<double>::min();
    }
    if (factor_.factorize(raised_, 0.0)) return;
  }
  throw SolveError("limit analysis: the equations of equilibrium broke down");
}

/// Solution with the Schur complement, refined.
Eigen::VectorXd InteriorPoint::solve(const Eigen::VectorXd& side) const {
  Eigen::VectorXd u = factor_.solve(side);
  const double size = side.norm();
  double before = std::numeric_limits<double>::infinity();
  for (int k = 0; k < most_refinements; ++k) {
    const Eigen::VectorXd rest = side - stiffness_.selfadjointView<Eigen::Lower>() * u;
    const double now = rest.norm();
    if (now > 0.5 * before || now <= good_enough * size) break;
    before = now;
    u += factor_.solve(rest);
  }
  return u;
}

void InteriorPoint::eliminate_parameter() {
  parameter_column_ = Eigen::VectorXd::Zero(u_.size());
  if (program_.load_rise.size() > 0) parameter_column_ = -program_.load_rise;
  parameter_stiffness_ = parameter_low_.stiffness() + parameter_high_.stiffness();
  bool in_strength = false;
  for (std::size_t p = 0; p < points(); ++p) {
    const double rise = strength(p).tension_rise;
    strain_[p].setZero();
    if (rise == 0.0) continue;
    in_strength = true;
    const Mohr slope = scaling_[p].tension.undo_twice(unit);
    parameter_stiffness_ += rise * rise * (slope(0) - slope.dot(give_[p] * slope));
    strain_[p] = rise * give_[p] * slope;  // -D H_lg
  }
  if (in_strength) equilibrium_.add_forces(strain_, parameter_column_);
  budget_parameter_ = program_.budget_rise;
  for (std::size_t j = 0; j < forces(); ++j) {
    if (!bounded(j) || unknown(j).most_rise == 0.0) continue;
    const double slope = -high_[j].stiffness() * unknown(j).most_rise;
    const double moved = force_give_[j] * slope;
    push(unknown(j), moved, parameter_column_);
    budget_parameter_ += unknown(j).budget_share * moved;
    parameter_stiffness_ += -slope * unknown(j).most_rise - slope * moved;
  }
  parameter_solved_ = solve(parameter_column_);
}

void InteriorPoint::eliminate_budget() {
  budget_column_ = Eigen::VectorXd::Zero(u_.size());
  budget_give_ = unspent_.slack / unspent_.multiplier;
  for (std::size_t j = 0; j < forces(); ++j) {
    const double share = unknown(j).budget_share;
    if (share == 0.0) continue;
    push(unknown(j), force_give_[j] * share, budget_column_);
    budget_give_ += share * share * force_give_[j];
  }
  budget_solved_ = solve(budget_column_);
}

}  // namespace deadshore::solver
