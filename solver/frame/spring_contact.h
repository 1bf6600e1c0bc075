#pragma once

#include "solver/fem/dense_symmetric.h"
#include "solver/frame/frame_system.h"

#include <Eigen/Core>

#include <optional>
#include <utility>
#include <vector>

namespace deadshore::solver {

/// Cholesky factor of a symmetric matrix, each displacement measured in units of its own stiffness.
/// Empty unless the matrix is positive definite beyond doubt: every pivot above 1e-12 of the
/// diagonal.
class StiffnessFactor {
 public:
  [[nodiscard]] static std::optional<StiffnessFactor> of(const Eigen::MatrixXd& stiffness);

  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right_hand_side) const;

 private:
  StiffnessFactor(Eigen::VectorXd scale, DenseCholesky factor)
      : scale_(std::move(scale)), factor_(std::move(factor)) {}

  Eigen::VectorXd scale_;
  DenseCholesky factor_;
};

/// Stiffness over the free displacements, with those springs that are closed.
[[nodiscard]] Eigen::MatrixXd free_stiffness(const FrameSystem& system,
                                             const std::vector<bool>& closed);

/// Forces by which members and springs resist the displacements `u`.
[[nodiscard]] Eigen::VectorXd resistance(const FrameSystem& system, const Eigen::VectorXd& u);

enum class ContactOutcome {
  settled,
  singular,      ///< it can move without resistance, or buckles
  no_agreement,  ///< springs kept opening and closing
};

struct [[nodiscard]] ContactResult {
  ContactOutcome outcome = ContactOutcome::no_agreement;
  int steps = 0;
  Eigen::VectorXd u;         ///< where settled
  Eigen::VectorXd movement;  ///< where singular: a movement that nothing resists
};

/// Displacements of least energy. With the members' stiffness positive the energy is convex and
/// piecewise quadratic in the compression-only springs, so Newton steps with an exact line search
/// go down all the way, and end exactly once the set of closed springs stays.
/// \param closed which springs to begin with; holds those that bear at the end
ContactResult settle(const FrameSystem& system, std::vector<bool>& closed);

}  // namespace deadshore::solver
