#include "solver/fem/dense_symmetric.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include <Spectra/MatOp/DenseSymMatProd.h>
#include <Spectra/SymEigsSolver.h>
#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr Eigen::Index small_enough_for_all = 24;  // rows
constexpr Eigen::Index krylov_size = 20;
constexpr int most_restarts = 1000;             // of the Lanczos iteration
constexpr double eigenvalue_tolerance = 1e-12;  // relative

Eigenpairs last(const Eigenpairs& all, Eigen::Index count) {
  return {all.values.reverse().head(count), all.vectors.rowwise().reverse().leftCols(count)};
}

}  // namespace

std::optional<DenseCholesky> DenseCholesky::of(const Eigen::MatrixXd& A) {
  const Eigen::LLT<Eigen::MatrixXd> factor(A);
  if (factor.info() != Eigen::Success) return std::nullopt;
  DenseCholesky result;
  result.L_ = factor.matrixLLT();
  return result;
}

double DenseCholesky::least_pivot() const {
  double least = INFINITY;
  for (Eigen::Index i = 0; i < L_.rows(); ++i) least = std::min(least, L_(i, i) * L_(i, i));
  return least;
}

Eigen::VectorXd DenseCholesky::solve(Eigen::VectorXd b) const {
  L_.triangularView<Eigen::Lower>().solveInPlace(b);
  L_.transpose().triangularView<Eigen::Upper>().solveInPlace(b);
  return b;
}

Eigen::MatrixXd DenseCholesky::reduce(Eigen::MatrixXd M) const {
  const auto L = L_.triangularView<Eigen::Lower>();
  for (int side = 0; side < 2; ++side) {
    for (auto column : M.colwise()) L.solveInPlace(column);
    M.transposeInPlace();
  }
  return M;
}

Eigen::MatrixXd DenseCholesky::restore(Eigen::MatrixXd y) const {
  const auto U = L_.transpose().triangularView<Eigen::Upper>();
  for (auto column : y.colwise()) U.solveInPlace(column);
  return y;
}

Eigenpairs eigenpairs(const Eigen::MatrixXd& A) {
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(A);
  return {solver.eigenvalues(), solver.eigenvectors()};
}

Eigenpairs largest_eigenpairs(const Eigen::MatrixXd& A, Eigen::Index count) {
  if (A.rows() <= small_enough_for_all || 2 * count >= A.rows()) return last(eigenpairs(A), count);
  Spectra::DenseSymMatProd<double> times(A);
  const Eigen::Index basis = std::min(A.rows(), std::max<Eigen::Index>(2 * count, krylov_size));
  Spectra::SymEigsSolver<Spectra::DenseSymMatProd<double>> solver(times, count, basis);
  solver.init();
  solver.compute(Spectra::SortRule::LargestAlge, most_restarts, eigenvalue_tolerance);
  if (solver.info() != Spectra::CompInfo::Successful) return last(eigenpairs(A), count);
  return {solver.eigenvalues(), solver.eigenvectors()};
}

Eigen::VectorXd solve_semidefinite(const Eigen::MatrixXd& A, const Eigen::VectorXd& b) {
  return A.ldlt().solve(b);
}

}  // namespace deadshore::solver
