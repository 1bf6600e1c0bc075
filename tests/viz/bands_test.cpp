#include "viz/wall/bands.h"

#include "made_up_job.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

template <class Field>
std::vector<double> at_nodes(const mesh::QuadMesh& mesh, const Field& field) {
  std::vector<double> values;
  for (const mesh::Point& node : mesh.nodes) values.push_back(field(node));
  return values;
}

TEST(Bands, OfALinearFieldEndAtItsLevelLines) {
  // f = x + 2 y on a 10 x 10 square: the part with f >= 10 is the square less a triangle 10 x 5,
  // f >= 20 leaves a trapezium of half the square, f >= 25 a triangle 5 x 2.5.
  const mesh::QuadMesh mesh = squares(7, 7, 10.0 / 7.0);
  const auto values = at_nodes(mesh, [](mesh::Point p) { return p.x + 2.0 * p.y; });
  const auto regions = regions_above(mesh, values, std::array{10.0, 20.0, 25.0});
  EXPECT_NEAR(area_of(regions[0]), 100.0, 1e-3);
  EXPECT_NEAR(area_of(regions[1]), 75.0, 1e-3);
  EXPECT_NEAR(area_of(regions[2]), 25.0, 1e-3);
  EXPECT_NEAR(area_of(regions[3]), 6.25, 1e-3);
}

TEST(Bands, BordersLieOnTheLevelSetOfACone) {
  const mesh::QuadMesh mesh = squares(80, 80, 1.0);
  const auto radius = [](mesh::Point p) { return std::hypot(p.x - 40.0, p.y - 40.0); };
  const auto values = at_nodes(mesh, [&](mesh::Point p) { return 30.0 - radius(p); });
  const auto regions = regions_above(mesh, values, std::array{10.0});
  ASSERT_EQ(regions[1].size(), 1U);
  // Linear interpolation between points one apart: off by at most 1 / (8 r) of the radius' bend.
  for (const mesh::Point& point : regions[1][0]) EXPECT_NEAR(radius(point), 20.0, 1.0 / 80.0);
  EXPECT_NEAR(area_of(regions[1]), std::numbers::pi * 400.0, 0.01 * 400.0);
}

TEST(Bands, StartFromTheWholeMesh) {
  const solver::JobResult result = made_up_result();
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const double whole = area_of(region_of(mesh));
  for (const mesh::QuadMesh& one : {mesh, mesh::with_midside_nodes(mesh)}) {
    std::vector<double> field = at_nodes(one, [](mesh::Point p) { return std::sin(p.x / 300.0); });
    EXPECT_NEAR(area_of(regions_above(one, field, std::array{0.0})[0]), whole, 1e-6 * whole);
  }
}

TEST(Bands, HoldOneAnother) {
  const mesh::QuadMesh mesh = squares(20, 20, 1.0);
  const auto values =
      at_nodes(mesh, [](mesh::Point p) { return std::sin(p.x) * std::cos(1.3 * p.y); });
  const auto regions = regions_above(mesh, values, std::array{-0.5, 0.0, 0.5, 0.99, 5.0});
  for (std::size_t k = 1; k < regions.size(); ++k)
    EXPECT_LE(area_of(regions[k]), area_of(regions[k - 1]));
  EXPECT_TRUE(regions.back().empty());
}

TEST(Bands, LeaveOutWhatIsNotFinite) {
  const mesh::QuadMesh mesh = squares(4, 4, 10.0);
  std::vector<double> values(mesh.nodes.size(), 1.0);
  const auto regions_whole = regions_above(mesh, values, std::array{0.0});
  EXPECT_NEAR(area_of(regions_whole[0]), 1600.0, 1e-3);
  EXPECT_NEAR(area_of(regions_whole[1]), 1600.0, 1e-3);
  values[0] = std::nan("");  // a corner: the two triangles on its sides go
  values[24] = HUGE_VAL;     // the opposite one
  EXPECT_NEAR(area_of(regions_above(mesh, values, std::array{0.0})[0]), 1500.0, 1e-3);
  values.assign(values.size(), std::nan(""));
  EXPECT_TRUE(regions_above(mesh, values, std::array{0.0})[0].empty());
}

TEST(BandScale, HasFiveToEightRoundStepsUpToTheValue) {
  for (double value = 0.003; value < 5e3; value *= 1.07) {
    const BandScale scale = even_scale(value);
    EXPECT_GE(scale.count, 5) << value;
    EXPECT_LE(scale.count, 8) << value;
    EXPECT_GE(scale.upper(), value * (1.0 - 1e-8));
    EXPECT_LT(scale.upper() - scale.step, value);
    const double leading = scale.step / std::pow(10.0, std::floor(std::log10(scale.step) + 1e-9));
    EXPECT_THAT(leading,
                testing::AnyOf(testing::DoubleNear(1.0, 1e-9), testing::DoubleNear(2.0, 1e-9),
                               testing::DoubleNear(2.5, 1e-9), testing::DoubleNear(5.0, 1e-9)));
  }
}

TEST(BandScale, OfNothingIsOneStep) {
  for (const double value : {0.0, -3.0, std::nan(""), HUGE_VAL})
    EXPECT_EQ(even_scale(value).count, 1) << value;
}

}  // namespace
}  // namespace deadshore::viz
