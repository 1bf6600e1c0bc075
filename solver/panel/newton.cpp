#include "solver/panel/newton.h"

#include "solver/model/error.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double slope_left_over = 0.3;  // part of the first slope at which a line search stops
constexpr int most_slopes = 30;

/// The loading seen along the free equations.
class Balance {
 public:
  Balance(const PanelModel& model, const PanelLoading& loading)
      : model_(model), loading_(loading), load_size_(loading.load.norm()) {}

  struct State {
    Eigen::VectorXd out_of_balance;  ///< over the free equations, N
    double relative = 0.0;
  };

  State at(const Eigen::VectorXd& u, SparseStiffness* stiffness = nullptr) const {
    const Eigen::VectorXd resistance = model_.resistance(loading_, u, stiffness);
    State state{model_.gather_free(loading_.load - resistance), 0.0};
    const double size = std::max(load_size_, resistance.norm());
    state.relative = size > 0.0 ? state.out_of_balance.norm() / size : 0.0;
    return state;
  }

  /// Step length along `step` at which the energy's slope has fallen to `slope_left_over`.
  [[nodiscard]] double line_search(const Eigen::VectorXd& u, const Eigen::VectorXd& step,
                                   double first_slope) const {
    const Eigen::VectorXd nodal_step = model_.spread_out(step);
    const auto slope = [&](double length) {
      return -at(u + length * nodal_step).out_of_balance.dot(step);
    };
    double low = 0.0;
    double low_slope = first_slope;
    double high = 1.0;
    double high_slope = slope(high);
    for (int i = 0; i < most_slopes && high_slope < slope_left_over * first_slope; ++i) {
      low = high;
      low_slope = high_slope;
      high *= 2.0;
      high_slope = slope(high);
    }
    double length = high;
    double length_slope = high_slope;
    for (int i = 0; i < most_slopes; ++i) {
      if (std::abs(length_slope) <= slope_left_over * std::abs(first_slope)) break;
      const double secant = low + (high - low) * low_slope / (low_slope - high_slope);
      length = std::clamp(secant, low + 0.1 * (high - low), high - 0.1 * (high - low));
      length_slope = slope(length);
      (length_slope < 0.0 ? low : high) = length;
      (length_slope < 0.0 ? low_slope : high_slope) = length_slope;
    }
    return length;
  }

 private:
  const PanelModel& model_;
  const PanelLoading& loading_;
  double load_size_;
};

}  // namespace

NewtonReport minimise(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd& u,
                      const NewtonOptions& options,
                      const std::function<void(int, double)>& progress) {
  const Balance balance(model, loading);
  SparseStiffness stiffness = model.empty_stiffness();
  NewtonReport report;
  double least = std::numeric_limits<double>::infinity();
  int steps_since_least = 0;
  Balance::State state = balance.at(u, &stiffness);
  while (true) {
    report.residual = state.relative;
    if (progress) progress(report.iterations, report.residual);
    if (!std::isfinite(state.relative)) return report;
    const bool stuck = state.relative >= least && state.relative <= options.round_off;
    if (state.relative <= options.tolerance || stuck) {
      report.converged = true;
      return report;
    }
    if (report.iterations == options.most_iterations) return report;

    if (state.relative < least) {
      least = state.relative;
      steps_since_least = 0;
    } else {
      ++steps_since_least;
    }
    if (!model.factor().factorize(stiffness)) {
      throw SolveError("the wall can move freely: nothing holds it sideways or up");
    }
    ++report.iterations;
    const Eigen::VectorXd step = model.factor().solve(state.out_of_balance);
    const double length = steps_since_least > options.patience
                              ? balance.line_search(u, step, -state.out_of_balance.dot(step))
                              : 1.0;
    u += length * model.spread_out(step);
    state = balance.at(u, &stiffness);
  }
}

}  // namespace deadshore::solver
