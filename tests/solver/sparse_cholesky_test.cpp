#include "solver/fem/sparse_cholesky.h"

#include <Eigen/Cholesky>
#include <gtest/gtest.h>

#include <cstdlib>
#include <random>
#include <string>
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

/// Stiffness of a chain of springs; singular where it is tied to nothing.
Eigen::MatrixXd chain_of_springs(double tie) {
  Eigen::MatrixXd chain = Eigen::MatrixXd::Zero(size, size);
  for (int i = 0; i + 1 < size; ++i) {
    const double k = 1.0 + 0.37 * (i % 7);
    chain.block<2, 2>(i, i) += Eigen::Matrix2d{{k, -k}, {-k, k}};
  }
  chain(0, 0) += tie;
  return chain;
}

TEST(SparseCholesky, RefusesASingularMatrixByItsPivots) {
  SparseCholesky factor(lower_part(chain_of_springs(0.0)));
  EXPECT_FALSE(factor.factorize(lower_part(chain_of_springs(0.0))));
  EXPECT_LT(factor.least_pivot(), singular_pivot);
}

// The last pivot is the stiffness of the chain's end: tie and springs in series.
TEST(SparseCholesky, FindsTheLeastPivotOfAMatrixThatHoldsByLittle) {
  constexpr double tie = 1e-8;
  const Eigen::MatrixXd chain = chain_of_springs(tie);
  SparseCholesky factor(lower_part(chain));
  ASSERT_TRUE(factor.factorize(lower_part(chain)));
  const double expected = tie / chain(size - 1, size - 1);
  EXPECT_NEAR(factor.least_pivot(), expected, 1e-4 * expected);
  EXPECT_FALSE(factor.factorize(lower_part(chain), 1.1 * expected));
}

// Matters for the machine that runs the tests only where it asks for a kernel: see CMakeLists.txt.
TEST(SparseCholesky, RunsOnTheBlasKernelThatIsAskedFor) {
  const char* kernel = std::getenv("OPENBLAS_CORETYPE");
  if (kernel == nullptr) GTEST_SKIP() << "no kernel asked for";
  if (blas_description().find("OpenBLAS") == std::string::npos) GTEST_SKIP() << "another BLAS";
  EXPECT_NE(blas_description().find("kernel " + std::string(kernel)), std::string::npos)
      << blas_description();
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
