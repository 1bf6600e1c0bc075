#pragma once

#include "solver/conic/interior_step.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/limit/equilibrium.h"
#include "solver/limit/limit_program.h"

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace deadshore::solver {

/// A limit program on the way to its answer: the equations behind `interior_step`.
///
/// Every Gauss point has two cones, tension - stress and stress + compression, whose multipliers
/// are the two parts of its volume strain, opening and crushing. Unknown forces, parameter and what
/// is left of the budget have bounds. Slacks follow from stress, force and parameter, so that only
/// equilibrium and the budget are missed at the start. Stationarity, with u the velocities, p the
/// budget's price, e(u) the volume strains and N the forces' directions:
///
///   stress: opening - crushing = e(u)
///   forces: cost + N u + p share - low + high = 0
///   parameter: cost + u load_rise - p budget_rise - sum(tension_rise opening_0) - ... = 0
///
/// Points and forces are eliminated, which leaves a stiffness matrix (the Schur complement) for u,
/// with a border each for parameter and budget.
class LimitIterate {
 public:
  /// All three must outlive it.
  LimitIterate(const Equilibrium& equilibrium, SparseCholesky& factor, const LimitProgram& program);

  /// A change of all unknowns.
  struct Direction {
    ConeChanges cones;
    Eigen::VectorXd u;
    std::vector<Mohr> stress;
    std::vector<double> force;
    double parameter = 0.0;
  };

  // What interior_step asks for.
  [[nodiscard]] ConePairs& pairs() { return pairs_; }
  [[nodiscard]] bool factorise();
  [[nodiscard]] Direction direction(const ConeValues& targets);
  void move(const Direction& step, const StepLengths& lengths);

  /// Largest out-of-balance force over the largest load.
  [[nodiscard]] double residual() const;

  /// Cost of the state as it is, and a lower bound on every cost from velocities and price alone.
  [[nodiscard]] double cost() const;
  [[nodiscard]] double bound();

  [[nodiscard]] const Eigen::VectorXd& velocity() const { return u_; }
  [[nodiscard]] const std::vector<Mohr>& stress() const { return stress_; }
  [[nodiscard]] const std::vector<double>& force() const { return force_; }
  [[nodiscard]] double parameter() const { return parameter_; }

 private:
  using Bound = ConePair<double>;

  /// Right-hand sides of stationarity, and of what is left when points and forces are eliminated.
  struct Sides {
    std::vector<Mohr> stress;
    std::vector<double> force;
    Eigen::VectorXd equilibrium;
    double budget = 0.0;
    double parameter = 0.0;
  };

  std::size_t add_bound(double slack);
  [[nodiscard]] bool factorise_stiffness();
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& side) const;
  void eliminate_parameter();
  void eliminate_budget();
  [[nodiscard]] Sides sides(const ConeValues& targets);
  void add_point_sides(const ConeValues& targets, Sides& sides);
  void add_force_sides(const ConeValues& targets, Sides& sides) const;
  [[nodiscard]] double solve_bordered(const Sides& sides, const ConeValues& targets,
                                      Direction& step) const;
  void find_points(const Sides& sides, const ConeValues& targets, Direction& step);
  void find_forces(const Sides& sides, double price, Direction& step) const;
  [[nodiscard]] Eigen::VectorXd out_of_balance() const;
  [[nodiscard]] double overspent() const;

  [[nodiscard]] std::size_t points() const { return stress_.size(); }
  [[nodiscard]] std::size_t forces() const { return force_.size(); }
  [[nodiscard]] const UnknownForce& unknown(std::size_t j) const { return program_.forces[j]; }
  [[nodiscard]] const Strength& strength(std::size_t point) const;
  [[nodiscard]] const ConePair<Mohr>& tension(std::size_t p) const { return pairs_.cones[2 * p]; }
  [[nodiscard]] const ConePair<Mohr>& compression(std::size_t p) const {
    return pairs_.cones[2 * p + 1];
  }
  [[nodiscard]] bool has_parameter() const { return program_.most_parameter > 0.0; }
  [[nodiscard]] bool has_budget() const { return program_.budget.has_value(); }
  [[nodiscard]] double price() const;

  const Equilibrium& equilibrium_;
  SparseCholesky& factor_;
  const LimitProgram& program_;

  Eigen::VectorXd u_;
  std::vector<Mohr> stress_;
  std::vector<double> force_;
  double parameter_ = 0.0;
  ConePairs pairs_;  ///< tension and compression of each point; the forces' lower bounds first

  // Places among the bounds.
  std::vector<std::size_t> high_;  ///< of each force; 0 where it has no upper bound
  std::size_t parameter_low_ = 0;
  std::size_t parameter_high_ = 0;
  std::size_t unspent_ = 0;  ///< of the budget; its multiplier is the price

  // Of one factorisation.
  std::vector<Eigen::Matrix3d> point_stiffness_;  ///< stress for volume strain
  std::vector<Eigen::Matrix3d> stiffness_root_;   ///< transpose(root) root = point stiffness
  std::vector<double> force_stiffness_;           ///< force for velocity along it
  std::vector<Mohr> strain_;
  SparseStiffness stiffness_, raised_;
  Eigen::VectorXd parameter_column_, parameter_solved_;
  double parameter_stiffness_ = 0.0;
  Eigen::VectorXd budget_column_, budget_solved_;
  double budget_diagonal_ = 0.0;
  double budget_parameter_ = 0.0;  ///< where the two borders meet
};

}  // namespace deadshore::solver
