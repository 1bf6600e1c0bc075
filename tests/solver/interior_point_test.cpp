#include "solver/panel/interior_point.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace deadshore::solver {
namespace {

constexpr double strain_size = 3e-4;  // a few cracks wide: all states of the law come up
constexpr double stress_size = 1500.0 * strain_size;

PanelMaterial masonry(double tensile_strength) {
  return {1500.0, 0.2, 19e-6, 215.0, tensile_strength, 1e-4};
}

class RandomStrain {
 public:
  Voigt operator()() {
    return strain_size * Voigt(uniform_(random_), uniform_(random_), uniform_(random_));
  }

 private:
  std::mt19937 random_{20251125};
  std::uniform_real_distribution<double> uniform_{-1.0, 1.0};
};

/// How far crack and allowance miss the definition `S = f_t I - C (eps - L)`.
double miss(const PanelMaterial& m, const InteriorCrack& point, const Voigt& strain) {
  const Voigt stress = elastic_stiffness(m.E, m.nu) * (strain - strain_of_matrix(point.crack));
  const Voigt allowance =
      Voigt(*m.tensile_strength, *m.tensile_strength, 0.0) - stress_of_matrix(point.allowance);
  return (stress - allowance).norm();
}

TEST(InteriorCrack, CentralPointMeetsItsDefinition) {
  RandomStrain random;
  for (const double tensile_strength : {0.0, 0.1}) {
    const PanelMaterial m = masonry(tensile_strength);
    for (const double mu : {1e-2 * stress_size * strain_size, 1e-8 * stress_size * strain_size}) {
      for (int sample = 0; sample < 100; ++sample) {
        const Voigt strain = random();
        const InteriorCrack point = central_crack(m, strain, mu);
        EXPECT_LT(miss(m, point, strain), 1e-9 * stress_size);
        EXPECT_LT((point.crack * point.allowance - mu * Eigen::Matrix2d::Identity()).norm(),
                  1e-6 * mu);
        EXPECT_GT(eigenvalues_of(point.crack)(0), 0.0);
        EXPECT_GT(eigenvalues_of(point.allowance)(0), 0.0);
      }
    }
  }
}

TEST(InteriorCrack, CentralPointTendsToTheLaw) {
  RandomStrain random;
  const PanelMaterial m = masonry(0.1);
  for (int sample = 0; sample < 200; ++sample) {
    const Voigt strain = random();
    const double mu = 1e-10 * stress_size * strain_size;
    const InteriorCrack point = central_crack(m, strain, mu);
    // Near a kink both L and S go as the root of mu.
    EXPECT_LT(
        (strain_of_matrix(point.crack) - crack_strain({m.E, m.nu, 0, 0, 0.1, 0.0}, strain)).norm(),
        1e-4 * strain_size);
  }
}

TEST(InteriorCrack, ChangeMeetsTheLinearisedConditions) {
  RandomStrain random;
  const PanelMaterial m = masonry(0.05);
  for (int sample = 0; sample < 100; ++sample) {
    const Voigt strain = random();
    const Voigt strain_change = 0.1 * random();
    const InteriorCrack point = central_crack(m, random(), 1e-2 * stress_size * strain_size);
    const LinearisedCrack line = linearise(m, point, strain);
    CrackChange change;
    change.aim = aim_at(line, 1e-3 * stress_size * strain_size, {});
    follow(line, strain_change, change);
    // A full step meets the definition of the allowance at the new strain ...
    const InteriorCrack full = moved(point, line, 1.0, change);
    EXPECT_LT(miss(m, full, strain + strain_change), 1e-10 * stress_size);
    // ... changes the scaled product by the aim, to first order ...
    const Eigen::Matrix2d sum = change.crack + change.allowance;
    EXPECT_LT((jordan_product(line.scaling.point.asDiagonal(), sum) - change.aim).norm(),
              1e-12 * stress_size * strain_size);
    // ... and changes the stress as its answer says.
    const PointAnswer before = answer(m, line, change, strain);
    const double r = m.residual;
    const Voigt stress = Voigt(0.05, 0.05, 0.0) - stress_of_matrix(full.allowance);
    const Voigt elastic = elastic_stiffness(m.E, m.nu) * (strain + strain_change);
    EXPECT_LT(
        (before.stress + before.tangent * strain_change - (1.0 - r) * stress - r * elastic).norm(),
        1e-10 * stress_size);
  }
}

TEST(InteriorCrack, LargestStepEndsOnTheBoundary) {
  RandomStrain random;
  const PanelMaterial m = masonry(0.05);
  int bounded = 0;
  for (int sample = 0; sample < 100; ++sample) {
    const Voigt strain = random();
    const InteriorCrack point = central_crack(m, strain, 1e-2 * stress_size * strain_size);
    const LinearisedCrack line = linearise(m, point, strain);
    CrackChange change;
    change.aim = aim_at(line, 0.0, {});
    follow(line, random(), change);
    const double step = largest_step(line, change);
    if (!std::isfinite(step)) continue;
    ++bounded;
    const InteriorCrack end = moved(point, line, step, change);
    const double nearest = std::min(eigenvalues_of(end.crack)(0) / strain_size,
                                    eigenvalues_of(end.allowance)(0) / stress_size);
    EXPECT_NEAR(nearest, 0.0, 1e-8 * (1.0 + step));
  }
  EXPECT_GT(bounded, 50);
}

TEST(InteriorCrack, CentringBringsFarProductsBack) {
  const PanelMaterial m = masonry(0.05);
  const double mu = 1e-2 * stress_size * strain_size;
  const Voigt strain(strain_size, -strain_size, 0.0);
  const LinearisedCrack line = linearise(m, central_crack(m, strain, mu), strain);
  EXPECT_LT(centring(line, mu, 0.0, {}).norm(), 1e-12 * mu) << "on the path nothing is far";
  const Eigen::Matrix2d up = centring(line, 20.0 * mu, 0.0, {});
  EXPECT_NEAR(up(0, 0), mu, 1e-6 * mu);  // to a tenth of 20 mu
  EXPECT_NEAR(up(1, 1), mu, 1e-6 * mu);
}

TEST(InteriorContact, CentralPointMeetsItsDefinition) {
  constexpr double k = 130.0;
  for (const double closure : {-2.0, -1e-6, 0.0, 1e-6, 0.8}) {
    for (const double mu : {1.0, 1e-9}) {
      const InteriorContact point = central_contact(k, closure, mu);
      EXPECT_NEAR(point.gap * point.push, mu, 1e-12 * mu);
      EXPECT_NEAR(point.push, k * (closure + point.gap), 1e-12 * k * std::abs(closure) + 1e-12);
      EXPECT_GT(point.gap, 0.0);
    }
  }
}

TEST(InteriorContact, ChangeMeetsTheLinearisedConditions) {
  constexpr double k = 130.0;
  const InteriorContact point{0.2, 30.0};
  const double closure = 0.1;
  const ContactLine line = linearise(k, point, closure);
  ContactChange change;
  change.aim = aim_at(point, 0.5, {});
  follow(point, line, 0.05, change);
  EXPECT_NEAR(point.push + change.push, k * (closure + 0.05 + point.gap + change.gap), 1e-12);
  EXPECT_NEAR(point.gap * change.push + point.push * change.gap, change.aim, 1e-12);
  const ContactAnswer before = answer(point, line, change);
  EXPECT_NEAR(before.force + before.stiffness * 0.05, point.push + change.push, 1e-12);
}

TEST(InteriorContact, LargestStepEndsWhereGapOrPushIsGone) {
  const InteriorContact point{0.2, 30.0};
  EXPECT_DOUBLE_EQ(largest_step(point, ContactChange{0.0, -0.4, 5.0}), 0.5);
  EXPECT_DOUBLE_EQ(largest_step(point, ContactChange{0.0, -0.1, -20.0}), 1.5);
  EXPECT_TRUE(std::isinf(largest_step(point, ContactChange{0.0, 0.1, 20.0})));
}

}  // namespace
}  // namespace deadshore::solver
