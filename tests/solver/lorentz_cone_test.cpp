#include "solver/limit/lorentz_cone.h"

#include <Eigen/LU>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

const Mohr s(1.3, 0.4, -0.7);
const Mohr z(0.8, -0.5, 0.2);

TEST(LorentzCone, ScalingMapsMultiplierAndSlackToTheSamePoint) {
  const LorentzScaling W(s, z);
  EXPECT_LT((W.apply(z) - W.undo(s)).norm(), 1e-14);
  EXPECT_LT((W.undo(W.apply(s)) - s).norm(), 1e-14);
  EXPECT_LT((W.undo_twice(s) - z).norm(), 1e-14);
  EXPECT_LT((W.inverse_square() * s - z).norm(), 1e-14);
}

TEST(LorentzCone, QuotientUndoesTheJordanProduct) {
  EXPECT_LT((jordan_quotient(jordan_product(s, z), s) - z).norm(), 1e-14);
}

TEST(LorentzCone, LongestStepEndsOnTheBoundary) {
  for (const Mohr& change :
       {Mohr(-1.0, 0.2, 0.3), Mohr(0.5, 2.0, 0.0), Mohr(-0.1, -0.3, 0.9), Mohr(0.0, 0.0, -1.0)}) {
    const double step = largest_step(s, change);
    const Mohr end = s + step * change;
    EXPECT_NEAR(end(0), std::hypot(end(1), end(2)), 1e-12);
  }
  EXPECT_TRUE(std::isinf(largest_step(s, Mohr(1.0, 0.5, -0.5))));
}

TEST(LorentzCone, InverseRootSquaresToTheInverse) {
  const Eigen::Matrix3d H =
      LorentzScaling(s, z).inverse_square() + LorentzScaling(z, s).inverse_square();
  const Eigen::Matrix3d root = inverse_root_of(H);
  EXPECT_LT((root.transpose() * root * H - Eigen::Matrix3d::Identity()).norm(), 1e-13);
}

}  // namespace
}  // namespace deadshore::solver
