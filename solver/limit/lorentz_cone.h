#pragma once

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

// Symmetric 2x2 matrices as (mean, half difference, shear): the matrix is positive semidefinite
// where the mean is no less than the length of the other two, the radius of Mohr's circle. That is
// the Lorentz cone, its own dual under the dot product. For a stress the three are
// ((xx + yy)/2, (xx - yy)/2, xy), and the strains that work on them (xx + yy, xx - yy, gamma_xy).
using Mohr = Eigen::Vector3d;

/// Product of the two principal values; positive inside the cone and inside its negative.
[[nodiscard]] inline double determinant_of(const Mohr& x) {
  const double radius = std::sqrt(x(1) * x(1) + x(2) * x(2));
  return (x(0) - radius) * (x(0) + radius);
}

/// Mean with the other two turned round: the matrix of cofactors.
[[nodiscard]] inline Mohr cofactor_of(const Mohr& x) {
  return {x(0), -x(1), -x(2)};
}

/// Largest step a >= 0 for which `x + a change` stays in the cone; infinite if it never leaves.
[[nodiscard]] inline double largest_step(const Mohr& x, const Mohr& change) {
  const double c = determinant_of(x);
  const double b = x.dot(cofactor_of(change));
  const double a = change(0) * change(0) - change(1) * change(1) - change(2) * change(2);
  // c + 2 b s + a s^2 falls to zero at the least positive root, if there is one.
  const double discriminant = b * b - a * c;
  if (discriminant < 0.0 || (b >= 0.0 && a >= 0.0)) return std::numeric_limits<double>::infinity();
  const double root = std::sqrt(discriminant);
  return b <= 0.0 ? c / (root - b) : (b + root) / -a;
}

/// Solution y of the Jordan product x o y = r, where x o y = (x . y, x0 y1 + y0 x1).
[[nodiscard]] inline Mohr jordan_quotient(const Mohr& r, const Mohr& x) {
  const double y0 = x.dot(cofactor_of(r)) / determinant_of(x);
  return {y0, (r(1) - y0 * x(1)) / x(0), (r(2) - y0 * x(2)) / x(0)};
}
[[nodiscard]] inline Mohr jordan_product(const Mohr& x, const Mohr& y) {
  return {x.dot(y), x(0) * y(1) + y(0) * x(1), x(0) * y(2) + y(0) * x(2)};
}

/// Nesterov-Todd scaling W of a primal s and a dual z, both inside the cone: symmetric, and
/// W z = W^-1 s. Nesterov & Todd, Math. Oper. Res. 22 (1997) 1-42; the closed form as in
/// Vandenberghe, The CVXOPT linear and quadratic cone program solvers (2010), 4.
class LorentzScaling {
 public:
  LorentzScaling() = default;
  LorentzScaling(const Mohr& s, const Mohr& z) {
    // Round-off may put a point that is all but on the boundary a trifle outside.
    constexpr double least = std::numeric_limits<double>::epsilon();
    const double s_size = std::sqrt(std::max(determinant_of(s), least * s(0) * s(0)));
    const double z_size = std::sqrt(std::max(determinant_of(z), least * z(0) * z(0)));
    const Mohr s_unit = s / s_size;
    const Mohr z_unit = z / z_size;
    const double gamma = std::sqrt(0.5 * (1.0 + z_unit.dot(s_unit)));
    w_ = (s_unit + cofactor_of(z_unit)) / (2.0 * gamma);
    squared_size_ = s_size / z_size;
    size_ = std::sqrt(squared_size_);
    v_ = w_;
    v_(0) += 1.0;
    v_ /= std::sqrt(2.0 * (w_(0) + 1.0));
  }

  /// W x
  [[nodiscard]] Mohr apply(const Mohr& x) const {
    return size_ * (2.0 * v_.dot(x) * v_ - cofactor_of(x));
  }

  /// W^-1 x
  [[nodiscard]] Mohr undo(const Mohr& x) const {
    const Mohr u = cofactor_of(v_);
    return (2.0 * u.dot(x) * u - cofactor_of(x)) / size_;
  }

  /// W^-2 x
  [[nodiscard]] Mohr undo_twice(const Mohr& x) const {
    const Mohr u = cofactor_of(w_);
    return (2.0 * u.dot(x) * u - cofactor_of(x)) / squared_size_;
  }

  /// Whether W^-2 is larger, by its trace.
  [[nodiscard]] bool is_stiffer_than(const LorentzScaling& other) const {
    const auto stiffness = [](const LorentzScaling& scaling) {
      return scaling.w_.squaredNorm() / scaling.squared_size_;
    };
    return stiffness(*this) > stiffness(other);
  }

  /// W^-2
  [[nodiscard]] Eigen::Matrix3d inverse_square() const {
    const Mohr u = cofactor_of(w_);
    Eigen::Matrix3d square = 2.0 * u * u.transpose();
    square(0, 0) -= 1.0;
    square(1, 1) += 1.0;
    square(2, 2) += 1.0;
    return square / squared_size_;
  }

 private:
  Mohr w_ = Mohr::UnitX();
  Mohr v_ = Mohr::UnitX();
  double size_ = 1.0;
  double squared_size_ = 1.0;
};

/// Lower triangular L^-1 of the Cholesky factor L of a symmetric positive definite matrix, so that
/// its inverse is L^-T L^-1, which stays positive definite however badly conditioned the matrix is:
/// pivots that round-off has eaten are kept tiny.
[[nodiscard]] inline Eigen::Matrix3d inverse_root_of(const Eigen::Matrix3d& H) {
  const double least = std::numeric_limits<double>::epsilon() * H.trace();
  const double a = 1.0 / std::sqrt(std::max(H(0, 0), least));
  const double l10 = H(1, 0) * a;
  const double l20 = H(2, 0) * a;
  const double b = 1.0 / std::sqrt(std::max(H(1, 1) - l10 * l10, least));
  const double l21 = (H(2, 1) - l20 * l10) * b;
  const double c = 1.0 / std::sqrt(std::max(H(2, 2) - l20 * l20 - l21 * l21, least));
  const double m10 = -l10 * a * b;
  Eigen::Matrix3d root;
  root << a, 0.0, 0.0,  //
      m10, b, 0.0,      //
      -(l20 * a + l21 * m10) * c, -l21 * b * c, c;
  return root;
}

}  // namespace deadshore::solver
