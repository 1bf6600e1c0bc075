#include "solver/limit/limit_iterate.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double start_stress = 0.1;  // of the strength
constexpr double start_product = 0.1;
constexpr double support_tolerance = 1e-9;  // velocity against a support, of the largest

}  // namespace

LimitIterate::LimitIterate(const Equilibrium& equilibrium, SparseCholesky& factor,
                           const LimitProgram& program)
    : equilibrium_(equilibrium),
      factor_(factor),
      program_(program),
      u_(Eigen::VectorXd::Zero(equilibrium.equation_count())),
      stress_(static_cast<std::size_t>(equilibrium.point_count())),
      force_(program.forces.size()),
      parameter_(has_parameter() ? std::min(1.0, 0.5 * program.most_parameter) : 0.0),
      high_(force_.size(), 0),
      point_stiffness_(stress_.size()),
      stiffness_root_(stress_.size()),
      force_stiffness_(force_.size()),
      strain_(stress_.size()),
      stiffness_(equilibrium.pattern().empty()) {
  const Mohr unit = unit_of<Mohr>();
  const auto add_cone = [&](const Mohr& slack) {
    pairs_.cones.push_back({slack, start_product / slack(0) * unit, {}, {}});
  };
  for (std::size_t p = 0; p < points(); ++p) {
    const Strength& s = strength(p);
    stress_[p] = -start_stress * s.compression * unit;
    add_cone((s.tension + parameter_ * s.tension_rise) * unit - stress_[p]);
    add_cone(s.compression * unit + stress_[p]);
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    const double most = unknown(j).most + parameter_ * unknown(j).most_rise;
    force_[j] = unknown(j).is_bounded() ? 0.5 * most : start_stress;
    add_bound(force_[j]);
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    const double most = unknown(j).most + parameter_ * unknown(j).most_rise;
    if (unknown(j).is_bounded()) high_[j] = add_bound(most - force_[j]);
  }
  if (has_parameter()) {
    parameter_low_ = add_bound(parameter_);
    parameter_high_ = add_bound(program_.most_parameter - parameter_);
  }
  if (has_budget()) {
    double spent = 0.0;
    for (std::size_t j = 0; j < forces(); ++j) spent += unknown(j).budget_share * force_[j];
    const double all = *program_.budget + parameter_ * program_.budget_rise;
    unspent_ = add_bound(std::max(all - spent, 0.1 * all));
  }
}

std::size_t LimitIterate::add_bound(double slack) {
  pairs_.bounds.push_back({slack, start_product / slack, {}, {}});
  return pairs_.bounds.size() - 1;
}

const Strength& LimitIterate::strength(std::size_t point) const {
  return program_.strength[point / static_cast<std::size_t>(equilibrium_.points_per_element())];
}

double LimitIterate::price() const {
  return has_budget() ? pairs_.bounds[unspent_].multiplier : 0.0;
}

void LimitIterate::move(const Direction& step, const StepLengths& lengths) {
  u_ += lengths.dual * step.u;
  parameter_ += lengths.primal * step.parameter;
  for (std::size_t p = 0; p < points(); ++p) stress_[p] += lengths.primal * step.stress[p];
  for (std::size_t j = 0; j < forces(); ++j) force_[j] += lengths.primal * step.force[j];
}

Eigen::VectorXd LimitIterate::out_of_balance() const {
  Eigen::VectorXd force = -program_.load;
  if (program_.load_rise.size() > 0) force -= parameter_ * program_.load_rise;
  for (std::size_t j = 0; j < forces(); ++j) unknown(j).along.push(-force_[j], force);
  equilibrium_.add_forces(stress_, force);
  return force;
}

double LimitIterate::residual() const {
  const double rise =
      program_.load_rise.size() > 0 ? program_.load_rise.lpNorm<Eigen::Infinity>() : 0.0;
  return out_of_balance().lpNorm<Eigen::Infinity>() /
         (program_.load.lpNorm<Eigen::Infinity>() + std::max(parameter_, 1.0) * rise);
}

double LimitIterate::overspent() const {
  double over =
      pairs_.bounds[unspent_].slack - *program_.budget - parameter_ * program_.budget_rise;
  for (std::size_t j = 0; j < forces(); ++j) over += unknown(j).budget_share * force_[j];
  return over;
}

double LimitIterate::cost() const {
  double cost = program_.parameter_cost * parameter_;
  for (std::size_t j = 0; j < forces(); ++j) cost += unknown(j).cost * force_[j];
  return cost;
}

double LimitIterate::bound() {
  equilibrium_.strains(u_, strain_);
  double fixed = u_.dot(program_.load);
  double rising = program_.parameter_cost;
  if (program_.load_rise.size() > 0) rising += u_.dot(program_.load_rise);
  for (std::size_t p = 0; p < points(); ++p) {
    const LargestWork work = largest_work(strength(p), strain_[p]);
    fixed -= work.at_0;
    rising -= work.rise;
  }
  if (has_budget()) {
    fixed -= price() * *program_.budget;
    rising -= price() * program_.budget_rise;
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    const double gain =
        std::min(0.0, force.cost + force.along.of(u_) + price() * force.budget_share);
    if (force.is_bounded()) {
      fixed += gain * force.most;
      rising += gain * force.most_rise;
    } else if (gain < -support_tolerance) {
      return -std::numeric_limits<double>::infinity();  // moves against a support
    }
  }
  if (!has_parameter()) return fixed;
  // Velocities may be scaled, which scales all but the parameter's own cost: as they are, or so
  // that the parameter has no say left.
  const auto scaled_bound = [&](double factor) {
    const double say = program_.parameter_cost + factor * (rising - program_.parameter_cost);
    return factor * fixed + std::min(0.0, say) * program_.most_parameter;
  };
  const double work = rising - program_.parameter_cost;
  const double as_is = scaled_bound(1.0);
  if (program_.parameter_cost >= 0.0 || work <= 0.0) return as_is;
  return std::max(as_is, scaled_bound(-program_.parameter_cost / work));
}

}  // namespace deadshore::solver
