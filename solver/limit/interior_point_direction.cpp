#include "solver/limit/interior_point.h"

#include <Eigen/LU>

#include <cstddef>
#include <vector>

namespace deadshore::solver {

namespace {

const Mohr unit = Mohr::UnitX();

}  // namespace

LimitStep InteriorPoint::direction(const LimitTargets& targets) {
  const LimitSides sides = this->sides(targets);
  LimitStep step;
  solve_bordered(sides, targets, step);
  find_points(sides, targets, step);
  find_forces(sides, targets, step);
  return step;
}

LimitSides InteriorPoint::sides(const LimitTargets& targets) {
  LimitSides sides;
  sides.parameter = -program_.parameter_cost + parameter_low_.multiplier -
                    parameter_high_.multiplier + targets.parameter_low - targets.parameter_high;
  if (program_.load_rise.size() > 0) sides.parameter -= u_.dot(program_.load_rise);
  sides.equilibrium = -out_of_balance();
  if (has_budget_) {
    sides.budget = overspent() + targets.unspent;
    sides.parameter += unspent_.multiplier * program_.budget_rise;
  }
  add_point_sides(targets, sides);
  add_force_sides(targets, sides);
  return sides;
}

void InteriorPoint::add_point_sides(const LimitTargets& targets, LimitSides& sides) {
  equilibrium_.strains(u_, strain_);
  sides.stress.resize(points());
  std::vector<Mohr> moved(points());
  for (std::size_t p = 0; p < points(); ++p) {
    sides.stress[p] = strain_[p] - cones_[p].opening + cones_[p].crushing - targets.opening[p] +
                      targets.crushing[p];
    moved[p] = -(give_[p] * sides.stress[p]);
    const double rise = strength(p).tension_rise;
    if (rise == 0.0) continue;
    sides.parameter += rise * (cones_[p].opening(0) + targets.opening[p](0));
    sides.parameter -= rise * scaling_[p].tension.undo_twice(unit).dot(moved[p]);
  }
  equilibrium_.add_forces(moved, sides.equilibrium);
}

void InteriorPoint::add_force_sides(const LimitTargets& targets, LimitSides& sides) const {
  const double price = has_budget_ ? unspent_.multiplier : 0.0;
  sides.force.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    double& side = sides.force[j];
    side = -force.cost - work_of(force, u_) - price * force.budget_share + low_[j].multiplier +
           targets.low[j];
    if (bounded(j)) {
      side -= high_[j].multiplier + targets.high[j];
      sides.parameter += force.most_rise * (high_[j].multiplier + targets.high[j]);
    }
    const double change = force_give_[j] * side;
    push(force, change, sides.equilibrium);
    sides.budget += force.budget_share * change;
    if (bounded(j)) sides.parameter += high_[j].stiffness() * force.most_rise * change;
  }
}

/// Equilibrium, budget and parameter together: two borders on the Schur complement.
void InteriorPoint::solve_bordered(const LimitSides& sides, const LimitTargets& targets,
                                   LimitStep& step) const {
  step.u = solve(sides.equilibrium);
  Eigen::Matrix2d border = Eigen::Matrix2d::Identity();
  Eigen::Vector2d border_side = Eigen::Vector2d::Zero();
  if (has_budget_) {
    border(0, 0) = budget_give_ - budget_column_.dot(budget_solved_);
    border_side(0) = sides.budget - budget_column_.dot(step.u);
  }
  if (has_parameter_) {
    border(1, 1) = parameter_stiffness_ + parameter_column_.dot(parameter_solved_);
    border_side(1) = sides.parameter + parameter_column_.dot(step.u);
  }
  if (has_budget_ && has_parameter_) {
    const double coupling = budget_parameter_ - budget_column_.dot(parameter_solved_);
    border(0, 1) = coupling;
    border(1, 0) = -coupling;
  }
  const Eigen::Vector2d outer = border.inverse() * border_side;
  if (has_budget_) {
    step.price = outer(0);
    step.u -= step.price * budget_solved_;
    step.unspent = targets.unspent - unspent_.slack / unspent_.multiplier * step.price;
  }
  if (has_parameter_) {
    step.parameter = outer(1);
    step.u -= step.parameter * parameter_solved_;
    step.parameter_low = targets.parameter_low - parameter_low_.stiffness() * step.parameter;
    step.parameter_high = targets.parameter_high + parameter_high_.stiffness() * step.parameter;
  }
}

void InteriorPoint::find_points(const LimitSides& sides, const LimitTargets& targets,
                                LimitStep& step) {
  equilibrium_.strains(step.u, strain_);
  step.stress.resize(points());
  step.opening.resize(points());
  step.crushing.resize(points());
  for (std::size_t p = 0; p < points(); ++p) {
    const PointScaling& scaling = scaling_[p];
    const double cap = strength(p).tension_rise * step.parameter;
    Mohr side_here = strain_[p] + sides.stress[p];
    const Mohr stationarity = side_here + targets.opening[p] - targets.crushing[p];
    if (cap != 0.0) side_here += cap * scaling.tension.undo_twice(unit);
    step.stress[p] = give_[p] * side_here;
    // The multiplier of the stiffer cone would magnify round-off in the stress: it follows from the
    // other one instead.
    if (scaling.tension.is_stiffer_than(scaling.compression)) {
      step.crushing[p] = targets.crushing[p] - scaling.compression.undo_twice(step.stress[p]);
      step.opening[p] = stationarity + step.crushing[p];
    } else {
      step.opening[p] =
          scaling.tension.undo_twice(step.stress[p] - cap * unit) + targets.opening[p];
      step.crushing[p] = step.opening[p] - stationarity;
    }
  }
}

void InteriorPoint::find_forces(const LimitSides& sides, const LimitTargets& targets,
                                LimitStep& step) const {
  step.force.resize(forces());
  step.low.resize(forces());
  step.high.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    double side_here = sides.force[j] - work_of(force, step.u) - force.budget_share * step.price;
    const double rise = bounded(j) ? force.most_rise * step.parameter : 0.0;
    if (bounded(j)) side_here += high_[j].stiffness() * rise;
    step.force[j] = force_give_[j] * side_here;
    step.low[j] = targets.low[j] - low_[j].stiffness() * step.force[j];
    if (bounded(j)) {
      step.high[j] = targets.high[j] + high_[j].stiffness() * (step.force[j] - rise);
    }
  }
}

LimitTargets InteriorPoint::predictor() const {
  LimitTargets targets;
  targets.opening.resize(points());
  targets.crushing.resize(points());
  for (std::size_t p = 0; p < points(); ++p) {
    targets.opening[p] = -cones_[p].opening;
    targets.crushing[p] = -cones_[p].crushing;
  }
  targets.low.resize(forces());
  targets.high.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    targets.low[j] = -low_[j].multiplier;
    targets.high[j] = -high_[j].multiplier;
  }
  targets.parameter_low = -parameter_low_.multiplier;
  targets.parameter_high = -parameter_high_.multiplier;
  targets.unspent = -unspent_.slack;
  return targets;
}

LimitTargets InteriorPoint::corrector(const LimitStep& predicted, double target) const {
  LimitTargets targets = predictor();
  for (std::size_t p = 0; p < points(); ++p) {
    const PointScaling& scaling = scaling_[p];
    const Mohr tension_slack =
        strength(p).tension_rise * predicted.parameter * unit - predicted.stress[p];
    targets.opening[p] += scaling.tension.undo(
        jordan_quotient(target * unit - jordan_product(scaling.tension.undo(tension_slack),
                                                       scaling.tension.apply(predicted.opening[p])),
                        scaling.scaled_tension));
    targets.crushing[p] += scaling.compression.undo(jordan_quotient(
        target * unit - jordan_product(scaling.compression.undo(predicted.stress[p]),
                                       scaling.compression.apply(predicted.crushing[p])),
        scaling.scaled_compression));
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    targets.low[j] += (target - predicted.force[j] * predicted.low[j]) / low_[j].slack;
    if (!bounded(j)) continue;
    const double slack = unknown(j).most_rise * predicted.parameter - predicted.force[j];
    targets.high[j] += (target - slack * predicted.high[j]) / high_[j].slack;
  }
  if (has_parameter_) {
    const double change = predicted.parameter;
    targets.parameter_low += (target - change * predicted.parameter_low) / parameter_low_.slack;
    targets.parameter_high += (target + change * predicted.parameter_high) / parameter_high_.slack;
  }
  if (has_budget_) {
    targets.unspent += (target - predicted.unspent * predicted.price) / unspent_.multiplier;
  }
  return targets;
}

}  // namespace deadshore::solver
