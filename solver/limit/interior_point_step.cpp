#include "solver/limit/interior_point.h"

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

const Mohr unit = Mohr::UnitX();

double step_to_zero(double value, double change) {
  return change < 0.0 ? -value / change : std::numeric_limits<double>::infinity();
}

}  // namespace

/// Longest steps of slacks and of multipliers that keep all of them positive.
std::pair<double, double> InteriorPoint::longest(const LimitStep& step) const {
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
  const auto limit = [&](const LimitBarrier& barrier, double slack, double multiplier) {
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

void InteriorPoint::move(const LimitStep& step, double primal, double dual) {
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
double InteriorPoint::complementarity(const LimitStep* step, double primal, double dual) const {
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
  const auto add = [&](const LimitBarrier& barrier, double slack, double multiplier) {
    sum += (barrier.slack + primal * slack) * (barrier.multiplier + dual * multiplier);
  };
  const LimitStep none;
  const LimitStep& s = step != nullptr ? *step : none;
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

}  // namespace deadshore::solver
