#pragma once

#include "solver/panel/panel_law.h"

#include <Eigen/Core>

namespace deadshore::solver {

// The cone of symmetric positive semidefinite 2x2 matrices, as interior-point methods need it.
//
// Stress-like matrices have Voigt form (xx, yy, xy) and strain-like ones (xx, yy, 2 xy), so that
// the trace of a product of the two is the dot product of their Voigt forms and the cone is its own
// dual.

[[nodiscard]] Eigen::Matrix2d matrix_of_stress(const Voigt& stress);
[[nodiscard]] Eigen::Matrix2d matrix_of_strain(const Voigt& strain);
[[nodiscard]] Voigt stress_of_matrix(const Eigen::Matrix2d& symmetric);
[[nodiscard]] Voigt strain_of_matrix(const Eigen::Matrix2d& symmetric);

/// Matrix of the map X -> A X A^T from stress-like to strain-like Voigt form. Symmetric if A is;
/// positive definite if besides A is regular.
[[nodiscard]] Eigen::Matrix3d congruence(const Eigen::Matrix2d& A);

/// Eigenvalues (ascending) of a symmetric 2x2 matrix.
[[nodiscard]] Eigen::Vector2d eigenvalues_of(const Eigen::Matrix2d& symmetric);

/// The symmetric matrix with the same axes whose eigenvalues are at least `floor`: its projection
/// on the cone where `floor` is 0, an interior point next to it where `floor` > 0.
[[nodiscard]] Eigen::Matrix2d raised_to(const Eigen::Matrix2d& symmetric, double floor);

/// Largest step a >= 0 for which `x + a * change` stays in the cone; infinite if it never leaves.
/// `x` must be positive definite.
[[nodiscard]] double largest_step(const Eigen::Matrix2d& x, const Eigen::Matrix2d& change);

/// Jordan product (X Y + Y X) / 2; its unit is the unit matrix.
[[nodiscard]] Eigen::Matrix2d jordan_product(const Eigen::Matrix2d& x, const Eigen::Matrix2d& y);

/// The symmetric Y with jordan_product(diag(d), Y) = x; d > 0.
[[nodiscard]] Eigen::Matrix2d jordan_quotient(const Eigen::Matrix2d& x, const Eigen::Vector2d& d);

/// Nesterov-Todd scaling of a strain-like `primal` and a stress-like `dual`, both positive
/// definite: the one change of frame in which they are the same diagonal matrix,
///
///   frame^-1 primal frame^-T = frame^T dual frame = diag(point),
///
/// so that W = frame frame^T is the one positive definite matrix with W dual W = primal (Nesterov &
/// Todd, Math. Oper. Res. 22 (1997) 1-42; computed as in Todd, Toh & Tutuncu, SIAM J. Optim. 8
/// (1998) 769-796). In the frame, primal * dual = mu I linearises to
/// jordan_product(diag(point), dp + dd) = mu I - diag(point)^2.
struct PsdScaling {
  Eigen::Matrix2d frame;
  Eigen::Matrix2d inverse_frame;
  Eigen::Vector2d point;  ///< square roots of the eigenvalues of primal * dual

  [[nodiscard]] Eigen::Matrix2d scaled_primal(const Eigen::Matrix2d& primal) const;
  [[nodiscard]] Eigen::Matrix2d scaled_dual(const Eigen::Matrix2d& dual) const;

  /// A primal (strain-like) or dual (stress-like) matrix that is given in the frame.
  [[nodiscard]] Eigen::Matrix2d unscaled_primal(const Eigen::Matrix2d& scaled) const;
  [[nodiscard]] Eigen::Matrix2d unscaled_dual(const Eigen::Matrix2d& scaled) const;

  /// The map X -> W X W from dual to primal in Voigt form, symmetric positive definite.
  [[nodiscard]] Eigen::Matrix3d dual_to_primal() const;

  /// Largest step from the point along a change given in the frame; the same for both.
  [[nodiscard]] double largest_step(const Eigen::Matrix2d& scaled_change) const;
};
[[nodiscard]] PsdScaling nesterov_todd(const Eigen::Matrix2d& primal, const Eigen::Matrix2d& dual);

}  // namespace deadshore::solver
