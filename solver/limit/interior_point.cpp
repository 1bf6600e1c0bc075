#include "solver/limit/interior_point.h"

#include "solver/fem/index.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr int most_iterations = 100;
constexpr double step_share = 0.95;   // of the way to the boundary
constexpr double start_stress = 0.1;  // of the strength
constexpr double start_product = 0.1;
constexpr double balance_tolerance = 1e-5;  // of the largest load on a node
constexpr double spoilt = 10.0;             // times the gap asked for is still a result
constexpr int patience = 4;                 // iterations

const Mohr unit = Mohr::UnitX();

}  // namespace

InteriorPoint::InteriorPoint(const Equilibrium& equilibrium, SparseCholesky& factor,
                             const LimitProgram& program)
    : equilibrium_(equilibrium),
      factor_(factor),
      program_(program),
      has_parameter_(program.most_parameter > 0.0),
      has_budget_(program.budget.has_value()),
      strain_(at(equilibrium.point_count())),
      stiffness_(equilibrium.pattern().empty()) {
  start();
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
  const auto centre = [](LimitBarrier& barrier) {
    barrier.multiplier = start_product / barrier.slack;
  };
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
    const LimitStep predicted = direction(predictor());
    const auto [primal, dual] = longest(predicted);
    const double after = complementarity(&predicted, std::min(1.0, primal), std::min(1.0, dual));
    const double centring = std::pow(std::clamp(after / now, 0.0, 1.0), 3);
    const LimitStep step = direction(corrector(predicted, centring * now));
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

}  // namespace deadshore::solver
