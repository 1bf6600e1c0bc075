#pragma once

#include "solver/fem/stiffness_pattern.h"

#include <memory>
#include <string>

namespace deadshore::solver {

/// What a factor costs, as the symbolic analysis foretells it.
struct FactorSize {
  double flops = 0.0;    ///< of one factorisation, without zeros that supernodes hold
  double entries = 0.0;  ///< that are not zero in the factor, likewise
};

/// A pivot of the factor below this part of its row's diagonal entry means a singular matrix.
///
/// The last pivot of a singular stiffness is zero but for round-off: above or below by chance, at
/// most 1e-14 of that entry, measured on four BLAS kernels with up to 30,000 unknowns. In walls
/// that stand, held by no more than a residual of 1e-6 in open cracks, the least pivot is 1e-5.
inline constexpr double singular_pivot = 1e-12;

/// Cholesky factor L L^T of a sparse symmetric positive definite matrix whose pattern stays the
/// same: the symbolic analysis is done once, `factorize` as often as the values change.
/// \code
/// SparseStiffness K(2, 2);  // lower triangle
/// K.insert(0, 0) = 2.0;
/// K.insert(1, 0) = -1.0;
/// K.insert(1, 1) = 2.0;
/// K.makeCompressed();
/// SparseCholesky factor(K);
/// if (!factor.factorize(K)) throw SolveError("K is singular");
/// const Eigen::VectorXd u = factor.solve(Eigen::Vector2d(1.0, 0.0));
/// fmt::print("({:.3f}, {:.3f}), least pivot {:.2f}\n", u(0), u(1), factor.least_pivot());
/// \endcode
///
/// Supernodal CHOLMOD through Eigen; Eigen's own simplicial LDL^T where CHOLMOD fails for want of
/// memory. Rows are taken to be in a good order already (see nested_dissection). BLAS and CHOLMOD
/// run on one thread each, since their thread pools fight for the same cores.
class SparseCholesky {
 public:
  /// Analyses a pattern; the values do not matter yet.
  explicit SparseCholesky(const SparseStiffness& pattern);
  ~SparseCholesky();
  SparseCholesky(SparseCholesky&&) noexcept;
  SparseCholesky& operator=(SparseCholesky&&) noexcept;

  /// Factorises a matrix (lower triangle) with the pattern.
  ///
  /// \returns false where it is not positive definite, or `least_pivot()` is no more than
  ///   `singular_below`
  [[nodiscard]] bool factorize(const SparseStiffness& matrix,
                               double singular_below = singular_pivot);

  /// Least of the last factor's pivots over the diagonal entries of their rows: 1 for a diagonal
  /// matrix, 0 or round-off for a singular one. 0 where the last factorisation broke down.
  [[nodiscard]] double least_pivot() const;

  /// Solution for one right-hand side, after a successful `factorize`.
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right_hand_side) const;

  /// What a factorisation costs, known from the pattern alone.
  [[nodiscard]] FactorSize size() const;

 private:
  struct Backend;
  std::unique_ptr<Backend> backend_;
};

/// Which BLAS this process runs on and which kernel it chose, in words, for `--timings`.
[[nodiscard]] std::string blas_description();

}  // namespace deadshore::solver
