#include "solver/frame/spring_contact.h"

#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double least_pivot = 1e-12;    // of a stiffness scaled to a unit diagonal
constexpr double open_stiffness = 1e-6;  // part an open spring keeps where a step needs a hold
constexpr double idle_force = 1e-10;     // part of the load below which open or closed is the same
constexpr int most_contact_steps = 100;
constexpr int most_doublings = 60;  // of a step: energy that falls so far falls for ever
constexpr int most_halvings = 200;  // of the line search: round-off ends it before

Eigen::VectorXd inverse_root_of_diagonal(const Eigen::MatrixXd& stiffness) {
  return stiffness.diagonal().unaryExpr(
      [](double k) { return k > 0.0 ? 1.0 / std::sqrt(k) : 1.0; });
}

Eigen::VectorXd spread_out(const FrameSystem& system, const Eigen::VectorXd& free) {
  Eigen::VectorXd all = Eigen::VectorXd::Zero(system.load.size());
  all(system.free) = free;
  return all;
}

/// The movement of least stiffness, all displacements: that of a mechanism where there is one.
Eigen::VectorXd softest_movement(const FrameSystem& system, const Eigen::MatrixXd& stiffness) {
  const Eigen::VectorXd scale = inverse_root_of_diagonal(stiffness);
  const Eigenpairs pairs = eigenpairs(scale.asDiagonal() * stiffness * scale.asDiagonal());
  return spread_out(system, scale.cwiseProduct(pairs.vectors.col(0)));
}

bool bears(const SpringRow& spring, const Eigen::VectorXd& u) {
  return !spring.compression_only || spring.closure(u) > 0.0;
}

std::vector<bool> bearing(const FrameSystem& system, const Eigen::VectorXd& u) {
  std::vector<bool> closed;
  for (const SpringRow& spring : system.springs) closed.push_back(bears(spring, u));
  return closed;
}

/// Size of the forces at play, for judging what is small.
double force_scale(const FrameSystem& system, const Eigen::VectorXd& u) {
  double scale = std::max(system.load.norm(), (system.stiffness * system.given).norm());
  for (const SpringRow& spring : system.springs)
    scale = std::max(scale, spring.stiffness * std::abs(spring.closure(u)));
  return scale;
}

/// Whether the springs bear at `u` as in `closed`, up to forces that do not matter.
bool agrees(const FrameSystem& system, const std::vector<bool>& closed, const Eigen::VectorXd& u) {
  const double idle = idle_force * force_scale(system, u);
  for (std::size_t i = 0; i < closed.size(); ++i) {
    const SpringRow& spring = system.springs[i];
    if (bears(spring, u) == closed[i]) continue;
    if (spring.stiffness * std::abs(spring.closure(u)) > idle) return false;
  }
  return true;
}

/// Solution with the set of closed springs given; the correction repeats once to round off less.
Eigen::VectorXd solve_with(const FrameSystem& system, const StiffnessFactor& factor,
                           const std::vector<bool>& closed) {
  Eigen::VectorXd u = system.given;
  for (int repeat = 0; repeat < 2; ++repeat) {
    Eigen::VectorXd rest = system.load - system.stiffness * u;
    for (std::size_t i = 0; i < closed.size(); ++i) {
      if (!closed[i]) continue;
      const SpringRow& spring = system.springs[i];
      const double force = spring.stiffness * spring.closure(u);
      for (const auto& term : spring.terms) rest(term.displacement) -= force * term.factor;
    }
    u += spread_out(system, factor.solve(rest(system.free)));
  }
  return u;
}

/// How far to go along `step` to the least energy on that line; empty if it falls for ever.
std::optional<double> line_search(const FrameSystem& system, const Eigen::VectorXd& u,
                                  const Eigen::VectorXd& step) {
  const auto slope = [&](double length) {
    return (resistance(system, u + length * step) - system.load).dot(step);
  };
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; slope(high) < 0.0; ++i) {
    if (i == most_doublings) return std::nullopt;
    low = high;
    high *= 2.0;
  }
  for (int i = 0; i < most_halvings && low < 0.5 * (low + high) && 0.5 * (low + high) < high; ++i) {
    const double middle = 0.5 * (low + high);
    (slope(middle) < 0.0 ? low : high) = middle;
  }
  return high;
}

/// A direction in which the energy falls from `u`.
Eigen::VectorXd newton_step(const FrameSystem& system, const StiffnessFactor& factor,
                            const Eigen::VectorXd& u) {
  const Eigen::VectorXd rest = system.load - resistance(system, u);
  return spread_out(system, factor.solve(rest(system.free)));
}

}  // namespace

std::optional<StiffnessFactor> StiffnessFactor::of(const Eigen::MatrixXd& stiffness) {
  if (stiffness.rows() > 0 && !(stiffness.diagonal().minCoeff() > 0.0)) return std::nullopt;
  Eigen::VectorXd scale = inverse_root_of_diagonal(stiffness);
  auto factor = DenseCholesky::of(scale.asDiagonal() * stiffness * scale.asDiagonal());
  if (!factor || factor->least_pivot() < least_pivot) return std::nullopt;
  return StiffnessFactor(std::move(scale), *std::move(factor));
}

Eigen::VectorXd StiffnessFactor::solve(const Eigen::VectorXd& right_hand_side) const {
  return scale_.cwiseProduct(factor_.solve(scale_.cwiseProduct(right_hand_side)));
}

Eigen::MatrixXd free_stiffness(const FrameSystem& system, const std::vector<bool>& closed) {
  Eigen::MatrixXd all = system.stiffness;
  for (std::size_t i = 0; i < closed.size(); ++i) {
    if (!closed[i]) continue;
    const SpringRow& spring = system.springs[i];
    for (const auto& a : spring.terms)
      for (const auto& b : spring.terms)
        all(a.displacement, b.displacement) += spring.stiffness * a.factor * b.factor;
  }
  return all(system.free, system.free);
}

Eigen::VectorXd resistance(const FrameSystem& system, const Eigen::VectorXd& u) {
  Eigen::VectorXd force = system.stiffness * u;
  for (const SpringRow& spring : system.springs) {
    if (!bears(spring, u)) continue;
    const double push = spring.stiffness * spring.closure(u);
    for (const auto& term : spring.terms) force(term.displacement) += push * term.factor;
  }
  return force;
}

ContactResult settle(const FrameSystem& system, std::vector<bool>& closed) {
  ContactResult result;
  Eigen::VectorXd u = system.given;
  for (result.steps = 1; result.steps <= most_contact_steps; ++result.steps) {
    Eigen::MatrixXd stiffness = free_stiffness(system, closed);
    auto factor = StiffnessFactor::of(stiffness);
    const bool exact = factor.has_value();
    if (exact) {
      const Eigen::VectorXd tried = solve_with(system, *factor, closed);
      if (agrees(system, closed, tried)) {
        result.outcome = ContactOutcome::settled;
        result.u = tried;
        return result;
      }
    } else {
      const std::vector<bool> all(closed.size(), true);
      stiffness += open_stiffness * (free_stiffness(system, all) - stiffness);
      factor = StiffnessFactor::of(stiffness);
      if (!factor) {
        result.outcome = ContactOutcome::singular;
        result.movement = softest_movement(system, free_stiffness(system, closed));
        return result;
      }
    }
    const Eigen::VectorXd step = newton_step(system, *factor, u);
    const auto length = line_search(system, u, step);
    if (!length) {
      result.outcome = ContactOutcome::singular;
      result.movement = step;
      return result;
    }
    u += *length * step;
    closed = bearing(system, u);
  }
  // A frame that overturns runs off in ever longer steps, on a spring that cannot hold it alone.
  const Eigen::MatrixXd stiffness = free_stiffness(system, closed);
  if (!StiffnessFactor::of(stiffness)) {
    result.outcome = ContactOutcome::singular;
    result.movement = softest_movement(system, stiffness);
  }
  return result;
}

}  // namespace deadshore::solver
