#pragma once

#include "solver/fem/sparse_cholesky.h"
#include "solver/limit/equilibrium.h"
#include "solver/limit/limit_program.h"
#include "solver/limit/lorentz_cone.h"

#include <Eigen/Core>

#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace deadshore::solver {

/// A bound on one number: its distance `slack` from the bound and the multiplier.
struct LimitBarrier {
  double slack = 1.0;
  double multiplier = 0.0;

  [[nodiscard]] double stiffness() const { return multiplier / slack; }
};

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
struct LimitStep {
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
struct LimitTargets {
  std::vector<Mohr> opening, crushing;
  std::vector<double> low, high;
  double parameter_low = 0.0;
  double parameter_high = 0.0;
  double unspent = 0.0;  ///< over the price, in the space of the slack
};

/// Right-hand sides of stationarity, and of what is left when points and forces are eliminated.
struct LimitSides {
  std::vector<Mohr> stress;
  std::vector<double> force;
  Eigen::VectorXd equilibrium;
  double budget = 0.0;
  double parameter = 0.0;
};

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
  InteriorPoint(const Equilibrium& equilibrium, SparseCholesky& factor,
                const LimitProgram& program);

  /// As `LimitSolver::solve`.
  [[nodiscard]] LimitSolution run(double scale, double gap);

 private:
  void start();
  void set_slacks();
  void scale_and_factorise();
  void factorise();
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& side) const;
  void eliminate_parameter();
  void eliminate_budget();
  [[nodiscard]] LimitStep direction(const LimitTargets& targets);
  [[nodiscard]] LimitSides sides(const LimitTargets& targets);
  void add_point_sides(const LimitTargets& targets, LimitSides& sides);
  void add_force_sides(const LimitTargets& targets, LimitSides& sides) const;
  void solve_bordered(const LimitSides& sides, const LimitTargets& targets, LimitStep& step) const;
  void find_points(const LimitSides& sides, const LimitTargets& targets, LimitStep& step);
  void find_forces(const LimitSides& sides, const LimitTargets& targets, LimitStep& step) const;
  [[nodiscard]] LimitTargets predictor() const;
  [[nodiscard]] LimitTargets corrector(const LimitStep& predicted, double target) const;
  [[nodiscard]] std::pair<double, double> longest(const LimitStep& step) const;
  void move(const LimitStep& step, double primal, double dual);
  [[nodiscard]] double complementarity(const LimitStep* step = nullptr, double primal = 0.0,
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
  std::vector<LimitBarrier> low_, high_;
  double parameter_ = 0.0;
  LimitBarrier parameter_low_, parameter_high_;
  LimitBarrier unspent_;  ///< of the budget; its multiplier is the price

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

}  // namespace deadshore::solver
