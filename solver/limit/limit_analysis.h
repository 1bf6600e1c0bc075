#pragma once

#include "solver/fem/equation_map.h"
#include "solver/limit/limit_problem.h"
#include "solver/limit/limit_program.h"
#include "solver/limit/stage_safety.h"

#include <Eigen/Core>

#include <vector>

namespace deadshore::solver {

/// Part of its compressive strength that masonry without tension is left with, so that there are
/// stresses of equilibrium inside strength everywhere, which the method needs. At 2.4 N/mm2 it
/// holds up a layer of masonry 13 mm deep.
inline constexpr double tension_left = 1e-4;

/// The least load that has no way to a support without tension.
struct LooseMasonry {
  double masonry = 0.0;           ///< weight of masonry, N
  double load = 0.0;              ///< applied loads and weight of lintels, N
  std::vector<double> mechanism;  ///< velocity of each node, 2 per node, as it lets go; largest 1
};

/// A largest factor on all loads, between bounds for the wall as meshed. Strength is asked for at
/// the elements' Gauss points only, so neither bounds the factor of the wall itself: under a load
/// on 100 mm, that crushes the masonry at .9, the pair is found at 1.95.
struct LimitFactor {
  double lower = 0.0;             ///< static: from stresses
  double upper = 0.0;             ///< kinematic: from the mechanism
  std::vector<double> mechanism;  ///< velocity of each node, 2 per node; largest 1
  mesh::Point crushes;            ///< middle of the element that takes most work
};

/// Limit analyses of one wall, all as cone programs on one mesh. N, mm, N/mm2.
///
///     const mesh::WallMesh whole = whole_mesh_of(job, 200.0);  // of 8-node elements
///     const LimitProblem problem = limit_problem(job, state, part_at(whole.quads, state).quads);
///     LimitAnalysis analysis(problem);
///     const LimitFactor factor = analysis.factor(0.0, 0.0);  // without tension, nothing may fall
///     if (factor.lower >= 1.0) ...  // stands; no more than `factor.upper` times its loads
class LimitAnalysis {
 public:
  /// The problem must outlive the analysis.
  explicit LimitAnalysis(const LimitProblem& problem);

  /// Largest factor, up to `most`, with masonry of a tensile strength, at which no more than
  /// `may_fall` N of masonry per unit of factor hangs from above instead of standing.
  [[nodiscard]] LimitFactor factor(double tension, double may_fall, double most = most_factor);

  /// Upper bound on the factor with a tensile strength, from a mechanism found for another one by
  /// the kinematic theorem: no factorisation. Infinite where loads do no work on it.
  [[nodiscard]] double upper_factor(const std::vector<double>& mechanism, double tension) const;

  /// Whether all of it stands at factor 1 without tension.
  [[nodiscard]] bool stands();

  /// Least load that must hang so that the rest is in equilibrium under its own loads at factor 1.
  /// To hang applied load counts `load_cost` times as much as to hang masonry.
  [[nodiscard]] LooseMasonry loose_masonry();

  /// Least tensile strength of the masonry with which all of it stands at factor 1, N/mm2. Asked
  /// only where some strength will do: one with which `factor` is above 1.
  [[nodiscard]] double tension_needed();

  /// Factorisations so far.
  [[nodiscard]] int iterations() const { return iterations_; }

 private:
  [[nodiscard]] LimitProgram program(double tension) const;
  void add_hangers(LimitProgram& program, const Eigen::VectorXd& load,
                   const UnknownForce& kind) const;
  [[nodiscard]] Eigen::VectorXd all_loads() const;
  [[nodiscard]] LimitSolution solve(const LimitProgram& program, double scale, double gap);
  [[nodiscard]] std::vector<double> mechanism_of(const Eigen::VectorXd& velocity) const;
  [[nodiscard]] mesh::Point place_of_most_work(const LimitProgram& program,
                                               const Eigen::VectorXd& velocity) const;

  const LimitProblem& problem_;
  double force_unit_ = 1.0;  ///< N
  EquationMap equations_;
  Equilibrium equilibrium_;
  LimitSolver solver_;
  int iterations_ = 0;
};

inline constexpr double load_cost = 20.0;

}  // namespace deadshore::solver
