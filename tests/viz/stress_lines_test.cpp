#include "viz/wall/stress_lines.h"

#include "made_up_job.h"
#include "tests/some.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

using mesh::Point;
using solver::PlaneTensor;

/// A stress of this size along a direction and none across it.
PlaneTensor along(double angle, double size) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {size * c * c, size * s * s, size * c * s};
}

/// Pressed round the origin: the compression lines are circles.
std::optional<PlaneTensor> hoop_compression(Point p) {
  return along(std::atan2(p.y, p.x) + 0.5 * std::numbers::pi, -1.0);
}

/// Pressed along (x, -y): the lines are hyperbolas x y = c, with asymptotes on the axes.
std::optional<PlaneTensor> hyperbolic_compression(Point p) {
  return along(std::atan2(-p.y, p.x), -1.0);
}

double largest_off(const StressLine& line, const std::function<double(Point)>& off) {
  double largest = 0.0;
  for (const StressPoint& point : line) largest = std::max(largest, std::abs(off(point.at)));
  return largest;
}

std::vector<PlaneTensor> at_nodes(const mesh::QuadMesh& mesh, const StressAt& stress) {
  std::vector<PlaneTensor> values;
  for (const Point& node : mesh.nodes) values.push_back(*stress(node));
  return values;
}

StressAt as_function(const StressField& field) {
  return [&field](Point p) { return field.at(p); };
}

TEST(StressField, OfALinearStressIsExactInAnyQuadrilateral) {
  mesh::QuadMesh mesh = squares(3, 3, 10.0);
  mesh.nodes[5].x += 2.5;  // one inside: four elements are no parallelograms any more
  mesh.nodes[5].y -= 1.5;
  const auto linear = [](Point p) -> std::optional<PlaneTensor> {
    return PlaneTensor{1.0 + 0.1 * p.x, -0.2 * p.y, 0.05 * (p.x - p.y)};
  };
  for (const mesh::QuadMesh& one : {mesh, mesh::with_midside_nodes(mesh)}) {
    const auto values = at_nodes(one, linear);
    const StressField field(one, values);
    for (const Point p : {Point{4.0, 3.0}, Point{13.0, 9.5}, Point{28.0, 29.0}}) {
      ASSERT_TRUE(field.at(p));
      EXPECT_NEAR(field.at(p)->xx, linear(p)->xx, 1e-9);
      EXPECT_NEAR(field.at(p)->yy, linear(p)->yy, 1e-9);
      EXPECT_NEAR(field.at(p)->xy, linear(p)->xy, 1e-9);
    }
  }
}

TEST(StressField, HasNothingOutsideInWhatIsLeftOutOrNotFinite) {
  const mesh::QuadMesh mesh = squares(3, 1, 10.0);
  std::vector<PlaneTensor> values(mesh.nodes.size(), {0.0, -1.0, 0.0});
  values[0].yy = std::nan("");
  const std::vector<char> chosen = {1, 1, 0};
  const StressField field(mesh, values, chosen);
  EXPECT_FALSE(field.at({5.0, 11.0}));
  EXPECT_FALSE(field.at({5.0, 5.0}));
  EXPECT_TRUE(field.at({15.0, 5.0}));
  EXPECT_FALSE(field.at({25.0, 5.0}));
  EXPECT_FALSE(StressField(mesh, std::span(values).first(3)).at({15.0, 5.0}));
}

TEST(StressLines, OfAUniformUniaxialStressAreStraightFromEdgeToEdge) {
  const mesh::QuadMesh mesh = squares(10, 10, 100.0);
  const double angle = 1.1;
  const std::vector<PlaneTensor> values(mesh.nodes.size(), along(angle, -0.3));
  const StressField field(mesh, values);
  const StressLine line = trace(as_function(field), {480.0, 510.0}, {.step = 20.0});
  ASSERT_GT(line.size(), 20U);
  const auto off = [&](Point p) {
    return std::sin(angle) * (p.x - 480.0) - std::cos(angle) * (p.y - 510.0);
  };
  EXPECT_LT(largest_off(line, off), 1e-9);
  const auto [low, high] = std::minmax(line.front().at.y, line.back().at.y);
  EXPECT_LT(low, 1.0);
  EXPECT_GT(high, 999.0);
  for (const StressPoint& point : line) EXPECT_NEAR(point.size, 0.3, 1e-12);
}

TEST(StressLines, CloseRoundACircle) {
  const StressLine line = trace(hoop_compression, {300.0, 0.0}, {.step = 10.0});
  EXPECT_NEAR(length_of(line), 2.0 * std::numbers::pi * 300.0, 10.0);
  EXPECT_LT(largest_off(line, [](Point p) { return std::hypot(p.x, p.y) - 300.0; }), 1e-3);
}

TEST(StressLines, FollowCirclesWithAnErrorThatFallsWithOrderFour) {
  std::vector<double> errors;
  for (const double step : {24.0, 12.0, 6.0})
    errors.push_back(
        largest_off(trace(hoop_compression, {100.0, 0.0}, {.step = step, .longest = 400.0}),
                    [](Point p) { return std::hypot(p.x, p.y) - 100.0; }));
  EXPECT_GT(errors[2], 1e-12);  // or there is nothing to divide
  for (const std::size_t i : {1U, 2U}) EXPECT_GT(errors[i - 1] / errors[i], 14.0) << i;
}

TEST(StressLines, FollowHyperbolasWithAnErrorThatFallsWithOrderFour) {
  std::vector<double> errors;
  for (const double step : {24.0, 12.0, 6.0})
    errors.push_back(
        largest_off(trace(hyperbolic_compression, {100.0, 100.0}, {.step = step, .longest = 400.0}),
                    [](Point p) { return p.x * p.y - 1e4; }));
  EXPECT_GT(errors[2], 1e-9);
  for (const std::size_t i : {1U, 2U}) EXPECT_GT(errors[i - 1] / errors[i], 14.0) << i;
}

TEST(StressLines, OnAMeshFollowThePolarStressOfItsNodes) {
  // A quarter ring's worth of hoop stress far from the origin; bilinear in elements of 25 mm, so
  // that directions are off by about (25 / 500)^2 / 8.
  const mesh::QuadMesh mesh = squares(40, 40, 25.0);
  const auto values =
      at_nodes(mesh, [](Point p) { return p.x + p.y > 0.0 ? hoop_compression(p) : PlaneTensor{}; });
  const StressField field(mesh, values);
  const StressLine line = trace(as_function(field), {353.0, 353.0}, {.step = 10.0});
  const double radius = std::hypot(353.0, 353.0);
  EXPECT_LT(largest_off(line, [&](Point p) { return std::hypot(p.x, p.y) - radius; }), 0.3);
  EXPECT_GT(length_of(line), 0.99 * 0.5 * std::numbers::pi * radius);
}

TEST(StressLines, OfTensionRunAcrossThoseOfCompression) {
  const auto sheared = [](Point) -> std::optional<PlaneTensor> { return {{0.0, 0.0, 0.5}}; };
  const StressLine pulled =
      trace(sheared, {0.0, 0.0}, {.family = StressFamily::pulled, .longest = 100.0});
  const StressLine pressed =
      trace(sheared, {0.0, 0.0}, {.family = StressFamily::pressed, .longest = 100.0});
  EXPECT_LT(largest_off(pulled, [](Point p) { return p.x - p.y; }), 1e-9);
  EXPECT_LT(largest_off(pressed, [](Point p) { return p.x + p.y; }), 1e-9);
}

TEST(StressLines, StopWhereTheStressIsSmallOrAllDirectionsAreAlike) {
  const auto fading = [](Point p) -> std::optional<PlaneTensor> {
    return PlaneTensor{0.0, -p.y / 1000.0, 0.0};
  };
  for (const StressPoint& point : trace(fading, {0.0, 500.0}, {.least = 0.2, .longest = 600.0}))
    EXPECT_GE(point.at.y, 200.0);
  const auto all_round = [](Point) -> std::optional<PlaneTensor> { return {{-1.0, -1.0, 0.0}}; };
  EXPECT_TRUE(trace(all_round, {0.0, 0.0}, {}).empty());
  // Past y = 500 the level stress is the larger one: the line may not turn the corner.
  const auto turning = [](Point p) -> std::optional<PlaneTensor> {
    return PlaneTensor{-p.y / 500.0, -1.0, 0.0};
  };
  for (const StressPoint& point : trace(turning, {0.0, 300.0}, {.longest = 900.0}))
    EXPECT_LE(point.at.y, 500.0);
}

TEST(StressLines, NeverCrossAHole) {
  const Hole hole{{300.0, 700.0}, {400.0, 600.0}};
  const mesh::QuadMesh mesh = squares(20, 20, 50.0, {hole});
  for (const double angle : {0.0, 0.4, 1.2, 1.5707}) {
    const std::vector<PlaneTensor> values(mesh.nodes.size(), along(angle, -0.3));
    const StressField field(mesh, values);
    const auto lines = evenly_spaced_lines(
        as_function(field), seed_grid({{0.0, 1000.0}, {0.0, 1000.0}}, 40.0), {.step = 10.0}, 40.0);
    EXPECT_GT(lines.size(), 15U);
    for (const StressLine& line : some(lines))
      for (std::size_t i = 0; i + 1 < line.size(); ++i)
        for (const double part : {0.0, 0.25, 0.5, 0.75, 1.0}) {
          const Point& a = line[i].at;
          const Point& b = line[i + 1].at;
          const Point p{a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)};
          const bool in = p.x > hole.x.from + 1e-6 && p.x < hole.x.to - 1e-6 &&
                          p.y > hole.y.from + 1e-6 && p.y < hole.y.to - 1e-6;
          EXPECT_FALSE(in) << p.x << " " << p.y;
        }
  }
}

TEST(StressLines, KeepTheirSeparation) {
  const auto seeds = seed_grid({{-400.0, 400.0}, {-400.0, 400.0}}, 30.0);
  const auto within = [](const StressAt& stress) -> StressAt {
    return [stress](Point p) { return std::hypot(p.x, p.y) < 500.0 ? stress(p) : std::nullopt; };
  };
  for (const StressAt& stress : {within(hoop_compression), within(hyperbolic_compression)}) {
    const auto lines = evenly_spaced_lines(stress, seeds, {.step = 5.0}, 30.0);
    EXPECT_GT(lines.size(), 12U);
    double nearest = HUGE_VAL;
    for (std::size_t i = 0; i < lines.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        for (const StressPoint& a : lines[i])
          for (const StressPoint& b : lines[j])
            nearest = std::min(nearest, std::hypot(a.at.x - b.at.x, a.at.y - b.at.y));
    EXPECT_GE(nearest, nearest_part * 30.0);
  }
}

TEST(StressLines, FillAUniformFieldAtTheirSeparation) {
  const auto upright = [](Point p) -> std::optional<PlaneTensor> {
    if (p.x < 0.0 || p.x > 1000.0 || p.y < 0.0 || p.y > 500.0) return std::nullopt;
    return PlaneTensor{0.0, -1.0, 0.0};
  };
  const auto lines = evenly_spaced_lines(upright, seed_grid({{0.0, 1000.0}, {0.0, 500.0}}, 50.0),
                                         {.step = 10.0}, 50.0);
  EXPECT_EQ(lines.size(), 19U);  // none on the edges themselves
}

}  // namespace
}  // namespace deadshore::viz
