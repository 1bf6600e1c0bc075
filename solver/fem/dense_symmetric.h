#pragma once

#include <Eigen/Core>

#include <optional>

namespace deadshore::solver {

/// Cholesky factor L of a dense symmetric positive definite matrix A = L L^T (n x n).
///
/// Eigen's and Spectra's templates for factors and eigenpairs keep a compiler busy for half a
/// minute, so one source holds them for all of the program.
class DenseCholesky {
 public:
  /// Factorises a matrix of which the lower triangle is read; empty unless it is positive definite.
  [[nodiscard]] static std::optional<DenseCholesky> of(const Eigen::MatrixXd& A);

  /// Least of the squared diagonal entries of L.
  [[nodiscard]] double least_pivot() const;
  /// x with A x = b.
  [[nodiscard]] Eigen::VectorXd solve(Eigen::VectorXd b) const;

  /// L^-1 M L^-T of a symmetric matrix `M` (n x n), whose eigenvalues are those of M x = mu A x.
  [[nodiscard]] Eigen::MatrixXd reduce(Eigen::MatrixXd M) const;
  /// L^-T y, column by column: eigenvectors x of M x = mu A x from those of the reduced matrix.
  [[nodiscard]] Eigen::MatrixXd restore(Eigen::MatrixXd y) const;

 private:
  Eigen::MatrixXd L_;  // lower triangle; what is above it has no meaning
};

/// Eigenvalues with their eigenvectors.
struct Eigenpairs {
  Eigen::VectorXd values;   ///< in the order that the function says
  Eigen::MatrixXd vectors;  ///< of unit length, a column for each value
};

/// All eigenpairs of the symmetric matrix `A`, smallest value first.
[[nodiscard]] Eigenpairs eigenpairs(const Eigen::MatrixXd& A);

/// The `count` eigenpairs of the largest values of the symmetric matrix `A`, largest value first.
/// \pre 1 <= count <= rows of `A`
[[nodiscard]] Eigenpairs largest_eigenpairs(const Eigen::MatrixXd& A, Eigen::Index count);

/// x with A x = b for a symmetric positive semidefinite `A`, by LDL^T with pivots from the
/// diagonal.
[[nodiscard]] Eigen::VectorXd solve_semidefinite(const Eigen::MatrixXd& A,
                                                 const Eigen::VectorXd& b);

}  // namespace deadshore::solver
