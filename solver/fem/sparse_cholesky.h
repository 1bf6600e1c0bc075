#pragma once

#include "solver/fem/stiffness_pattern.h"

#include <memory>
#include <string>

namespace deadshore::solver {

/// What a factor costs, as the symbolic part foretells it.
struct FactorSize {
  double flops = 0.0;    ///< of one factorisation, zeros that supernodes hold not counted
  double entries = 0.0;  ///< of the factor, same
};

/// Cholesky factor of a symmetric positive definite matrix whose pattern stays the same: the
/// symbolic part is done once, `factorize` as often as the values change. Supernodal CHOLMOD
/// through Eigen; Eigen's own simplicial LDL^T where CHOLMOD fails for want of memory.
///
/// Rows are taken to be in a good order already (see nested_dissection). BLAS and CHOLMOD run on
/// one thread each, since their thread pools fight for the same cores.
class SparseCholesky {
 public:
  explicit SparseCholesky(const SparseStiffness& pattern);
  ~SparseCholesky();
  SparseCholesky(SparseCholesky&&) noexcept;
  SparseCholesky& operator=(SparseCholesky&&) noexcept;

  /// False where the matrix (lower triangle, same pattern) is not positive definite.
  [[nodiscard]] bool factorize(const SparseStiffness& matrix);

  /// Solution for one right-hand side, after a successful `factorize`.
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right_hand_side) const;

  [[nodiscard]] FactorSize size() const;

 private:
  struct Backend;
  std::unique_ptr<Backend> backend_;
};

/// Which BLAS this process runs on and which kernel it chose, in words, for `--timings`.
[[nodiscard]] std::string blas_description();

}  // namespace deadshore::solver
