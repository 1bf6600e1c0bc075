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

// Three ways down take turns, since each is quick where the others are slow:
// - plain Newton steps end exactly, but only near the answer;
// - a line search on the energy's slope always goes down, but by short steps where cracks open and
//   close;
// - the interior path takes much the same number of steps everywhere, but never quite ends.

// The line search stops where the energy's slope has fallen to this part of that at its start, or
// after so many evaluations of either kind, doubling the step and dividing it.
constexpr double line_search_slope = 0.3;
constexpr int most_line_search_steps = 30;

// Plain Newton is given up after so many steps without a new least residual, ...
constexpr int plain_patience = 2;
// ... after so many steps in all, ...
constexpr int most_plain_steps = 10;
// ... or, once the residual grows, above this relative residual.
constexpr double diverged = 0.95;

// Below this tensile strength, N/mm2, the interior path comes first. Measured on walls with a mean
// compression of 0.1 to 0.2 N/mm2.
constexpr double weak_tension = 0.04;
// Above it, and for masonry that cannot crack, first come so many Newton steps with a line search:
// a step of the path costs two to four of them.
constexpr int most_search_steps = 25;

// On the path, plain Newton is tried once the relative residual is down to this, ...
constexpr double first_try = 2e-6;
// ... and each time it has fallen by this factor since the last try.
constexpr double next_try = 0.1;

/// Out-of-balance forces of a loading over the free equations.
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

  /// Step length along `step` at which the energy's slope has fallen to `line_search_slope`.
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
    for (int i = 0; i < most_line_search_steps && high_slope < line_search_slope * first_slope;
         ++i) {
      low = high;
      low_slope = high_slope;
      high *= 2.0;
      high_slope = slope(high);
    }
    double length = high;
    double length_slope = high_slope;
    for (int i = 0; i < most_line_search_steps; ++i) {
      if (std::abs(length_slope) <= line_search_slope * std::abs(first_slope)) break;
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

/// A descent to the least energy by any of the three ways: where it is, and the count of its steps.
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

  /// Plain Newton: full steps while the residual falls; ends at the best displacement.
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
      } else if (++steps_since_least == plain_patience || report_.residual > diverged) {
        break;
      }
    }
    if (!over()) return_to(best);
  }

  /// Along the interior path until the law's relative residual is at most `residual`. False at the
  /// path's end.
  bool follow(InteriorPath& path, double residual) {
    while (!over()) {
      if (!path.advance()) return false;
      ++report_.iterations;
      go_to(path.displacement());
      if (report_.residual <= residual) return true;
    }
    return true;
  }

  /// Newton steps with a line search once they bring no new least residual: the energy always goes
  /// down. False where the stiffness is singular.
  bool go_with_line_search(int most_steps) {
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

/// Whether plain steps with a line search are tried first: no material is as weak in tension as
/// `weak_tension`.
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
    (void)descent.go_with_line_search(most_search_steps);
  } else {
    descent.go_plainly();
  }
  if (!descent.over()) {
    InteriorPath path(model, loading, descent.displacement());
    for (double residual = first_try; !descent.over(); residual *= next_try) {
      if (!descent.follow(path, residual)) break;
      if (!descent.over()) descent.go_plainly();
    }
  }
  if (!descent.go_with_line_search(options.most_iterations)) {
    throw SolveError(descent.unheld().value_or("parts of the wall can move or fold freely"));
  }
  u = descent.displacement();
  return descent.report();
}

}  // namespace deadshore::solver
