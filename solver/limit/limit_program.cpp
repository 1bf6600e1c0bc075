#include "solver/limit/limit_program.h"

#include "solver/model/error.h"

#include <Eigen/LU>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr int most_iterations = 100;
constexpr double step_share = 0.9;    // of the way to the boundary
constexpr double start_stress = 0.1;  // of the strength
constexpr double start_product = 0.1;
constexpr double least_raise = 1e-14;
constexpr double most_raise = 1e-5;
constexpr int most_refinements = 3;
constexpr double balance_tolerance = 1e-5;  // of the largest load on a node
constexpr double support_tolerance = 1e-9;
constexpr double spoilt = 10.0;  // times the gap asked for is still a result
constexpr int patience = 4;      // iterations

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// A bound on one number: its distance `slack` from the bound and the multiplier.
struct Barrier {
  double slack = 1.0;
  double multiplier = 0.0;

  [[nodiscard]] double stiffness() const { return multiplier / slack; }
};

double step_to_zero(double value, double change) {
  return change < 0.0 ? -value / change : std::numeric_limits<double>::infinity();
}

/// The two cones at a Gauss point: tension - stress and stress + compression.
struct PointCones {
  Mohr slack_tension, slack_compression;
  Mohr opening, crushing;  ///< multipliers: the two parts of the strain
};

/// What the directions of one iteration need at a Gauss point.
struct PointScaling {
  LorentzScaling tension, compression;
  Mohr scaled_tension, scaled_compression;
};

/// One Newton step. The slacks of the points follow from stress and parameter.
struct Step {
  Eigen::VectorXd u;
  std::vector<Mohr> stress, opening, crushing;
  std::vector<double> force;
  std::vector<double> low, high;  ///< multipliers of the forces' bounds
  double parameter = 0.0;
  double parameter_low = 0.0;
  double parameter_high = 0.0;
  double unspent = 0.0;
  double price = 0.0;
};

/// Right-hand sides of complementarity over the slack, in the space of the multipliers.
struct Targets {
  std::vector<Mohr> opening, crushing;
  std::vector<double> low, high;
  double parameter_low = 0.0;
  double parameter_high = 0.0;
  double unspent = 0.0;  ///< over the price, in the space of the slack
};

const Mohr unit = Mohr::UnitX();

/// One run of the method on one program.
///
/// Slacks of the cones are functions of stress and parameter, so that only equilibrium and the
/// budget are infeasible at the start. Stationarity, with u the velocities, p the budget's price,
/// e(u) the volume strains and N the forces' directions:
///
///   stress: opening - crushing = e(u)
///   forces: cost + N u + p share - low + high = 0
///   parameter: cost + u load_rise - p budget_rise - sum(tension_rise opening_0) - ... = 0
class InteriorPoint {
 public:
  InteriorPoint(const Equilibrium& equilibrium, SparseCholesky& factor, const LimitProgram& program)
      : equilibrium_(equilibrium),
        factor_(factor),
        program_(program),
        has_parameter_(program.most_parameter > 0.0),
        has_budget_(program.budget.has_value()),
        strain_(at(equilibrium.point_count())),
        stiffness_(equilibrium.pattern().empty()) {
    start();
  }

  LimitSolution run(double scale, double gap);

 private:
  void start();
  void set_slacks();
  void scale_and_factorise();
  void factorise();
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& side) const;
  void eliminate_parameter();
  void eliminate_budget();
  [[nodiscard]] Step direction(const Targets& targets);
  [[nodiscard]] Targets predictor() const;
  [[nodiscard]] Targets corrector(const Step& predicted, double target) const;
  [[nodiscard]] std::pair<double, double> longest(const Step& step) const;
  void move(const Step& step, double primal, double dual);
  [[nodiscard]] double complementarity(const Step* step = nullptr, double primal = 0.0,
                                       double dual = 0.0) const;

  [[nodiscard]] Eigen::VectorXd out_of_balance() const;
  [[nodiscard]] double overspent() const;
  [[nodiscard]] double cost() const;
  [[nodiscard]] double bound();

  [[nodiscard]] std::size_t points() const { return stress_.size(); }
  [[nodiscard]] std::size_t forces() const { return force_.size(); }
  [[nodiscard]] const UnknownForce& unknown(std::size_t j) const { return program_.forces[j]; }
  [[nodiscard]] bool bounded(std::size_t j) const { return std::isfinite(unknown(j).most); }
  [[nodiscard]] const Strength& strength(std::size_t point) const {
    return program_.strength[point / quad_points];
  }
  [[nodiscard]] static double work_of(const UnknownForce& force, const Eigen::VectorXd& u);
  static void push(const UnknownForce& force, double size, Eigen::VectorXd& on);

  const Equilibrium& equilibrium_;
  SparseCholesky& factor_;
  const LimitProgram& program_;
  bool has_parameter_;
  bool has_budget_;

  // The iterate.
  Eigen::VectorXd u_;
  std::vector<Mohr> stress_;
  std::vector<PointCones> cones_;
  std::vector<double> force_;
  std::vector<Barrier> low_, high_;
  double parameter_ = 0.0;
  Barrier parameter_low_, parameter_high_;
  Barrier unspent_;  ///< of the budget; its multiplier is the price

  // Of one iteration: scalings, the Schur complement and its borders.
  std::vector<PointScaling> scaling_;
  std::vector<Eigen::Matrix3d> give_;       ///< of a point: stress for volume strain
  std::vector<Eigen::Matrix3d> give_root_;  ///< transpose(root) root = give
  std::vector<double> force_give_;
  std::vector<Mohr> strain_;
  SparseStiffness stiffness_, raised_;
  Eigen::VectorXd parameter_column_, parameter_solved_;
  double parameter_stiffness_ = 0.0;
  Eigen::VectorXd budget_column_, budget_solved_;
  double budget_give_ = 0.0;
  double budget_parameter_ = 0.0;
};

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

void InteriorPoint::start() {
  u_ = Eigen::VectorXd::Zero(equilibrium_.equations().count());
  const std::size_t count = at(equilibrium_.point_count());
  stress_.resize(count);
  cones_.resize(count);
  scaling_.resize(count);
  give_.resize(count);
  give_root_.resize(count);
  for (std::size_t p = 0; p < count; ++p)
    stress_[p] = -start_stress * strength(p).compression * unit;
  parameter_ = has_parameter_ ? std::min(1.0, 0.5 * program_.most_parameter) : 0.0;
  force_.resize(program_.forces.size());
  force_give_.resize(forces());
  low_.resize(forces());
  high_.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const double most = unknown(j).most + parameter_ * unknown(j).most_rise;
    force_[j] = bounded(j) ? 0.5 * most : start_stress;
  }
  if (has_budget_) {
    double spent = 0.0;
    for (std::size_t j = 0; j < forces(); ++j) spent += unknown(j).budget_share * force_[j];
    const double all = *program_.budget + parameter_ * program_.budget_rise;
    unspent_.slack = std::max(all - spent, 0.1 * all);
  }
  set_slacks();
  for (PointCones& cones : cones_) {
    cones.opening = start_product / cones.slack_tension(0) * unit;
    cones.crushing = start_product / cones.slack_compression(0) * unit;
  }
  const auto centre = [](Barrier& barrier) { barrier.multiplier = start_product / barrier.slack; };
  std::for_each(low_.begin(), low_.end(), centre);
  for (std::size_t j = 0; j < forces(); ++j) {
    if (bounded(j)) centre(high_[j]);
  }
  centre(parameter_low_);
  centre(parameter_high_);
  centre(unspent_);
}

void InteriorPoint::set_slacks() {
  for (std::size_t p = 0; p < points(); ++p) {
    const Strength& s = strength(p);
    cones_[p].slack_tension = (s.tension + parameter_ * s.tension_rise) * unit - stress_[p];
    cones_[p].slack_compression = s.compression * unit + stress_[p];
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    low_[j].slack = force_[j];
    if (bounded(j)) {
      high_[j].slack = unknown(j).most + parameter_ * unknown(j).most_rise - force_[j];
    }
  }
  parameter_low_.slack = parameter_;
  parameter_high_.slack = program_.most_parameter - parameter_;
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
    if (factor_.factorize(raised_)) return;
  }
  throw SolveError("limit analysis: the equations of equilibrium broke down");
}

/// Solution with the Schur complement, refined.
Eigen::VectorXd InteriorPoint::solve(const Eigen::VectorXd& side) const {
  Eigen::VectorXd u = factor_.solve(side);
  double before = std::numeric_limits<double>::infinity();
  for (int k = 0; k < most_refinements; ++k) {
    const Eigen::VectorXd rest = side - stiffness_.selfadjointView<Eigen::Lower>() * u;
    const double now = rest.norm();
    if (now > 0.5 * before || now <= std::numeric_limits<double>::epsilon() * side.norm()) break;
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

Step InteriorPoint::direction(const Targets& targets) {
  // Right-hand sides of stationarity, then of the Schur complement.
  equilibrium_.strains(u_, strain_);
  std::vector<Mohr> stress_side(points());
  double parameter_side = -program_.parameter_cost + parameter_low_.multiplier -
                          parameter_high_.multiplier + targets.parameter_low -
                          targets.parameter_high;
  if (program_.load_rise.size() > 0) parameter_side -= u_.dot(program_.load_rise);
  std::vector<Mohr> moved(points());
  for (std::size_t p = 0; p < points(); ++p) {
    stress_side[p] = strain_[p] - cones_[p].opening + cones_[p].crushing - targets.opening[p] +
                     targets.crushing[p];
    moved[p] = -(give_[p] * stress_side[p]);
    const double rise = strength(p).tension_rise;
    if (rise == 0.0) continue;
    parameter_side += rise * (cones_[p].opening(0) + targets.opening[p](0));
    parameter_side -= rise * scaling_[p].tension.undo_twice(unit).dot(moved[p]);
  }
  Eigen::VectorXd side = -out_of_balance();
  equilibrium_.add_forces(moved, side);
  const double price = has_budget_ ? unspent_.multiplier : 0.0;
  double budget_side = has_budget_ ? overspent() + targets.unspent : 0.0;
  if (has_budget_) parameter_side += price * program_.budget_rise;
  std::vector<double> force_side(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    force_side[j] = -force.cost - work_of(force, u_) - price * force.budget_share +
                    low_[j].multiplier + targets.low[j];
    if (bounded(j)) {
      force_side[j] -= high_[j].multiplier + targets.high[j];
      parameter_side += force.most_rise * (high_[j].multiplier + targets.high[j]);
    }
    const double change = force_give_[j] * force_side[j];
    push(force, change, side);
    budget_side += force.budget_share * change;
    if (bounded(j)) parameter_side += high_[j].stiffness() * force.most_rise * change;
  }

  // Equilibrium, budget and parameter together: two borders on the Schur complement.
  Step step;
  step.u = solve(side);
  Eigen::Matrix2d border = Eigen::Matrix2d::Identity();
  Eigen::Vector2d border_side = Eigen::Vector2d::Zero();
  if (has_budget_) {
    border(0, 0) = budget_give_ - budget_column_.dot(budget_solved_);
    border_side(0) = budget_side - budget_column_.dot(step.u);
  }
  if (has_parameter_) {
    border(1, 1) = parameter_stiffness_ + parameter_column_.dot(parameter_solved_);
    border_side(1) = parameter_side + parameter_column_.dot(step.u);
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

  // Back to stresses, forces and multipliers.
  equilibrium_.strains(step.u, strain_);
  step.stress.resize(points());
  step.opening.resize(points());
  step.crushing.resize(points());
  for (std::size_t p = 0; p < points(); ++p) {
    const PointScaling& scaling = scaling_[p];
    const double cap = strength(p).tension_rise * step.parameter;
    Mohr side_here = strain_[p] + stress_side[p];
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
  step.force.resize(forces());
  step.low.resize(forces());
  step.high.resize(forces());
  for (std::size_t j = 0; j < forces(); ++j) {
    const UnknownForce& force = unknown(j);
    double side_here = force_side[j] - work_of(force, step.u) - force.budget_share * step.price;
    const double rise = bounded(j) ? force.most_rise * step.parameter : 0.0;
    if (bounded(j)) side_here += high_[j].stiffness() * rise;
    step.force[j] = force_give_[j] * side_here;
    step.low[j] = targets.low[j] - low_[j].stiffness() * step.force[j];
    if (bounded(j)) {
      step.high[j] = targets.high[j] + high_[j].stiffness() * (step.force[j] - rise);
    }
  }
  return step;
}

Targets InteriorPoint::predictor() const {
  Targets targets;
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

Targets InteriorPoint::corrector(const Step& predicted, double target) const {
  Targets targets = predictor();
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

/// Longest steps of slacks and of multipliers that keep all of them positive.
std::pair<double, double> InteriorPoint::longest(const Step& step) const {
  double primal = std::numeric_limits<double>::infinity();
  double dual = primal;
  for (std::size_t p = 0; p < points(); ++p) {
    const PointCones& cones = cones_[p];
    const Mohr tension_slack = strength(p).tension_rise * step.parameter * unit - step.stress[p];
    primal = std::min({primal, largest_step(cones.slack_tension, tension_slack),
                       largest_step(cones.slack_compression, step.stress[p])});
    dual = std::min({dual, largest_step(cones.opening, step.opening[p]),
                     largest_step(cones.crushing, step.crushing[p])});
  }
  const auto limit = [&](const Barrier& barrier, double slack, double multiplier) {
    primal = std::min(primal, step_to_zero(barrier.slack, slack));
    dual = std::min(dual, step_to_zero(barrier.multiplier, multiplier));
  };
  for (std::size_t j = 0; j < forces(); ++j) {
    limit(low_[j], step.force[j], step.low[j]);
    if (bounded(j)) {
      limit(high_[j], unknown(j).most_rise * step.parameter - step.force[j], step.high[j]);
    }
  }
  if (has_parameter_) {
    limit(parameter_low_, step.parameter, step.parameter_low);
    limit(parameter_high_, -step.parameter, step.parameter_high);
  }
  if (has_budget_) limit(unspent_, step.unspent, step.price);
  return {primal, dual};
}

void InteriorPoint::move(const Step& step, double primal, double dual) {
  u_ += dual * step.u;
  parameter_ += primal * step.parameter;
  for (std::size_t p = 0; p < points(); ++p) {
    stress_[p] += primal * step.stress[p];
    cones_[p].opening += dual * step.opening[p];
    cones_[p].crushing += dual * step.crushing[p];
  }
  for (std::size_t j = 0; j < forces(); ++j) {
    force_[j] += primal * step.force[j];
    low_[j].multiplier += dual * step.low[j];
    if (bounded(j)) high_[j].multiplier += dual * step.high[j];
  }
  if (has_parameter_) {
    parameter_low_.multiplier += dual * step.parameter_low;
    parameter_high_.multiplier += dual * step.parameter_high;
  }
  if (has_budget_) {
    unspent_.slack += primal * step.unspent;
    unspent_.multiplier += dual * step.price;
  }
  set_slacks();
}

/// Mean product of slack and multiplier, after a step where one is given.
double InteriorPoint::complementarity(const Step* step, double primal, double dual) const {
  double sum = 0.0;
  std::size_t count = 2 * points() + forces();
  for (std::size_t p = 0; p < points(); ++p) {
    PointCones cones = cones_[p];
    if (step != nullptr) {
      cones.slack_tension +=
          primal * (strength(p).tension_rise * step->parameter * unit - step->stress[p]);
      cones.slack_compression += primal * step->stress[p];
      cones.opening += dual * step->opening[p];
      cones.crushing += dual * step->crushing[p];
    }
    sum += cones.slack_tension.dot(cones.opening) + cones.slack_compression.dot(cones.crushing);
  }
  const auto add = [&](const Barrier& barrier, double slack, double multiplier) {
    sum += (barrier.slack + primal * slack) * (barrier.multiplier + dual * multiplier);
  };
  const Step none;
  const Step& s = step != nullptr ? *step : none;
  for (std::size_t j = 0; j < forces(); ++j) {
    const double change = step != nullptr ? s.force[j] : 0.0;
    add(low_[j], change, step != nullptr ? s.low[j] : 0.0);
    if (!bounded(j)) continue;
    ++count;
    add(high_[j], unknown(j).most_rise * s.parameter - change, step != nullptr ? s.high[j] : 0.0);
  }
  if (has_parameter_) {
    count += 2;
    add(parameter_low_, s.parameter, s.parameter_low);
    add(parameter_high_, -s.parameter, s.parameter_high);
  }
  if (has_budget_) {
    ++count;
    add(unspent_, s.unspent, s.price);
  }
  return sum / static_cast<double>(count);
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

LimitSolution InteriorPoint::run(double scale, double gap) {
  const double load_size = program_.load.lpNorm<Eigen::Infinity>();
  const double rise_size =
      program_.load_rise.size() > 0 ? program_.load_rise.lpNorm<Eigen::Infinity>() : 0.0;
  LimitSolution best;
  double best_gap = std::numeric_limits<double>::infinity();
  for (int iteration = 0;; ++iteration) {
    const double balance = out_of_balance().lpNorm<Eigen::Infinity>() /
                           (load_size + std::max(parameter_, 1.0) * rise_size);
    const double admissible = cost();
    const double least = bound();
    const double gap_now = (admissible - least) / std::max(std::abs(admissible), scale);
    if (balance < balance_tolerance && gap_now < best_gap) {
      best_gap = gap_now;
      best = {admissible, least, parameter_, balance, iteration, u_, stress_, force_};
    }
    // Round-off near the end may spoil the steps; what was found before stands.
    const bool stuck = best_gap < spoilt * gap && iteration > best.iterations + patience;
    const bool broken = !std::isfinite(complementarity());
    if (best_gap < gap || stuck || broken || iteration == most_iterations) {
      best.iterations = iteration;
      break;
    }
    scale_and_factorise();
    const double now = complementarity();
    const Step predicted = direction(predictor());
    const auto [primal, dual] = longest(predicted);
    const double after = complementarity(&predicted, std::min(1.0, primal), std::min(1.0, dual));
    const double centring = std::pow(std::clamp(after / now, 0.0, 1.0), 3);
    const Step step = direction(corrector(predicted, centring * now));
    const auto [primal_limit, dual_limit] = longest(step);
    move(step, std::min(1.0, step_share * primal_limit), std::min(1.0, step_share * dual_limit));
  }
  if (best_gap > spoilt * gap) {
    throw SolveError(
        fmt::format("limit analysis did not settle in {} steps: between {:.6g} and {:.6g}",
                    best.iterations, best.bound, best.admissible));
  }
  return best;
}

}  // namespace

LargestWork largest_work(const Strength& strength, const Mohr& strain) {
  // The principal strains are half of mean +- radius of these three components.
  const double radius = std::hypot(strain(1), strain(2));
  const double major = 0.5 * (strain(0) + radius);
  const double minor = 0.5 * (strain(0) - radius);
  const double opening = std::max(major, 0.0) + std::max(minor, 0.0);
  const double crushing = -std::min(major, 0.0) - std::min(minor, 0.0);
  return {strength.tension * opening + strength.compression * crushing,
          strength.tension_rise * opening};
}

LimitSolver::LimitSolver(const Equilibrium& equilibrium)
    : equilibrium_(equilibrium), factor_(equilibrium.pattern().empty()) {}

LimitSolution LimitSolver::solve(const LimitProgram& program, double scale, double gap) {
  return InteriorPoint(equilibrium_, factor_, program).run(scale, gap);
}

}  // namespace deadshore::solver
