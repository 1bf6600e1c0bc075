#pragma once

#include "solver/fem/dense_symmetric.h"
#include "solver/frame/frame_system.h"

#include <Eigen/Core>

#include <optional>
#include <utility>
#include <vector>

namespace deadshore::solver {

/// Cholesky factor of a stiffness matrix whose rows and columns are scaled to a unit diagonal, so
/// that pivots of forces and of moments compare.
class StiffnessFactor {
 public:
  /// Empty unless the symmetric matrix is positive definite beyond round-off: every pivot above
  /// 1e-12 of the diagonal.
  [[nodiscard]] static std::optional<StiffnessFactor> of(const Eigen::MatrixXd& stiffness);

  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right_hand_side) const;

 private:
  StiffnessFactor(Eigen::VectorXd scale, DenseCholesky factor)
      : scale_(std::move(scale)), factor_(std::move(factor)) {}

  Eigen::VectorXd scale_;
  DenseCholesky factor_;
};

/// Stiffness over the free displacements: of the members and of those springs that are closed.
/// \param closed one entry for each of `system.springs`
[[nodiscard]] Eigen::MatrixXd free_stiffness(const FrameSystem& system,
                                             const std::vector<bool>& closed);

/// Internal forces: those by which members and springs resist the displacements `u` of all nodes,
/// as numbered in `FrameSystem`.
[[nodiscard]] Eigen::VectorXd resistance(const FrameSystem& system, const Eigen::VectorXd& u);

/// How a search for the springs that bear has ended.
enum class ContactOutcome {
  settled,       ///< in equilibrium, with every spring open or closed as it should be
  singular,      ///< it can move without resistance, or buckles
  no_agreement,  ///< springs kept opening and closing
};

/// What `settle` comes to. Vectors hold the displacements of all nodes.
struct [[nodiscard]] ContactResult {
  ContactOutcome outcome = ContactOutcome::no_agreement;
  int steps = 0;             ///< Newton steps
  Eigen::VectorXd u;         ///< where settled: the displacements
  Eigen::VectorXd movement;  ///< where singular: a movement that nothing resists
};

/// Finds the displacements of least energy, and with them which springs bear. With the members'
/// stiffness positive definite the energy is convex, and piecewise quadratic through the
/// compression-only springs, so Newton steps with an exact line search always lower it and end
/// exactly once the set of closed springs stays.
/// \param closed springs taken to bear at the start; those that bear at the end
ContactResult settle(const FrameSystem& system, std::vector<bool>& closed);

}  // namespace deadshore::solver
