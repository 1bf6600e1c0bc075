#include "solver/panel/interior_path.h"

#include "tests/solver/grid_mesh.h"

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

double least_eigenvalue(const Mohr& x) {
  return x(0) - std::hypot(x(1), x(2));
}

/// Strain of a crack, Voigt.
Voigt crack_of(const ConePair<Mohr>& pair) {
  const Mohr& crack = pair.multiplier;
  return {0.5 * (crack(0) + crack(1)), 0.5 * (crack(0) - crack(1)), crack(2)};
}

/// How far crack and allowance miss the definition `S = f_t I - C (eps - L)`.
double miss(const PanelMaterial& m, const ConePair<Mohr>& pair, const Voigt& strain) {
  const Voigt stress = elastic_stiffness(m.E, m.nu) * (strain - crack_of(pair));
  return (stress_of(*m.tensile_strength * unit_of<Mohr>() - pair.slack) - stress).norm();
}

TEST(InteriorCrack, StressAndStrainPairToTheWork) {
  RandomStrain random;
  for (int sample = 0; sample < 100; ++sample) {
    const Voigt stress = random();
    const Voigt strain = random();
    EXPECT_NEAR(mohr_of_stress(stress).dot(mohr_of_strain(strain)), stress.dot(strain), 1e-20);
    EXPECT_LT((stress_of(mohr_of_stress(stress)) - stress).norm(), 1e-18);
  }
}

TEST(InteriorCrack, CentralPairMeetsItsDefinition) {
  RandomStrain random;
  for (const double tensile_strength : {0.0, 0.1}) {
    const PanelMaterial m = masonry(tensile_strength);
    for (const double part : {1e-2, 1e-8}) {
      const double product = part * stress_size * strain_size;
      for (int sample = 0; sample < 100; ++sample) {
        const Voigt strain = random();
        const ConePair<Mohr> pair = central_crack(m, strain, product);
        EXPECT_LT(miss(m, pair, strain), 1e-9 * stress_size);
        const Mohr found = jordan_product(pair.slack, pair.multiplier);
        EXPECT_LT((found - product * unit_of<Mohr>()).norm(), 1e-6 * product);
        EXPECT_GT(least_eigenvalue(pair.slack), 0.0);
        EXPECT_GT(least_eigenvalue(pair.multiplier), 0.0);
      }
    }
  }
}

TEST(InteriorCrack, CentralPairTendsToTheLaw) {
  RandomStrain random;
  const PanelMaterial m = masonry(0.1);
  for (int sample = 0; sample < 200; ++sample) {
    const Voigt strain = random();
    const ConePair<Mohr> pair = central_crack(m, strain, 2e-10 * stress_size * strain_size);
    // Near a kink both L and S go as the root of the product.
    EXPECT_LT((crack_of(pair) - crack_strain({m.E, m.nu, 0, 0, 0.1, 0.0}, strain)).norm(),
              1e-4 * strain_size);
  }
}

TEST(InteriorContact, CentralPairMeetsItsDefinition) {
  constexpr double k = 130.0;
  for (const double closure : {-2.0, -1e-6, 0.0, 1e-6, 0.8}) {
    for (const double product : {1.0, 1e-9}) {
      const ConePair<double> pair = central_contact(k, closure, product);
      EXPECT_NEAR(pair.slack * pair.multiplier, product, 1e-12 * product);
      EXPECT_NEAR(pair.slack, k * (closure + pair.multiplier),
                  1e-12 * k * std::abs(closure) + 1e-12);
      EXPECT_GT(pair.multiplier, 0.0);
    }
  }
}

/// A wall fixed along its bottom, pushed sideways at its top, over a needle with slack beside it.
class PathThroughAWall : public ::testing::Test {
 protected:
  PathThroughAWall()
      : mesh_(testing::distorted_mesh(6, 4, mesh::QuadOrder::eight_node, 900.0, 600.0, 17)),
        model_(mesh_, supports()) {
    loading_.materials = {masonry(0.02)};
    loading_.load = model_.weight(loading_.materials);
    testing::add_traction(
        mesh_, testing::top_edge, 215.0,
        [](mesh::Point, const Eigen::Vector2d&) { return Eigen::Vector2d(0.01, -0.05); },
        loading_.load);
    loading_.beds.push_back(needle_bed(mesh_, mesh_.sides_of(testing::bottom_edge),
                                       Needle{"N1", 600.0, 150.0, 20000.0, 0.01, 0.0}, NeedleId{}));
  }

  /// The left half of the bottom.
  [[nodiscard]] std::vector<Support> supports() const {
    std::vector<Support> fixed;
    for (const int node : testing::nodes_on(mesh_, testing::bottom_edge)) {
      if (mesh_.nodes[static_cast<std::size_t>(node)].x > 451.0) continue;
      fixed.push_back({node, 0, 0.0});
      fixed.push_back({node, 1, 0.0});
    }
    return fixed;
  }

  /// Out-of-balance force of the stresses f_t I - S and pushes of the path, over the load.
  [[nodiscard]] double out_of_balance(InteriorPath& path) const {
    const PanelMaterial& m = loading_.materials[0];
    const auto crack = [&](int quad, int point, const Voigt& strain) {
      const Mohr& slack = path.pairs().cones[static_cast<std::size_t>(4 * quad + point)].slack;
      const Voigt stress = stress_of(*m.tensile_strength * unit_of<Mohr>() - slack);
      return PointStress{
          (1.0 - m.residual) * stress + m.residual * elastic_stiffness(m.E, m.nu) * strain, {}};
    };
    const auto contact = [&](std::size_t, std::size_t point, double) {
      return PointPush{path.pairs().bounds[point].slack, 0.0};
    };
    const Eigen::VectorXd force = model_.assemble(loading_, path.displacement(), crack, contact);
    return model_.gather_free(loading_.load - force).norm() / loading_.load.norm();
  }

  mesh::QuadMesh mesh_;
  PanelModel model_;
  PanelLoading loading_;
};

TEST_F(PathThroughAWall, AFullStepMeetsBalanceAndTheLawsOfMasonryAndContact) {
  InteriorPath path(model_, loading_, model_.start());
  ConePairs& pairs = path.pairs();
  scale(pairs);
  ASSERT_TRUE(path.factorise());
  ASSERT_GT(out_of_balance(path), 0.1);
  ConeValues targets = affine_targets(pairs);
  for (Mohr& target : targets.cones) target *= 0.9;
  const InteriorPath::Direction step = path.direction(targets);
  const ConePair<Mohr> before = pairs.cones[5];
  EXPECT_LT((before.multiplier_change(targets.cones[5], step.cones.slack.cones[5]) -
             step.cones.multiplier.cones[5])
                .norm(),
            1e-9 * before.multiplier.norm());
  const ConePair<double> push = pairs.bounds[1];
  EXPECT_NEAR(push.multiplier_change(targets.bounds[1], step.cones.slack.bounds[1]),
              step.cones.multiplier.bounds[1], 1e-12 * push.multiplier);
  const StepLengths full{1.0, 1.0};
  move(pairs, step.cones, full);
  path.move(step, full);
  EXPECT_LT(out_of_balance(path), 1e-10);
  for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
    for (int point = 0; point < 4; ++point) {
      const Voigt strain = model_.strain(quad, point, path.displacement());
      const ConePair<Mohr>& pair = pairs.cones[static_cast<std::size_t>(4 * quad + point)];
      EXPECT_LT(miss(loading_.materials[0], pair, strain), 1e-9 * stress_size);
    }
  }
  const ContactPoint& point = loading_.beds[0].points[1];
  EXPECT_NEAR(pairs.bounds[1].slack,
              point.stiffness * (point.closure(path.displacement()) + pairs.bounds[1].multiplier),
              1e-9);
}

TEST_F(PathThroughAWall, LeadsToTheLeastEnergy) {
  InteriorPath path(model_, loading_, model_.start());
  int steps = 0;
  while (path.advance()) ++steps;
  EXPECT_GT(steps, 5);
  EXPECT_LT(steps, 60);
  const Eigen::VectorXd expected = testing::solve(model_, loading_);
  EXPECT_LT((path.displacement() - expected).norm(), 1e-4 * expected.norm());
  EXPECT_LT(out_of_balance(path), 1e-6);
}

}  // namespace
}  // namespace deadshore::solver
