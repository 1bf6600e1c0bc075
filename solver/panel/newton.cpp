#include "solver/panel/newton.h"

#include "solver/job/error.h"
#include "solver/panel/interior_path.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

namespace {

constexpr double slope_left_over = 0.3;  // part of the first slope at which a line search stops
constexpr int most_slopes = 30;

// When plain steps give up for the interior path.
constexpr int plain_patience = 2;  // steps without a new least residual
constexpr int most_plain_steps = 10;
constexpr double lost = 0.95;  // residual of a displacement that has nothing to do with balance

// A step along the interior path costs two to four plain ones. Masonry that bears some tension, or
// cannot crack, is settled by few careful steps as a rule, so these come first there. Measured on
// walls with a mean compression of 0.1 to 0.2 N/mm2.
constexpr double weak_tension = 0.04;  // N/mm2
constexpr int most_careful_steps = 25;

// How near the end of the interior path plain steps are tried: the first residual, then each time
// a part of the last.
constexpr double start_closeness = 1.0;  // of the interior path, see there
constexpr double first_landing = 2e-6;
constexpr double next_landing = 0.1;

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

/// Steps down to balance, with the count of them.
class Descent {
 public:
  Descent(PanelModel& model, const PanelLoading& loading, const Eigen::VectorXd& start,
          const NewtonOptions& options, const std::function<void(int, double)>& progress)
      : model_(model),
        loading_(loading),
        options_(options),
        progress_(progress),
        balance_(model, loading),
        stiffness_(model.empty_stiffness()) {
    go_to(start);
  }

  [[nodiscard]] const NewtonReport& report() const { return report_; }
  [[nodiscard]] const Eigen::VectorXd& displacement() const { return u_; }
  [[nodiscard]] bool over() const {
    return report_.converged || !std::isfinite(report_.residual) ||
           report_.iterations >= options_.most_iterations;
  }

  /// Full steps by the law itself while they go well; otherwise back to the best displacement.
  void go_plainly() {
    Eigen::VectorXd best = u_;
    double least = report_.residual;
    int steps_since_least = 0;
    for (int step = 0; step < most_plain_steps && !over(); ++step) {
      if (!step_by_law(false)) break;
      if (report_.residual < least) {
        best = u_;
        least = report_.residual;
        steps_since_least = 0;
      } else if (++steps_since_least == plain_patience || report_.residual > lost) {
        break;
      }
    }
    if (!over()) return_to(best);
  }

  /// Along the interior path until the law's residual is below `landing`. False at its end.
  bool follow(InteriorPath& path, double landing) {
    while (!over()) {
      if (!path.advance()) return false;
      ++report_.iterations;
      go_to(path.displacement());
      if (report_.residual <= landing) return true;
    }
    return true;
  }

  /// Full steps with a line search wherever they wander, which is sure to go down. False where the
  /// stiffness is singular.
  bool go_carefully(int most_steps) {
    int steps_since_least = 0;
    for (int step = 0; step < most_steps && !over(); ++step) {
      const double least = least_;
      if (!step_by_law(steps_since_least > options_.patience)) return false;
      steps_since_least = report_.residual < least ? 0 : steps_since_least + 1;
    }
    return true;
  }

  /// What can move as the contacts are now, in words.
  [[nodiscard]] std::optional<std::string> unheld() const {
    std::vector<const ContactPoint*> closed = points_of(loading_.beds);
    std::erase_if(closed, [&](const ContactPoint* point) { return !point->is_closed(u_); });
    return model_.rigid_motions().unheld(closed);
  }

 private:
  void go_to(const Eigen::VectorXd& u) {
    return_to(u);
    const bool stuck = report_.residual >= least_ && report_.residual <= options_.round_off;
    report_.converged = report_.residual <= options_.tolerance || stuck;
    least_ = std::min(least_, report_.residual);
    if (progress_) progress_(report_.iterations, report_.residual);
  }

  void return_to(const Eigen::VectorXd& u) {
    u_ = u;
    state_ = balance_.at(u_, &stiffness_);
    report_.residual = state_.relative;
  }

  /// False where the stiffness is singular.
  bool step_by_law(bool search) {
    if (unheld() || !model_.factor().factorize(stiffness_)) return false;
    ++report_.iterations;
    const Eigen::VectorXd step = model_.factor().solve(state_.out_of_balance);
    const double length =
        search ? balance_.line_search(u_, step, -state_.out_of_balance.dot(step)) : 1.0;
    go_to(u_ + length * model_.spread_out(step));
    return true;
  }

  PanelModel& model_;
  const PanelLoading& loading_;
  const NewtonOptions& options_;
  const std::function<void(int, double)>& progress_;
  Balance balance_;
  SparseStiffness stiffness_;
  NewtonReport report_;
  Eigen::VectorXd u_;
  Balance::State state_;
  double least_ = std::numeric_limits<double>::infinity();
};

/// Whether no material is as weak as `weak_tension`.
bool bears_tension(const PanelLoading& loading) {
  return std::ranges::none_of(loading.materials, [](const PanelMaterial& material) {
    return material.tensile_strength && *material.tensile_strength < weak_tension;
  });
}

}  // namespace

double out_of_balance(const PanelModel& model, const PanelLoading& loading,
                      const Eigen::VectorXd& u) {
  return Balance(model, loading).at(u).relative;
}

NewtonReport minimise(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd& u,
                      const NewtonOptions& options,
                      const std::function<void(int, double)>& progress) {
  if (const auto free = model.rigid_motions().unheld(points_of(loading.beds))) {
    throw SolveError(*free);
  }
  Descent descent(model, loading, u, options, progress);
  if (bears_tension(loading)) {
    (void)descent.go_carefully(most_careful_steps);
  } else {
    descent.go_plainly();
  }
  if (!descent.over()) {
    InteriorPath path(model, loading, descent.displacement(), start_closeness);
    for (double landing = first_landing; !descent.over(); landing *= next_landing) {
      if (!descent.follow(path, landing)) break;
      if (!descent.over()) descent.go_plainly();
    }
  }
  if (!descent.go_carefully(options.most_iterations)) {
    throw SolveError(descent.unheld().value_or("parts of the wall can move or fold freely"));
  }
  u = descent.displacement();
  return descent.report();
}

}  // namespace deadshore::solver
