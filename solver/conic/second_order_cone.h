#pragma once

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

/// A symmetric 2x2 matrix as (mean, half difference, shear), the coordinates of Mohr's circle. It
/// is positive semidefinite where the mean is no less than the length of the other two, the
/// circle's radius: the semidefinite cone is the second-order (Lorentz) cone of three dimensions.
///
/// For a stress these are ((xx + yy)/2, (xx - yy)/2, xy), and for the strain that works on it
/// (xx + yy, xx - yy, gamma_xy): their dot product is the work, and the cone is its own dual.
using Mohr = Eigen::Vector3d;

// What an interior-point method asks of a cone, for this one and for the half-line of numbers
// x >= 0 (`double`): the same names, so that templates serve both. Products are those of the
// cone's Jordan algebra, x o y = (x . y, x0 y1 + y0 x1, x0 y2 + y0 x2), whose unit is (1, 0, 0)
// and whose eigenvalues are mean +- radius: Alizadeh & Goldfarb, Math. Program. 95 (2003) 3-51.

/// The unit e of the cone's algebra, x o e = x: 1, or the matrix of eigenvalues 1 and 1.
template <class Element>
[[nodiscard]] Element unit_of();
template <>
[[nodiscard]] inline double unit_of<double>() {
  return 1.0;
}
template <>
[[nodiscard]] inline Mohr unit_of<Mohr>() {
  return Mohr::UnitX();
}

/// Dot product; of a slack and its multiplier their complementarity.
[[nodiscard]] inline double dot(double x, double y) {
  return x * y;
}
[[nodiscard]] inline double dot(const Mohr& x, const Mohr& y) {
  return x.dot(y);
}

/// Determinant of the matrix: the product of its two eigenvalues. Positive inside the cone, and
/// inside its negative.
[[nodiscard]] inline double determinant_of(const Mohr& x) {
  const double radius = std::sqrt(x(1) * x(1) + x(2) * x(2));
  return (x(0) - radius) * (x(0) + radius);
}

/// The matrix of cofactors: the same mean, the other two with their signs turned.
[[nodiscard]] inline Mohr cofactor_of(const Mohr& x) {
  return {x(0), -x(1), -x(2)};
}

/// Product x o y of the cone's Jordan algebra.
[[nodiscard]] inline double jordan_product(double x, double y) {
  return x * y;
}
[[nodiscard]] inline Mohr jordan_product(const Mohr& x, const Mohr& y) {
  return {x.dot(y), x(0) * y(1) + y(0) * x(1), x(0) * y(2) + y(0) * x(2)};
}

/// The y with `jordan_product(x, y) == r`.
/// \pre x inside the cone
[[nodiscard]] inline double jordan_quotient(double r, double x) {
  return r / x;
}
[[nodiscard]] inline Mohr jordan_quotient(const Mohr& r, const Mohr& x) {
  const double y0 = x.dot(cofactor_of(r)) / determinant_of(x);
  return {y0, (r(1) - y0 * x(1)) / x(0), (r(2) - y0 * x(2)) / x(0)};
}

/// The element with the same principal axes and with eigenvalues clamped to `low` and `high`.
[[nodiscard]] inline double clamped(double x, double low, double high) {
  return std::clamp(x, low, high);
}
[[nodiscard]] inline Mohr clamped(const Mohr& x, double low, double high) {
  const double radius = std::sqrt(x(1) * x(1) + x(2) * x(2));
  const double major = std::clamp(x(0) + radius, low, high);
  const double minor = std::clamp(x(0) - radius, low, high);
  const double scale = radius > 0.0 ? 0.5 * (major - minor) / radius : 0.0;
  return {0.5 * (major + minor), scale * x(1), scale * x(2)};
}

/// Largest step length a >= 0 for which `x + a change` stays in the cone; infinite if it never
/// leaves.
/// \pre x inside the cone
[[nodiscard]] inline double largest_step(double x, double change) {
  return change < 0.0 ? -x / change : std::numeric_limits<double>::infinity();
}
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

/// Nesterov-Todd scaling W of a slack s and a multiplier z, both inside the cone: the symmetric
/// positive definite W with `W z = W^-1 s`. Nesterov & Todd, Math. Oper. Res. 22 (1997) 1-42; the
/// closed form as in Vandenberghe, The CVXOPT linear and quadratic cone program solvers (2010), 4.
template <class Element>
class NesterovTodd;

/// Scaling on the half-line x >= 0.
template <>
class NesterovTodd<double> {
 public:
  NesterovTodd() = default;
  /// Scaling of slack `s` and multiplier `z`.
  NesterovTodd(double s, double z) : w_(std::sqrt(s / z)), inverse_square_(z / s) {}

  [[nodiscard]] double apply(double x) const { return w_ * x; }                    ///< W x
  [[nodiscard]] double undo(double x) const { return x / w_; }                     ///< W^-1 x
  [[nodiscard]] double undo_twice(double x) const { return inverse_square_ * x; }  ///< W^-2 x
  [[nodiscard]] double inverse_square() const { return inverse_square_; }          ///< W^-2

 private:
  double w_ = 1.0;
  double inverse_square_ = 1.0;
};

/// Scaling on the second-order cone.
template <>
class NesterovTodd<Mohr> {
 public:
  NesterovTodd() = default;
  /// Scaling of slack `s` and multiplier `z`.
  NesterovTodd(const Mohr& s, const Mohr& z) {
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

  /// W^-2
  [[nodiscard]] Eigen::Matrix3d inverse_square() const {
    const Mohr u = cofactor_of(w_);
    Eigen::Matrix3d square = 2.0 * u * u.transpose();
    square(0, 0) -= 1.0;
    square(1, 1) += 1.0;
    square(2, 2) += 1.0;
    return square / squared_size_;
  }

  /// Whether its W^-2 has the larger trace.
  [[nodiscard]] bool is_stiffer_than(const NesterovTodd& other) const {
    const auto stiffness = [](const NesterovTodd& scaling) {
      return scaling.w_.squaredNorm() / scaling.squared_size_;
    };
    return stiffness(*this) > stiffness(other);
  }

  /// (W^-2 + diag(mean, deviator, deviator))^-1 for positive compliances. Worked out in the axes of
  /// W, where no digits cancel however far its eigenvalues are apart.
  [[nodiscard]] Eigen::Matrix3d inverse_with(double mean, double deviator) const {
    const double radius = std::sqrt(w_(1) * w_(1) + w_(2) * w_(2));
    const double c = radius > 0.0 ? w_(1) / radius : 1.0;
    const double n = radius > 0.0 ? w_(2) / radius : 0.0;
    const double stretch = (w_(0) + radius) * (w_(0) + radius);
    const double p = 1.0 / (squared_size_ * stretch);  // eigenvalues of W^-2 along major, minor
    const double q = stretch / squared_size_;
    const double half_sum = 0.5 * (mean + deviator);
    const double half_difference = 0.5 * (mean - deviator);
    const double determinant = mean * deviator + half_sum * (p + q) + p * q;
    const double root = std::sqrt(0.5);
    const Mohr major(root, root * c, root * n);
    const Mohr minor(root, -root * c, -root * n);
    const Mohr across(0.0, -n, c);
    const Mohr along_major = (half_sum + q) * major - half_difference * minor;
    const Mohr along_minor = (half_sum + p) * minor - half_difference * major;
    return (major * along_major.transpose() + minor * along_minor.transpose()) / determinant +
           across * across.transpose() / (deviator + 1.0 / squared_size_);
  }

 private:
  Mohr w_ = Mohr::UnitX();  ///< of determinant 1
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
