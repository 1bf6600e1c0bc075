#include "solver/panel/psd_cone.h"

#include <Eigen/Eigenvalues>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace deadshore::solver {
namespace {

using Eigen::Matrix2d;
using Eigen::Vector2d;

constexpr int samples = 300;

/// Random symmetric and positive definite matrices; the latter with eigenvalues 1 and 1e-6 to 1.
class RandomMatrix {
 public:
  Matrix2d symmetric() { return matrix_of_stress({uniform(), uniform(), uniform()}); }

  Matrix2d definite() {
    const double angle = 3.0 * uniform();
    const double least = std::pow(10.0, 3.0 * uniform() - 3.0);
    Matrix2d axes;
    axes << std::cos(angle), -std::sin(angle), std::sin(angle), std::cos(angle);
    return axes * Vector2d(1.0, least).asDiagonal() * axes.transpose();
  }

 private:
  double uniform() { return uniform_(random_); }

  std::mt19937 random_{20250311};
  std::uniform_real_distribution<double> uniform_{-1.0, 1.0};
};

double least_eigenvalue(const Matrix2d& x) {
  return Eigen::SelfAdjointEigenSolver<Matrix2d>(x).eigenvalues()(0);
}

TEST(PsdCone, VoigtFormsPairToTheTraceOfTheProduct) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d stress = random.symmetric();
    const Matrix2d strain = random.symmetric();
    EXPECT_NEAR(stress_of_matrix(stress).dot(strain_of_matrix(strain)), (stress * strain).trace(),
                1e-15);
    EXPECT_EQ(matrix_of_stress(stress_of_matrix(stress)), stress);
    EXPECT_EQ(matrix_of_strain(strain_of_matrix(strain)), strain);
  }
}

TEST(PsdCone, CongruenceIsTheProductWithTheMatrixOnBothSides) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    Matrix2d A = random.symmetric();
    A(0, 1) += 0.3;
    const Matrix2d x = random.symmetric();
    const Voigt expected = strain_of_matrix(A * x * A.transpose());
    EXPECT_LT((congruence(A) * stress_of_matrix(x) - expected).norm(), 1e-14);
  }
}

TEST(PsdCone, RaisingKeepsTheAxesAndMovesOnlyEigenvaluesBelowTheFloor) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d x = random.symmetric();
    const Eigen::SelfAdjointEigenSolver<Matrix2d> eigen(x);
    const Matrix2d expected = eigen.eigenvectors() *
                              eigen.eigenvalues().cwiseMax(0.1).asDiagonal() *
                              eigen.eigenvectors().transpose();
    EXPECT_LT((raised_to(x, 0.1) - expected).norm(), 1e-14);
  }
}

TEST(PsdCone, LargestStepEndsOnTheBoundary) {
  RandomMatrix random;
  int bounded = 0;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d x = random.definite();
    const Matrix2d change = random.symmetric();
    const double step = largest_step(x, change);
    if (least_eigenvalue(change) >= 0.0) {
      EXPECT_EQ(step, std::numeric_limits<double>::infinity());
      continue;
    }
    ++bounded;
    // Round-off times the condition of x, 1e6.
    EXPECT_NEAR(least_eigenvalue(x + step * change), 0.0, 1e-9 * (1.0 + step));
    EXPECT_GT(least_eigenvalue(x + 0.99 * step * change), 0.0);
  }
  EXPECT_GT(bounded, samples / 2);
}

TEST(PsdCone, JordanQuotientUndoesTheProduct) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d x = random.symmetric();
    const Vector2d d(0.3, 2.0);
    EXPECT_LT((jordan_quotient(jordan_product(d.asDiagonal(), x), d) - x).norm(), 1e-15);
    EXPECT_EQ(jordan_product(Matrix2d::Identity(), x), x);
  }
}

// Nesterov & Todd, Math. Oper. Res. 22 (1997), theorem 3.2: one scaling point W with W S W = L.
TEST(PsdScaling, TakesPrimalAndDualToTheSameDiagonal) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d primal = random.definite();
    const Matrix2d dual = 1e3 * random.definite();
    const PsdScaling scaling = nesterov_todd(primal, dual);
    const Matrix2d diagonal = scaling.point.asDiagonal();
    const double small = 1e-8 * diagonal.norm();  // conditions of 1e6 each
    EXPECT_LT((scaling.scaled_primal(primal) - diagonal).norm(), small);
    EXPECT_LT((scaling.scaled_dual(dual) - diagonal).norm(), small);
    EXPECT_LT((scaling.frame * scaling.inverse_frame - Matrix2d::Identity()).norm(), 1e-9);
    EXPECT_LT((scaling.unscaled_primal(diagonal) - primal).norm(), 1e-9);
    EXPECT_LT((scaling.unscaled_dual(diagonal) - dual).norm(), 1e-9 * dual.norm());
    EXPECT_NEAR(scaling.point.squaredNorm(), (primal * dual).trace(),
                1e-9 * (primal * dual).trace());
    const Voigt mapped = scaling.dual_to_primal() * stress_of_matrix(dual);
    EXPECT_LT((mapped - strain_of_matrix(primal)).norm(), 1e-9);
  }
}

// The geometric mean of commuting matrices is that of their eigenvalues (Bhatia, Positive Definite
// Matrices, 2007, chapter 4): W = (primal / dual)^(1/2).
TEST(PsdScaling, IsTheRootOfTheRatioOnCommonAxes) {
  const PsdScaling scaling =
      nesterov_todd(Vector2d(4.0, 9.0).asDiagonal(), Vector2d(1.0, 4.0).asDiagonal());
  const Matrix2d expected = Vector2d(2.0, 1.5).asDiagonal();
  EXPECT_LT((scaling.frame * scaling.frame.transpose() - expected).norm(), 1e-15);
}

TEST(PsdScaling, OperatorIsSymmetricPositiveDefinite) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Eigen::Matrix3d map =
        nesterov_todd(random.definite(), random.definite()).dual_to_primal();
    EXPECT_LT((map - map.transpose()).norm(), 1e-15 * map.norm());
    EXPECT_GT(Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(map).eigenvalues()(0), 0.0);
  }
}

TEST(PsdScaling, StepInTheFrameIsTheStepOutsideIt) {
  RandomMatrix random;
  for (int i = 0; i < samples; ++i) {
    const Matrix2d primal = random.definite();
    const Matrix2d dual = random.definite();
    const PsdScaling scaling = nesterov_todd(primal, dual);
    const Matrix2d change = random.symmetric();
    const double expected = largest_step(dual, change);
    const double step = scaling.largest_step(scaling.scaled_dual(change));
    if (std::isinf(expected)) {
      EXPECT_GT(step, 1e6);
    } else {
      EXPECT_NEAR(step, expected, 1e-7 * expected);
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
