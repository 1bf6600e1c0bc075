#include "solver/fem/sparse_cholesky.h"

#include <Eigen/Cholesky>
#include <gtest/gtest.h>

#include <random>
#include <vector>

namespace deadshore::solver {
namespace {

constexpr int size = 60;

/// Symmetric, of a fixed random pattern; positive definite where `diagonal` is large.
Eigen::MatrixXd dense_matrix(unsigned values_seed, double diagonal) {
  std::mt19937 pattern(1);
  std::mt19937 values(values_seed);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  Eigen::MatrixXd matrix = diagonal * Eigen::MatrixXd::Identity(size, size);
  for (int i = 0; i < size; ++i) {
    for (int j = 0; j < i; ++j) {
      if (pattern() % 10 == 0) matrix(i, j) = matrix(j, i) = uniform(values);
    }
  }
  return matrix;
}

SparseStiffness lower_part(const Eigen::MatrixXd& dense) {
  std::vector<Eigen::Triplet<double>> entries;
  for (int j = 0; j < size; ++j) {
    for (int i = j; i < size; ++i) {
      if (dense(i, j) != 0.0) entries.emplace_back(i, j, dense(i, j));
    }
  }
  SparseStiffness matrix(size, size);
  matrix.setFromTriplets(entries.begin(), entries.end());
  return matrix;
}

Eigen::VectorXd some_vector() {
  return Eigen::VectorXd::LinSpaced(size, -1.0, 2.0);
}

TEST(SparseCholesky, SolvesLikeADenseFactor) {
  const Eigen::MatrixXd matrix = dense_matrix(2, 10.0);
  SparseCholesky factor(lower_part(matrix));
  ASSERT_TRUE(factor.factorize(lower_part(matrix)));
  const Eigen::VectorXd expected = Eigen::LLT<Eigen::MatrixXd>(matrix).solve(some_vector());
  EXPECT_LT((factor.solve(some_vector()) - expected).norm(), 1e-13 * expected.norm());
}

TEST(SparseCholesky, TakesNewValuesInTheSamePattern) {
  SparseCholesky factor(lower_part(dense_matrix(2, 10.0)));
  for (const unsigned seed : {3U, 4U, 5U}) {
    const Eigen::MatrixXd matrix = dense_matrix(seed, 12.0);
    ASSERT_TRUE(factor.factorize(lower_part(matrix)));
    EXPECT_LT((matrix * factor.solve(some_vector()) - some_vector()).norm(), 1e-13);
  }
}

TEST(SparseCholesky, RefusesAMatrixThatIsNotPositiveDefinite) {
  SparseCholesky factor(lower_part(dense_matrix(2, 10.0)));
  Eigen::MatrixXd indefinite = dense_matrix(2, 10.0);
  indefinite(size / 2, size / 2) = -1.0;
  EXPECT_FALSE(factor.factorize(lower_part(indefinite)));
}

TEST(SparseCholesky, WorksAgainAfterARefusal) {
  const Eigen::MatrixXd matrix = dense_matrix(2, 10.0);
  SparseCholesky factor(lower_part(matrix));
  ASSERT_FALSE(factor.factorize(lower_part(-matrix)));
  ASSERT_TRUE(factor.factorize(lower_part(matrix)));
  EXPECT_LT((matrix * factor.solve(some_vector()) - some_vector()).norm(), 1e-13);
}

}  // namespace
}  // namespace deadshore::solver
