#include "solver/limit/limit_iterate.h"

#include <Eigen/LU>

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double least_raise = 1e-14;
constexpr double most_raise = 1e-5;
constexpr int most_refinements = 3;
constexpr double good_enough = 1e-7;  // residual of the solution over its right-hand side

}  // namespace

bool LimitIterate::factorise() {
  for (std::size_t p = 0; p < points(); ++p) {
    stiffness_root_[p] = inverse_root_of(tension(p).scaling.inverse_square() +
                                         compression(p).scaling.inverse_square());
    point_stiffness_[p].noalias() = stiffness_root_[p].transpose() * stiffness_root_[p];
  }
  std::fill_n(stiffness_.valuePtr(), stiffness_.nonZeros(), 0.0);
  equilibrium_.add_stiffness(stiffness_root_, stiffness_);
  for (std::size_t j = 0; j < forces(); ++j) {
    const double high =
        unknown(j).is_bounded() ? pairs_.bounds[high_[j]].scaling.inverse_square() : 0.0;
    force_stiffness_[j] = 1.0 / (pairs_.bounds[j].scaling.inverse_square() + high);
    unknown(j).along.add_stiffness(force_stiffness_[j], equilibrium_.pattern(), stiffness_);
  }
  if (!factorise_stiffness()) return false;
  if (has_parameter()) eliminate_parameter();
  if (has_budget()) eliminate_budget();
  return true;
}

/// Parts that nothing holds, and round-off near the end, must not stop it: the factor is that of a
/// matrix with its diagonal raised by as little as will do, which `solve` makes good.
bool LimitIterate::factorise_stiffness() {
  for (double raise = least_raise; raise < most_raise; raise *= 100.0) {
    raised_ = stiffness_;
    for (int i = 0; i < raised_.cols(); ++i) {
      double& diagonal = raised_.valuePtr()[raised_.outerIndexPtr()[i]];
      diagonal = (1.0 + raise) * diagonal + std::numeric_limits<double>::min();
    }
    if (factor_.factorize(raised_, 0.0)) return true;
  }
  return false;
}

/// Solution with the Schur complement, refined.
Eigen::VectorXd LimitIterate::solve(const Eigen::VectorXd& side) const {
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

void LimitIterate::eliminate_parameter() {
  parameter_column_ = Eigen::VectorXd::Zero(u_.size());
  if (program_.load_rise.size() > 0) parameter_column_ = -program_.load_rise;
  parameter_stiffness_ = pairs_.bounds[parameter_low_].scaling.inverse_square() +
                         pairs_.bounds[parameter_high_].scaling.inverse_square();
  bool in_strength = false;
  for (std::size_t p = 0; p < points(); ++p) {
    const double rise = strength(p).tension_rise;
    strain_[p].setZero();
    if (rise == 0.0) continue;
    in_strength = true;
    const Mohr slope = tension(p).scaling.undo_twice(unit_of<Mohr>());
    parameter_stiffness_ += rise * rise * (slope(0) - slope.dot(point_stiffness_[p] * slope));
    strain_[p] = rise * point_stiffness_[p] * slope;
  }
  if (in_strength) equilibrium_.add_forces(strain_, parameter_column_);
  budget_parameter_ = program_.budget_rise;
  for (std::size_t j = 0; j < forces(); ++j) {
    if (!unknown(j).is_bounded() || unknown(j).most_rise == 0.0) continue;
    const double slope = -pairs_.bounds[high_[j]].scaling.inverse_square() * unknown(j).most_rise;
    const double moved = force_stiffness_[j] * slope;
    unknown(j).along.push(moved, parameter_column_);
    budget_parameter_ += unknown(j).budget_share * moved;
    parameter_stiffness_ += -slope * unknown(j).most_rise - slope * moved;
  }
  parameter_solved_ = solve(parameter_column_);
}

void LimitIterate::eliminate_budget() {
  budget_column_ = Eigen::VectorXd::Zero(u_.size());
  budget_diagonal_ = 1.0 / pairs_.bounds[unspent_].scaling.inverse_square();
  for (std::size_t j = 0; j < forces(); ++j) {
    const double share = unknown(j).budget_share;
    if (share == 0.0) continue;
    unknown(j).along.push(force_stiffness_[j] * share, budget_column_);
    budget_diagonal_ += share * share * force_stiffness_[j];
  }
  budget_solved_ = solve(budget_column_);
}

LimitIterate::Direction LimitIterate::direction(const ConeValues& targets) {
  const Sides sides = this->sides(targets);
  Direction step{{pairs_.zeros(), pairs_.zeros()},
                 {},
                 std::vector<Mohr>(points()),
                 std::vector<double>(forces()),
                 0.0};
  const double price = solve_bordered(sides, targets, step);
  find_points(sides, targets, step);
  find_forces(sides, price, step);
  for (std::size_t i = 0; i < pairs_.bounds.size(); ++i) {
    step.cones.multiplier.bounds[i] =
        pairs_.bounds[i].multiplier_change(targets.bounds[i], step.cones.slack.bounds[i]);
  }
  return step;
}

LimitIterate::Sides LimitIterate::sides(const ConeValues& targets) {
  Sides sides;
  sides.parameter = -program_.parameter_cost;
  if (has_parameter()) {
    sides.parameter += pairs_.bounds[parameter_low_].multiplier -
                       pairs_.bounds[parameter_high_].multiplier + targets.bounds[parameter_low_] -
                       targets.bounds[parameter_high_];
  }
  if (program_.load_rise.size() > 0) sides.parameter -= u_.dot(program_.load_rise);
  sides.equilibrium = -out_of_balance();
  if (has_budget()) {
    sides.budget =
        overspent() + targets.bounds[unspent_] / pairs_.bounds[unspent_].scaling.inverse_square();
    sides.parameter += price() * program_.budget_rise;
  }
  add_point_sides(targets, sides);
  add_force_sides(targets, sides);
  return sides;
}

void LimitIterate::add_point_sides(const ConeValues& targets, Sides& sides) {
  equilibrium_.strains(u_, strain_);
  sides.stress.resize(points());
  std::vector<Mohr> moved(points());
  for (std::size_t p = 0; p < points(); ++p) {
    const Mohr opening = tension(p).multiplier + targets.cones[2 * p];
    const Mohr crushing = compression(p).multiplier + targets.cones[2 * p + 1];
    sides.stress[p] = strain_[p] - opening + crushing;
    moved[p] = -(point_stiffness_[p] * sides.stress[p]);
    const double rise = strength(p).tension_rise;
    if (rise == 0.0) continue;
    sides.parameter +=
        rise * (opening(0) - tension(p).scaling.undo_twice(unit_of<Mohr>()).dot(moved[p]));
  }
  equilibrium_.add_forces(moved, sides.equilibrium);
}

void LimitIterate::add_force_sides(const ConeValues& targets, Sides& sides) const {
  sides.force.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    const Bound& low = pairs_.bounds[j];
    const Bound& high = pairs_.bounds[high_[j]];
    double& side = sides.force[j];
    side = -force.cost - force.along.of(u_) - price() * force.budget_share + low.multiplier +
           targets.bounds[j];
    const double held = high.multiplier + targets.bounds[high_[j]];
    if (force.is_bounded()) side -= held;
    const double change = force_stiffness_[j] * side;
    force.along.push(change, sides.equilibrium);
    sides.budget += force.budget_share * change;
    if (!force.is_bounded()) continue;
    sides.parameter += force.most_rise * (held + high.scaling.inverse_square() * change);
  }
}

/// Equilibrium, budget and parameter together: two borders on the Schur complement. Returns the
/// change of the price.
double LimitIterate::solve_bordered(const Sides& sides, const ConeValues& targets,
                                    Direction& step) const {
  step.u = solve(sides.equilibrium);
  Eigen::Matrix2d border = Eigen::Matrix2d::Identity();
  Eigen::Vector2d border_side = Eigen::Vector2d::Zero();
  if (has_budget()) {
    border(0, 0) = budget_diagonal_ - budget_column_.dot(budget_solved_);
    border_side(0) = sides.budget - budget_column_.dot(step.u);
  }
  if (has_parameter()) {
    border(1, 1) = parameter_stiffness_ + parameter_column_.dot(parameter_solved_);
    border_side(1) = sides.parameter + parameter_column_.dot(step.u);
  }
  if (has_budget() && has_parameter()) {
    const double coupling = budget_parameter_ - budget_column_.dot(parameter_solved_);
    border(0, 1) = coupling;
    border(1, 0) = -coupling;
  }
  const Eigen::Vector2d outer = border.inverse() * border_side;
  std::vector<double>& slack = step.cones.slack.bounds;
  if (has_budget()) {
    step.u -= outer(0) * budget_solved_;
    slack[unspent_] =
        (targets.bounds[unspent_] - outer(0)) / pairs_.bounds[unspent_].scaling.inverse_square();
  }
  if (has_parameter()) {
    step.parameter = outer(1);
    step.u -= step.parameter * parameter_solved_;
    slack[parameter_low_] = step.parameter;
    slack[parameter_high_] = -step.parameter;
  }
  return outer(0);
}

void LimitIterate::find_points(const Sides& sides, const ConeValues& targets, Direction& step) {
  equilibrium_.strains(step.u, strain_);
  for (std::size_t p = 0; p < points(); ++p) {
    const Mohr rise = strength(p).tension_rise * step.parameter * unit_of<Mohr>();
    const Mohr side = strain_[p] + sides.stress[p];
    const Mohr both = side + targets.cones[2 * p] - targets.cones[2 * p + 1];
    step.stress[p] = point_stiffness_[p] * (side + tension(p).scaling.undo_twice(rise));
    step.cones.slack.cones[2 * p] = rise - step.stress[p];
    step.cones.slack.cones[2 * p + 1] = step.stress[p];
    Mohr& opening = step.cones.multiplier.cones[2 * p];
    Mohr& crushing = step.cones.multiplier.cones[2 * p + 1];
    // The multiplier of the stiffer cone would magnify round-off in the stress: it follows from the
    // other one instead.
    if (tension(p).scaling.is_stiffer_than(compression(p).scaling)) {
      crushing = compression(p).multiplier_change(targets.cones[2 * p + 1], step.stress[p]);
      opening = both + crushing;
    } else {
      opening = tension(p).multiplier_change(targets.cones[2 * p], rise - step.stress[p]);
      crushing = opening - both;
    }
  }
}

void LimitIterate::find_forces(const Sides& sides, double price, Direction& step) const {
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    double side = sides.force[j] - force.along.of(step.u) - force.budget_share * price;
    const double rise = force.is_bounded() ? force.most_rise * step.parameter : 0.0;
    if (force.is_bounded()) side += pairs_.bounds[high_[j]].scaling.inverse_square() * rise;
    step.force[j] = force_stiffness_[j] * side;
    step.cones.slack.bounds[j] = step.force[j];
    if (force.is_bounded()) step.cones.slack.bounds[high_[j]] = rise - step.force[j];
  }
}

}  // namespace deadshore::solver
