#include "solver/panel/psd_cone.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

/// A symmetric matrix as mean +- radius along axes turned by (cosine, sine).
struct MohrCircle {
  double mean = 0.0;
  double radius = 0.0;
  Eigen::Vector2d major = Eigen::Vector2d::UnitX();  ///< axis of mean + radius
};

MohrCircle mohr_circle(const Eigen::Matrix2d& x) {
  const double half_difference = 0.5 * (x(0, 0) - x(1, 1));
  const double angle = 0.5 * std::atan2(x(1, 0), half_difference);
  return {0.5 * (x(0, 0) + x(1, 1)),
          std::hypot(half_difference, x(1, 0)),
          {std::cos(angle), std::sin(angle)}};
}

/// Lower factor of a positive definite matrix; a pivot lost to round-off is kept tiny.
Eigen::Matrix2d cholesky(const Eigen::Matrix2d& x) {
  constexpr double least = std::numeric_limits<double>::epsilon();
  Eigen::Matrix2d lower = Eigen::Matrix2d::Zero();
  lower(0, 0) = std::sqrt(x(0, 0));
  lower(1, 0) = x(1, 0) / lower(0, 0);
  lower(1, 1) = std::sqrt(std::max(x(1, 1) - lower(1, 0) * lower(1, 0), least * x(1, 1)));
  return lower;
}

template <class Matrix>
Eigen::Matrix2d congruent(const Matrix& A, const Eigen::Matrix2d& x) {
  Eigen::Matrix2d y = A * x * A.transpose();
  y(0, 1) = y(1, 0) = 0.5 * (y(0, 1) + y(1, 0));
  return y;
}

double step_from_unit(const Eigen::Matrix2d& change) {
  const double least = eigenvalues_of(change)(0);
  return least < 0.0 ? -1.0 / least : std::numeric_limits<double>::infinity();
}

}  // namespace

Eigen::Matrix2d matrix_of_stress(const Voigt& stress) {
  Eigen::Matrix2d matrix;
  matrix << stress(0), stress(2), stress(2), stress(1);
  return matrix;
}

Eigen::Matrix2d matrix_of_strain(const Voigt& strain) {
  return matrix_of_stress({strain(0), strain(1), 0.5 * strain(2)});
}

Voigt stress_of_matrix(const Eigen::Matrix2d& symmetric) {
  return {symmetric(0, 0), symmetric(1, 1), symmetric(1, 0)};
}

Voigt strain_of_matrix(const Eigen::Matrix2d& symmetric) {
  return {symmetric(0, 0), symmetric(1, 1), 2.0 * symmetric(1, 0)};
}

Eigen::Matrix3d congruence(const Eigen::Matrix2d& A) {
  const double a = A(0, 0);
  const double b = A(0, 1);
  const double c = A(1, 0);
  const double d = A(1, 1);
  Eigen::Matrix3d map;
  map << a * a, b * b, 2.0 * a * b,  //
      c * c, d * d, 2.0 * c * d,     //
      2.0 * a * c, 2.0 * b * d, 2.0 * (a * d + b * c);
  return map;
}

Eigen::Vector2d eigenvalues_of(const Eigen::Matrix2d& symmetric) {
  const MohrCircle circle = mohr_circle(symmetric);
  return {circle.mean - circle.radius, circle.mean + circle.radius};
}

Eigen::Matrix2d raised_to(const Eigen::Matrix2d& symmetric, double floor) {
  const MohrCircle circle = mohr_circle(symmetric);
  const double minor = std::max(circle.mean - circle.radius, floor);
  const double major = std::max(circle.mean + circle.radius, floor);
  return minor * Eigen::Matrix2d::Identity() +
         (major - minor) * circle.major * circle.major.transpose();
}

double largest_step(const Eigen::Matrix2d& x, const Eigen::Matrix2d& change) {
  return step_from_unit(congruent(cholesky(x).inverse(), change));
}

Eigen::Matrix2d jordan_product(const Eigen::Matrix2d& x, const Eigen::Matrix2d& y) {
  return 0.5 * (x * y + y * x);
}

Eigen::Matrix2d jordan_quotient(const Eigen::Matrix2d& x, const Eigen::Vector2d& d) {
  const double shear = 2.0 * x(1, 0) / (d(0) + d(1));
  Eigen::Matrix2d quotient;
  quotient << x(0, 0) / d(0), shear, shear, x(1, 1) / d(1);
  return quotient;
}

PsdScaling nesterov_todd(const Eigen::Matrix2d& primal, const Eigen::Matrix2d& dual) {
  // With primal = A A^T and dual = R R^T, the singular vectors V of R^T A give frame = A V D^-1/2.
  const Eigen::Matrix2d A = cholesky(primal);
  const Eigen::Matrix2d R = cholesky(dual);
  const Eigen::Matrix2d M = R.transpose() * A;
  const MohrCircle squares = mohr_circle(M.transpose() * M);
  Eigen::Matrix2d V;
  V.col(0) = squares.major;
  V.col(1) << -squares.major.y(), squares.major.x();
  PsdScaling scaling;
  scaling.point(0) = (M * V.col(0)).norm();
  // From the determinant, which the triangular factors give without cancellation.
  scaling.point(1) = R.diagonal().prod() * A.diagonal().prod() / scaling.point(0);
  const Eigen::Vector2d root = scaling.point.cwiseSqrt();
  scaling.frame = A * V * root.cwiseInverse().asDiagonal();
  scaling.inverse_frame = root.asDiagonal() * V.transpose() * A.inverse();
  return scaling;
}

Eigen::Matrix2d PsdScaling::scaled_primal(const Eigen::Matrix2d& primal) const {
  return congruent(inverse_frame, primal);
}

Eigen::Matrix2d PsdScaling::scaled_dual(const Eigen::Matrix2d& dual) const {
  return congruent(frame.transpose(), dual);
}

Eigen::Matrix2d PsdScaling::unscaled_primal(const Eigen::Matrix2d& scaled) const {
  return congruent(frame, scaled);
}

Eigen::Matrix2d PsdScaling::unscaled_dual(const Eigen::Matrix2d& scaled) const {
  return congruent(inverse_frame.transpose(), scaled);
}

Eigen::Matrix3d PsdScaling::dual_to_primal() const {
  return congruence(congruent(frame, Eigen::Matrix2d::Identity()));
}

double PsdScaling::largest_step(const Eigen::Matrix2d& scaled_change) const {
  const Eigen::Matrix2d root = point.cwiseSqrt().cwiseInverse().asDiagonal();
  return step_from_unit(congruent(root, scaled_change));
}

}  // namespace deadshore::solver
