#include "solver/conic/interior_step.h"

#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace deadshore::solver {
namespace {

constexpr int samples = 300;
constexpr double infinite = std::numeric_limits<double>::infinity();

Eigen::Matrix2d matrix_of(const Mohr& x) {
  return Eigen::Matrix2d{{x(0) + x(1), x(2)}, {x(2), x(0) - x(1)}};
}
Eigen::Vector2d eigenvalues_of(const Mohr& x) {  // ascending
  return Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(matrix_of(x)).eigenvalues();
}
Mohr on_axis(double major, double minor, double angle) {
  const double radius = 0.5 * (major - minor);
  return {0.5 * (major + minor), radius * std::cos(angle), radius * std::sin(angle)};
}

/// Random elements; those inside the cone with eigenvalues 1 and 1e-6 to 1.
class Random {
 public:
  double number() { return uniform_(random_); }
  Mohr any() { return {number(), number(), number()}; }
  Mohr inside() { return on_axis(1.0, std::pow(10.0, 3.0 * number() - 3.0), 4.0 * number()); }

 private:
  std::mt19937 random_{20250311};
  std::uniform_real_distribution<double> uniform_{-1.0, 1.0};
};

TEST(SecondOrderCone, HoldsTheSemidefiniteMatrices) {
  Random random;
  int inside = 0;
  for (int i = 0; i < samples; ++i) {
    const Mohr x = random.any();
    const Eigen::Vector2d values = eigenvalues_of(x);
    EXPECT_NEAR(determinant_of(x), values.prod(), 1e-14);
    EXPECT_EQ(x(0) >= std::hypot(x(1), x(2)), values(0) >= 0.0);
    inside += values(0) >= 0.0 ? 1 : 0;
  }
  EXPECT_GT(inside, samples / 10);
}

TEST(SecondOrderCone, LargestStepEndsOnTheBoundary) {
  Random random;
  int bounded = 0;
  for (int i = 0; i < samples; ++i) {
    const Mohr x = random.inside();
    const Mohr change = random.any();
    const double step = largest_step(x, change);
    const bool leaves = eigenvalues_of(change)(0) < 0.0;
    EXPECT_EQ(std::isfinite(step), leaves);
    if (!leaves) continue;
    ++bounded;
    // Round-off times the condition of x, 1e6.
    EXPECT_NEAR(eigenvalues_of(x + step * change)(0), 0.0, 1e-9 * (1.0 + step));
    EXPECT_GT(eigenvalues_of(x + 0.99 * step * change)(0), 0.0);
  }
  EXPECT_GT(bounded, samples / 2);
  EXPECT_EQ(largest_step(3.0, -2.0), 1.5);
  EXPECT_EQ(largest_step(3.0, 2.0), infinite);
}

TEST(SecondOrderCone, JordanQuotientUndoesTheProduct) {
  Random random;
  for (int i = 0; i < samples; ++i) {
    const Mohr x = random.inside() + 0.01 * unit_of<Mohr>();
    const Mohr y = random.any();
    EXPECT_LT((jordan_quotient(jordan_product(x, y), x) - y).norm(), 1e-12);
    EXPECT_EQ(jordan_product(unit_of<Mohr>(), y), y);
  }
}

TEST(SecondOrderCone, ClampingMovesOnlyEigenvaluesThatLieOutside) {
  Random random;
  for (int i = 0; i < samples; ++i) {
    const Mohr x = random.any();
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> eigen(matrix_of(x));
    const Eigen::Matrix2d expected = eigen.eigenvectors() *
                                     eigen.eigenvalues().cwiseMax(-0.1).cwiseMin(0.5).asDiagonal() *
                                     eigen.eigenvectors().transpose();
    EXPECT_LT((matrix_of(clamped(x, -0.1, 0.5)) - expected).norm(), 1e-14);
  }
}

// Nesterov & Todd, Math. Oper. Res. 22 (1997), theorem 3.2: one scaling point.
TEST(NesterovTodd, TakesSlackAndMultiplierToTheSamePoint) {
  Random random;
  for (int i = 0; i < samples; ++i) {
    const Mohr s = random.inside();
    const Mohr z = 1e3 * random.inside();
    const NesterovTodd<Mohr> W(s, z);
    const Mohr point = W.apply(z);
    const double small = 1e-8 * point.norm();  // conditions of 1e6 each
    EXPECT_LT((W.undo(s) - point).norm(), small);
    EXPECT_LT((W.undo(W.apply(s)) - s).norm(), 1e-9);
    EXPECT_LT((W.undo_twice(s) - z).norm(), 1e-8 * z.norm());
    EXPECT_NEAR(point.squaredNorm(), s.dot(z), 1e-9 * s.dot(z));
    const Eigen::Matrix3d square = W.inverse_square();
    EXPECT_LT((square * s - z).norm(), 1e-8 * z.norm());
    EXPECT_GT(Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(square).eigenvalues()(0), 0.0);
  }
  const NesterovTodd<double> w(4.0, 9.0);
  EXPECT_DOUBLE_EQ(w.apply(9.0), 6.0);
  EXPECT_DOUBLE_EQ(w.undo(4.0), 6.0);
  EXPECT_DOUBLE_EQ(w.undo_twice(4.0), 9.0);
}

// The geometric mean of commuting matrices is that of their eigenvalues (Bhatia, Positive Definite
// Matrices, 2007, chapter 4): with s = diag(4, 9) and z = diag(1, 4) the map X -> W X W has
// W = diag(2, 1.5), so that its inverse takes diag(a, b) to diag(a / 4, b / 2.25).
TEST(NesterovTodd, IsTheRootOfTheRatioOnCommonAxes) {
  const NesterovTodd<Mohr> W(on_axis(4.0, 9.0, 0.0), on_axis(1.0, 4.0, 0.0));
  const Mohr expected = on_axis(1.0 / 4.0, 3.0 / 2.25, 0.0);
  EXPECT_LT((W.undo_twice(on_axis(1.0, 3.0, 0.0)) - expected).norm(), 1e-15);
}

TEST(NesterovTodd, InverseWithACompliance) {
  Random random;
  for (int i = 0; i < samples; ++i) {
    const NesterovTodd<Mohr> W(random.inside(), random.inside());
    const Eigen::Matrix3d sum =
        W.inverse_square() + Eigen::Matrix3d(Eigen::Vector3d(0.3, 0.7, 0.7).asDiagonal());
    EXPECT_LT((W.inverse_with(0.3, 0.7) * sum - Eigen::Matrix3d::Identity()).norm(),
              1e-9 * sum.norm());
  }
}

// With s = diag(1, 1 / big) and its multiplier the other way round, W^-2 takes the second axis by
// big^2 and the first by 1 / big^2: there all of the compliance is left and here none.
TEST(NesterovTodd, InverseWithAComplianceKeepsWhatIsSmall) {
  for (const double angle : {0.0, 0.4, 2.0}) {
    const double big = 1e10;
    const Mohr first = on_axis(1.0, 0.0, angle);
    const Mohr second = on_axis(0.0, 1.0, angle);
    const NesterovTodd<Mohr> W(first + second / big, first / big + second);
    const Eigen::Matrix3d inverse = W.inverse_with(0.5, 0.5);
    // `first` has length 1 / sqrt 2 as a vector.
    EXPECT_NEAR(2.0 * first.dot(inverse * first), 2.0, 1e-9);
    EXPECT_NEAR(2.0 * second.dot(inverse * second), 0.0, 1e-9);
  }
}

TEST(NesterovTodd, InverseRootSquaresToTheInverse) {
  const Mohr s(1.3, 0.4, -0.7);
  const Mohr z(0.8, -0.5, 0.2);
  const Eigen::Matrix3d H =
      NesterovTodd<Mohr>(s, z).inverse_square() + NesterovTodd<Mohr>(z, s).inverse_square();
  const Eigen::Matrix3d root = inverse_root_of(H);
  EXPECT_LT((root.transpose() * root * H - Eigen::Matrix3d::Identity()).norm(), 1e-13);
}

/// A cone and a bound somewhere inside, with a change of their slacks and multipliers.
struct SomePairs {
  ConePairs pairs{{{{1.3, 0.4, -0.7}, {0.8, -0.5, 0.2}, {}, {}}}, {{2.0, 0.5, {}, {}}}};
  ConeChanges changes{{{{0.2, -0.1, 0.3}}, {-0.4}}, {{{-0.1, 0.2, 0.1}}, {0.3}}};

  SomePairs() { scale(pairs); }
};

// In the scaled space the product changes by point o (W^-1 ds + W dz), to first order.
TEST(ConePairs, TargetsMeetTheLinearisedProduct) {
  const SomePairs some;
  const Complementarity mu{0.3, 0.2, 0.0};
  const ConeValues targets = corrected_targets(some.pairs, some.changes, mu);
  const ConePair<Mohr>& cone = some.pairs.cones[0];
  const Mohr slack(0.3, 0.1, -0.2);
  const Mohr multiplier = cone.multiplier_change(targets.cones[0], slack);
  const Mohr second_order = jordan_product(cone.scaling.undo(some.changes.slack.cones[0]),
                                           cone.scaling.apply(some.changes.multiplier.cones[0]));
  const Mohr product = jordan_product(cone.point, cone.point + cone.scaling.undo(slack) +
                                                      cone.scaling.apply(multiplier)) +
                       second_order;
  EXPECT_LT((product - mu.cones * unit_of<Mohr>()).norm(), 1e-14);

  const ConePair<double>& bound = some.pairs.bounds[0];
  const double push = bound.multiplier_change(targets.bounds[0], 0.1);
  EXPECT_NEAR(2.0 * 0.5 + 0.5 * 0.1 + 2.0 * push - 0.4 * 0.3, mu.bounds, 1e-15);
}

TEST(ConePairs, AffineTargetsAimAtNothing) {
  const SomePairs some;
  const ConeValues affine = affine_targets(some.pairs);
  const ConeChanges none{some.pairs.zeros(), some.pairs.zeros()};
  const ConeValues corrected = corrected_targets(some.pairs, none, {});
  EXPECT_LT((affine.cones[0] - corrected.cones[0]).norm(), 1e-14);
  EXPECT_NEAR(affine.bounds[0], corrected.bounds[0], 1e-15);
}

TEST(ConePairs, CentringBringsFarProductsBack) {
  ConePairs pairs{{{{2.0, 0.0, 0.0}, {0.5, 0.0, 0.0}, {}, {}}}, {{2.0, 0.5, {}, {}}}};
  scale(pairs);
  const ConeChanges none{pairs.zeros(), pairs.zeros()};
  const auto centring = [&](double mu) {
    ConeValues targets = pairs.zeros();
    add_centring(pairs, none, {}, {mu, mu, mu}, targets);
    return targets;
  };
  EXPECT_EQ(centring(1.0).cones[0], Mohr::Zero()) << "on the path nothing is far";
  EXPECT_EQ(centring(1.0).bounds[0], 0.0);
  // From a product of 1 to a tenth of 20, over the slack of 2.
  EXPECT_NEAR(centring(20.0).cones[0](0), 0.5, 1e-15);
  EXPECT_NEAR(centring(20.0).bounds[0], 0.5, 1e-15);
}

TEST(ConePairs, StepsGoToTheFirstBoundary) {
  const SomePairs some;
  const StepLengths lengths = steps_to_boundary(some.pairs, some.changes);
  const ConePair<Mohr>& cone = some.pairs.cones[0];
  EXPECT_EQ(lengths.primal,
            std::min(largest_step(cone.slack, some.changes.slack.cones[0]), 2.0 / 0.4));
  EXPECT_EQ(lengths.dual, largest_step(cone.multiplier, some.changes.multiplier.cones[0]));
}

TEST(ConePairs, ProductsAfterAStepAreThoseOfThePairsMoved) {
  SomePairs some;
  const StepLengths lengths{0.3, 0.6};
  const Complementarity expected = complementarity_of(some.pairs, some.changes, lengths);
  move(some.pairs, some.changes, lengths);
  const Complementarity moved = complementarity_of(some.pairs);
  EXPECT_DOUBLE_EQ(moved.cones, expected.cones);
  EXPECT_DOUBLE_EQ(moved.bounds, expected.bounds);
  EXPECT_DOUBLE_EQ(moved.all, 0.5 * (expected.cones + expected.bounds));
}

/// The point of the cone nearest to `a` and the number x >= 0 nearest to `b`: least
/// |x - a|^2 / 2, where x is its own slack and x - a its multiplier.
struct NearestInCone {
  Mohr a;
  double b = 0.0;
  ConePairs all{std::vector<ConePair<Mohr>>(1), std::vector<ConePair<double>>(1)};
  Eigen::Matrix3d inverse = Eigen::Matrix3d::Zero();

  struct Direction {
    ConeChanges cones;
  };
  ConePairs& pairs() { return all; }
  bool factorise() {
    inverse = all.cones[0].scaling.inverse_with(1.0, 1.0);
    return true;
  }
  Direction direction(const ConeValues& targets) {
    const Mohr residual = all.cones[0].slack - a - all.cones[0].multiplier;
    const Mohr x = inverse * (targets.cones[0] - residual);
    const double bound_residual = all.bounds[0].slack - b - all.bounds[0].multiplier;
    const double y =
        (targets.bounds[0] - bound_residual) / (1.0 + all.bounds[0].scaling.inverse_square());
    return {{{{x}, {y}}, {{x + residual}, {y + bound_residual}}}};
  }
  void move(const Direction&, const StepLengths&) {}
};

/// Steps until the product is next to nothing.
template <class System>
int steps_to_the_end(System& system, const StepRules& rules) {
  int steps = 0;
  while (complementarity_of(system.pairs()).all > 1e-12 && steps < 100) {
    if (!interior_step(system, rules)) break;
    ++steps;
  }
  return steps;
}

constexpr StepRules plain{.one_length = true};
constexpr StepRules centred{
    .fraction_to_boundary = 0.9, .one_length = true, .one_target = false, .most_corrections = 3};

TEST(InteriorStep, FindsTheNearestPointOfTheCone) {
  Random random;
  for (const StepRules& rules : {plain, centred}) {
    for (int i = 0; i < 50; ++i) {
      NearestInCone nearest{random.any(), random.number()};
      EXPECT_LE(steps_to_the_end(nearest, rules), 20);
      const Mohr expected = clamped(nearest.a, 0.0, infinite);
      EXPECT_LT((nearest.all.cones[0].slack - expected).norm(), 1e-6);
      EXPECT_NEAR(nearest.all.bounds[0].slack, std::max(nearest.b, 0.0), 1e-6);
    }
  }
}

/// Least c . y over the disc |y| <= 1, that is with (1, y) in the cone: linear, so that slacks and
/// multipliers need not step together.
struct LeastOverDisc {
  Eigen::Vector2d c;
  ConePairs all{std::vector<ConePair<Mohr>>(1), {}};
  Eigen::Matrix3d square = Eigen::Matrix3d::Zero();

  struct Direction {
    ConeChanges cones;
  };
  ConePairs& pairs() { return all; }
  bool factorise() {
    square = all.cones[0].scaling.inverse_square();
    return true;
  }
  Direction direction(const ConeValues& targets) {
    const Eigen::Vector2d change = c - all.cones[0].multiplier.tail<2>();
    const Mohr& target = targets.cones[0];
    Mohr slack = Mohr::Zero();
    slack.tail<2>() = square.bottomRightCorner<2, 2>().inverse() * (target.tail<2>() - change);
    return {{{{slack}, {}}, {{Mohr(target - square * slack)}, {}}}};
  }
  void move(const Direction&, const StepLengths&) {}
};

TEST(InteriorStep, FindsTheLeastOfALinearFunctionOverADisc) {
  Random random;
  for (const StepRules& rules : {StepRules{}, plain}) {
    for (int i = 0; i < 50; ++i) {
      LeastOverDisc least{{random.number(), random.number()}};
      EXPECT_LE(steps_to_the_end(least, rules), 20);
      EXPECT_NEAR(least.c.dot(least.all.cones[0].slack.tail<2>()), -least.c.norm(), 1e-6);
    }
  }
}

TEST(InteriorStep, StopsWhereTheEquationsAreSingular) {
  struct Singular : NearestInCone {
    bool factorise() { return false; }
  } singular;
  EXPECT_FALSE(interior_step(singular, {}));
}

// Mehrotra's rule: the cube of what the predictor leaves.
TEST(InteriorStep, AimsAtTheCubeOfWhatThePredictorLeaves) {
  const Complementarity now{4.0, 10.0, 7.0};
  const Complementarity left{2.0, 1.0, 1.5};
  const Complementarity one = target_after(now, left, {});
  EXPECT_DOUBLE_EQ(one.cones, 7.0 * std::pow(1.5 / 7.0, 3));
  EXPECT_EQ(one.bounds, one.cones);
  const Complementarity two = target_after(now, left, {.one_target = false});
  EXPECT_DOUBLE_EQ(two.cones, 0.5);
  EXPECT_DOUBLE_EQ(two.bounds, 10.0 / 8.0);  // no further ahead than the cones
  EXPECT_DOUBLE_EQ(target_after(now, {}, {.least_centring = 0.01}).all, 0.07);
}

}  // namespace
}  // namespace deadshore::solver
