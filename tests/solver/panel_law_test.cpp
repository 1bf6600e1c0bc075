#include "solver/panel/panel_law.h"

#include <Eigen/Eigenvalues>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace deadshore::solver {
namespace {

constexpr double E = 1500.0;

// A few cracks wide: with this size of strain all three states come up often.
constexpr double strain_size = 3e-4;
constexpr double stress_size = E * strain_size;

PanelMaterial masonry(double nu, double tensile_strength, double residual) {
  return {E, nu, 0.0, 215.0, tensile_strength, residual};
}

std::vector<PanelMaterial> materials(double residual) {
  std::vector<PanelMaterial> all;
  for (const double nu : {0.0, 0.2, 0.45}) {
    for (const double tensile_strength : {0.0, 0.02, 0.1}) {
      all.push_back(masonry(nu, tensile_strength, residual));
    }
  }
  return all;
}

Eigen::Vector2d principal(const Voigt& v, double shear_factor) {
  Eigen::Matrix2d tensor;
  tensor << v(0), shear_factor * v(2), shear_factor * v(2), v(1);
  return Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(tensor).eigenvalues();  // ascending
}
Eigen::Vector2d principal_strain(const Voigt& strain) {
  return principal(strain, 0.5);
}
Eigen::Vector2d principal_stress(const Voigt& stress) {
  return principal(stress, 1.0);
}

/// Strain with the given principal values, the first at `angle` from the x axis.
Voigt strain_from(double e1, double e2, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * c * e1 + s * s * e2, s * s * e1 + c * c * e2, 2.0 * s * c * (e1 - e2)};
}

Voigt rotated_stress(const Voigt& v, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * c * v(0) + s * s * v(1) - 2.0 * s * c * v(2),
          s * s * v(0) + c * c * v(1) + 2.0 * s * c * v(2),
          s * c * (v(0) - v(1)) + (c * c - s * s) * v(2)};
}
Voigt rotated_strain(const Voigt& v, double angle) {
  const Voigt tensor = rotated_stress({v(0), v(1), 0.5 * v(2)}, angle);
  return {tensor(0), tensor(1), 2.0 * tensor(2)};
}

/// How far a strain is from the two kinks of the law, by the definition in panel_law.h.
double distance_to_kink(const PanelMaterial& m, const Voigt& strain) {
  const double shift = *m.tensile_strength * (1.0 - m.nu) / m.E;
  const Eigen::Vector2d e = principal_strain(strain).array() - shift;
  return std::min(std::abs(e(1) + m.nu * e(0)), std::abs(e(0)));
}

class RandomStrain {
 public:
  Voigt operator()() {
    return strain_size * Voigt(uniform_(random_), uniform_(random_), uniform_(random_));
  }

 private:
  std::mt19937 random_{20240607};
  std::uniform_real_distribution<double> uniform_{-1.0, 1.0};
};

TEST(PanelLaw, StressIsTheDerivativeOfTheEnergyAndTangentOfTheStress) {
  const double step = 1e-3 * strain_size;
  RandomStrain random;
  std::array<int, 3> tried{};
  for (const PanelMaterial& m : materials(1e-4)) {
    for (int sample = 0; sample < 300; ++sample) {
      const Voigt strain = random();
      if (distance_to_kink(m, strain) < 5.0 * step) continue;
      ++tried[static_cast<std::size_t>(crack_state(m, strain))];
      const PanelResponse here = respond(m, strain);
      for (int k = 0; k < 3; ++k) {
        const PanelResponse ahead = respond(m, strain + step * Voigt::Unit(k));
        const PanelResponse behind = respond(m, strain - step * Voigt::Unit(k));
        const double slope = (ahead.energy - behind.energy) / (2.0 * step);
        const Voigt change = (ahead.stress - behind.stress) / (2.0 * step);
        // The rotating term of one crack direction is not quadratic: central differences leave
        // an error of the order of (step / radius of Mohr's circle)^2.
        const Eigen::Vector2d e = principal_strain(strain);
        const double curvature = std::pow(step / (e(1) - e(0)), 2);
        EXPECT_NEAR(here.stress(k), slope, (1e-8 + 10.0 * curvature) * stress_size);
        EXPECT_LT((here.tangent.col(k) - change).norm(), (1e-8 + 10.0 * curvature) * E);
      }
    }
  }
  EXPECT_GT(tried[0], 300);
  EXPECT_GT(tried[1], 300);
  EXPECT_GT(tried[2], 300);
}

TEST(PanelLaw, EnergyAndStressAreContinuousAcrossKinks) {
  constexpr double near = 1e-9;
  for (const PanelMaterial& m : materials(1e-4)) {
    const double shift = *m.tensile_strength * (1.0 - m.nu) / m.E;
    for (int k = 0; k < 24; ++k) {
      const double angle = k * std::numbers::pi / 24.0;
      const double minor = -strain_size * (k + 1) / 24.0;
      const auto jump = [&](double e1, double e2) {
        const PanelResponse below = respond(m, strain_from(e1 + shift - near * strain_size,
                                                           e2 + shift - near * strain_size, angle));
        const PanelResponse above = respond(m, strain_from(e1 + shift + near * strain_size,
                                                           e2 + shift + near * strain_size, angle));
        EXPECT_NEAR(below.energy, above.energy, 10.0 * near * stress_size * strain_size);
        EXPECT_LT((below.stress - above.stress).norm(), 10.0 * near * stress_size);
      };
      jump(-m.nu * minor, minor);  // closed to one direction
      jump(-minor, 0.0);           // one direction to open
    }
    const Voigt apex(shift, shift, 0.0);  // all three states meet
    EXPECT_LT(
        (respond(m, (1.0 - near) * apex).stress - respond(m, (1.0 + near) * apex).stress).norm(),
        10.0 * near * stress_size);
  }
}

TEST(PanelLaw, EnergyIsMidpointConvex) {
  RandomStrain random;
  for (const PanelMaterial& m : materials(0.0)) {
    for (int sample = 0; sample < 500; ++sample) {
      const Voigt a = random();
      const Voigt b = random();
      const double ends = 0.5 * (respond(m, a).energy + respond(m, b).energy);
      EXPECT_LE(respond(m, 0.5 * (a + b)).energy, ends + 1e-14 * stress_size * strain_size);
    }
  }
}

TEST(PanelLaw, PrincipalStressStaysBelowTensileStrength) {
  RandomStrain random;
  for (const PanelMaterial& m : materials(0.0)) {
    for (int sample = 0; sample < 500; ++sample) {
      const Voigt strain = 10.0 * random();
      EXPECT_LE(principal_stress(respond(m, strain).stress)(1),
                *m.tensile_strength + 1e-12 * stress_size);
    }
  }
}

TEST(PanelLaw, OpenBothWaysCarriesTheTensileStrengthAllRound) {
  const PanelMaterial m = masonry(0.2, 0.1, 0.0);
  const Voigt strain = strain_from(4e-4, 2e-4, 0.3);
  ASSERT_EQ(crack_state(m, strain), CrackState::open);
  EXPECT_LT((respond(m, strain).stress - Voigt(0.1, 0.1, 0.0)).norm(), 1e-14);
}

TEST(PanelLaw, OneCrackDirectionCarriesPlainCompressionAlongTheCrack) {
  // With f_t = 0 and the crack open along x, the column stands in uniaxial stress: E eps_y.
  const PanelMaterial m = masonry(0.2, 0.0, 0.0);
  const Voigt strain(3e-4, -1e-4, 0.0);
  ASSERT_EQ(crack_state(m, strain), CrackState::one_direction);
  EXPECT_LT((respond(m, strain).stress - Voigt(0.0, -0.15, 0.0)).norm(), 1e-14);
}

TEST(PanelLaw, ClosedMasonryIsElastic) {
  RandomStrain random;
  int closed = 0;
  for (const PanelMaterial& m : materials(1e-4)) {
    PanelMaterial elastic = m;
    elastic.tensile_strength.reset();
    for (int sample = 0; sample < 300; ++sample) {
      const Voigt strain = random();
      if (crack_state(m, strain) != CrackState::closed) continue;
      ++closed;
      const PanelResponse response = respond(m, strain);
      const PanelResponse expected = respond(elastic, strain);
      EXPECT_LT((response.stress - expected.stress).norm(), 1e-15 * stress_size);
      EXPECT_LT((response.tangent - expected.tangent).norm(), 1e-15 * E);
      EXPECT_EQ(crack_strain(m, strain), Voigt::Zero());
      EXPECT_EQ(residual_stress(m, strain), Voigt::Zero());
    }
  }
  EXPECT_GT(closed, 100);
}

TEST(PanelLaw, TurningTheStrainTurnsTheStress) {
  RandomStrain random;
  for (const PanelMaterial& m : materials(1e-4)) {
    for (int sample = 0; sample < 100; ++sample) {
      const double angle = 0.1 + 0.03 * sample;
      const Voigt strain = random();
      const PanelResponse straight = respond(m, strain);
      const PanelResponse turned = respond(m, rotated_strain(strain, angle));
      EXPECT_NEAR(turned.energy, straight.energy, 1e-13 * stress_size * strain_size);
      EXPECT_LT((turned.stress - rotated_stress(straight.stress, angle)).norm(),
                1e-13 * stress_size);
    }
  }
}

// The law is Del Piero's minimum: the crack strain is positive semidefinite, does the work f_t tr,
// and no other positive semidefinite crack strain leaves less energy (Meccanica 24 (1989) 150-156).
TEST(PanelLaw, CrackStrainIsTheOneOfLeastEnergy) {
  RandomStrain random;
  std::mt19937 choice(7);
  std::uniform_real_distribution<double> size(0.0, 1.0);
  for (const PanelMaterial& m : materials(0.0)) {
    const Eigen::Matrix3d D = elastic_stiffness(m.E, m.nu);
    const double f_t = *m.tensile_strength;
    // Zero of the energy: the elastic energy of tension f_t all round.
    const double zero = f_t * f_t * (1.0 - m.nu) / m.E;
    const auto energy_with = [&](const Voigt& strain, const Voigt& crack) {
      const Voigt elastic = strain - crack;
      return 0.5 * elastic.dot(D * elastic) + f_t * (crack(0) + crack(1)) + zero;
    };
    for (int sample = 0; sample < 300; ++sample) {
      const Voigt strain = random();
      const PanelResponse response = respond(m, strain);
      const Voigt crack = crack_strain(m, strain);
      EXPECT_GE(principal_strain(crack)(0), -1e-14 * strain_size);
      EXPECT_NEAR(response.stress.dot(crack), f_t * (crack(0) + crack(1)),
                  1e-13 * stress_size * strain_size);
      EXPECT_NEAR(response.energy, energy_with(strain, crack), 1e-13 * stress_size * strain_size);
      const Voigt other = strain_from(strain_size * size(choice), strain_size * size(choice),
                                      std::numbers::pi * size(choice));
      EXPECT_LE(response.energy, energy_with(strain, other) + 1e-14 * stress_size * strain_size);
    }
  }
}

TEST(PanelLaw, ResidualStressIsTheResidualsShareBeyondTheLaw) {
  RandomStrain random;
  for (const PanelMaterial& m : materials(1e-4)) {
    PanelMaterial without = m;
    without.residual = 0.0;
    for (int sample = 0; sample < 100; ++sample) {
      const Voigt strain = random();
      const Voigt beyond = respond(m, strain).stress - respond(without, strain).stress;
      EXPECT_LT((residual_stress(m, strain) - beyond).norm(), 1e-14 * stress_size);
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
