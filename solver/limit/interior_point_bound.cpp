#include "solver/fem/index.h"
#include "solver/limit/interior_point.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double support_tolerance = 1e-9;

}  // namespace

double InteriorPoint::work_of(const UnknownForce& force, const Eigen::VectorXd& u) {
  double work = 0.0;
  for (int k = 0; k < force.terms; ++k) {
    if (force.equation[at(k)] >= 0) work += force.share[at(k)] * u(force.equation[at(k)]);
  }
  return work;
}

void InteriorPoint::push(const UnknownForce& force, double size, Eigen::VectorXd& on) {
  for (int k = 0; k < force.terms; ++k) {
    if (force.equation[at(k)] >= 0) on(force.equation[at(k)]) += force.share[at(k)] * size;
  }
}

Eigen::VectorXd InteriorPoint::out_of_balance() const {
  Eigen::VectorXd force = -program_.load;
  if (has_parameter_ && program_.load_rise.size() > 0) force -= parameter_ * program_.load_rise;
  for (std::size_t j = 0; j < forces(); ++j) push(unknown(j), -force_[j], force);
  equilibrium_.add_forces(stress_, force);
  return force;
}

double InteriorPoint::overspent() const {
  double over = unspent_.slack - *program_.budget - parameter_ * program_.budget_rise;
  for (std::size_t j = 0; j < forces(); ++j) over += unknown(j).budget_share * force_[j];
  return over;
}

double InteriorPoint::cost() const {
  double cost = program_.parameter_cost * parameter_;
  for (std::size_t j = 0; j < forces(); ++j) cost += unknown(j).cost * force_[j];
  return cost;
}

/// Lower bound on every cost, from the velocities and the price alone.
double InteriorPoint::bound() {
  equilibrium_.strains(u_, strain_);
  double fixed = u_.dot(program_.load);
  double rising = program_.parameter_cost;
  if (program_.load_rise.size() > 0) rising += u_.dot(program_.load_rise);
  for (std::size_t p = 0; p < points(); ++p) {
    const LargestWork work = largest_work(strength(p), strain_[p]);
    fixed -= work.at_0;
    rising -= work.rise;
  }
  const double price = has_budget_ ? unspent_.multiplier : 0.0;
  if (has_budget_) {
    fixed -= price * *program_.budget;
    rising -= price * program_.budget_rise;
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    const double gain = std::min(0.0, force.cost + work_of(force, u_) + price * force.budget_share);
    if (bounded(j)) {
      fixed += gain * force.most;
      rising += gain * force.most_rise;
    } else if (gain < -support_tolerance) {
      return -std::numeric_limits<double>::infinity();  // moves against a support
    }
  }
  if (!has_parameter_) return fixed;
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
