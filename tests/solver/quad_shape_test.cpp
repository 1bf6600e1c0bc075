#include "solver/fem/quad_shape.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <random>
#include <vector>

namespace deadshore::solver {
namespace {

constexpr std::array<mesh::Point, 8> reference_nodes = {
    {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {0, -1}, {1, 0}, {0, 1}, {-1, 0}}};

std::vector<mesh::Point> random_points() {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  std::vector<mesh::Point> points;
  points.reserve(50);
  for (int i = 0; i < 50; ++i) points.push_back({uniform(random), uniform(random)});
  return points;
}

template <class Shape>
class QuadShapeTest : public ::testing::Test {};

template <int Count>
struct Element {
  static constexpr int nodes = Count;
  using Shape = QuadShape<Count>;
};
using Elements = ::testing::Types<Element<4>, Element<8>>;
TYPED_TEST_SUITE(QuadShapeTest, Elements);

TYPED_TEST(QuadShapeTest, IsOneAtItsOwnNodeAndZeroAtTheOthers) {
  for (int node = 0; node < TypeParam::nodes; ++node) {
    const auto [xi, eta] = reference_nodes[static_cast<std::size_t>(node)];
    const auto value = TypeParam::Shape::at(xi, eta).value;
    for (int i = 0; i < TypeParam::nodes; ++i) EXPECT_DOUBLE_EQ(value(i), i == node ? 1.0 : 0.0);
  }
}

TYPED_TEST(QuadShapeTest, AddsUpToOneEverywhere) {
  for (const auto& [xi, eta] : random_points()) {
    const auto shape = TypeParam::Shape::at(xi, eta);
    EXPECT_NEAR(shape.value.sum(), 1.0, 1e-15);
    EXPECT_NEAR(shape.derivative.row(0).sum(), 0.0, 1e-15);
    EXPECT_NEAR(shape.derivative.row(1).sum(), 0.0, 1e-15);
  }
}

struct Monomial {
  int a = 0;  ///< power of xi
  int b = 0;  ///< power of eta
  [[nodiscard]] double at(double xi, double eta) const {
    return std::pow(xi, a) * std::pow(eta, b);
  }
  [[nodiscard]] double d_xi(double xi, double eta) const {
    return a == 0 ? 0.0 : a * std::pow(xi, a - 1) * std::pow(eta, b);
  }
  [[nodiscard]] double d_eta(double xi, double eta) const {
    return b == 0 ? 0.0 : b * std::pow(xi, a) * std::pow(eta, b - 1);
  }
};

TYPED_TEST(QuadShapeTest, ReproducesEveryMonomialOfItsSpace) {
  std::vector<Monomial> space = {{0, 0}, {1, 0}, {0, 1}, {1, 1}};
  if (TypeParam::nodes == 8) space.insert(space.end(), {{2, 0}, {0, 2}, {2, 1}, {1, 2}});
  for (const Monomial& f : space) {
    Eigen::Matrix<double, TypeParam::nodes, 1> nodal;
    for (int i = 0; i < TypeParam::nodes; ++i) {
      const auto [xi, eta] = reference_nodes[static_cast<std::size_t>(i)];
      nodal(i) = f.at(xi, eta);
    }
    for (const auto& [xi, eta] : random_points()) {
      const auto shape = TypeParam::Shape::at(xi, eta);
      EXPECT_NEAR(shape.value.dot(nodal), f.at(xi, eta), 1e-14);
      EXPECT_NEAR(shape.derivative.row(0).dot(nodal), f.d_xi(xi, eta), 1e-14);
      EXPECT_NEAR(shape.derivative.row(1).dot(nodal), f.d_eta(xi, eta), 1e-14);
    }
  }
}

TEST(QuadGaussPoints, IntegrateCubicsInEachDirection) {
  for (int a = 0; a <= 3; ++a) {
    for (int b = 0; b <= 3; ++b) {
      double sum = 0.0;
      for (const auto& [xi, eta] : gauss_points()) sum += Monomial{a, b}.at(xi, eta);
      const double exact = (a % 2 == 1 || b % 2 == 1) ? 0.0 : 4.0 / ((a + 1) * (b + 1));
      EXPECT_NEAR(sum, exact, 1e-15);
    }
  }
}

TEST(QuadGaussPoints, CornerValuesContinueABilinearField) {
  const auto field = [](double xi, double eta) { return 3.0 - 2.0 * xi + eta + 0.5 * xi * eta; };
  Eigen::Vector4d at_points;
  for (int i = 0; i < quad_points; ++i) {
    const auto [xi, eta] = gauss_points()[static_cast<std::size_t>(i)];
    at_points(i) = field(xi, eta);
  }
  const Eigen::Vector4d corners = corners_from_gauss_points() * at_points;
  for (int i = 0; i < 4; ++i) {
    const auto [xi, eta] = reference_nodes[static_cast<std::size_t>(i)];
    EXPECT_NEAR(corners(i), field(xi, eta), 1e-14);
  }
}

}  // namespace
}  // namespace deadshore::solver
