#include "solver/cracks/cracks.h"
#include "solver/cracks/damage_scale.h"
#include "solver/cracks/settlement_profile.h"
#include "tests/solver/grid_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <stdexcept>

namespace deadshore::solver {
namespace {

using mesh::Point;
using mesh::QuadMesh;

constexpr double length = 4000.0;
constexpr double height = 2000.0;

Job plain_job() {
  Job job = invented_wall();
  job.wall.openings.clear();
  job.wall.length = length;
  job.wall.top = {{0.0, height}, {length, height}};
  job.wall.cut = {500.0, 3500.0, 0.0};
  return job;
}

QuadMesh grid() {
  return testing::rectangle_mesh(40, 20, mesh::QuadOrder::four_node, length, height);
}

PanelFields moved(const QuadMesh& mesh, const std::function<Point(Point)>& move) {
  PanelFields fields;
  for (const Point& node : mesh.nodes) {
    const Point u = move(node);
    fields.displacement.push_back(u.x);
    fields.displacement.push_back(u.y);
  }
  return fields;
}

Damage damage_if(const std::function<Point(Point)>& move) {
  const QuadMesh mesh = grid();
  return damage_of(plain_job(), mesh, moved(mesh, move), {}, {});
}

/// 1 in the middle of the wall and 0 at its ends.
double parabola(double x) {
  const double s = 2.0 * x / length - 1.0;
  return 1.0 - s * s;
}

TEST(Damage, EvenSettlementAndTiltDoNone) {
  for (const double tilt : {0.0, 0.01}) {
    const Damage damage = damage_if([=](Point p) {
      return Point{-tilt * p.y, -20.0 + tilt * p.x};
    });
    EXPECT_EQ(damage.tensile_strain, 0.0);
    EXPECT_EQ(damage.by_strain, 0);
    EXPECT_EQ(damage.by_width, 0);
    EXPECT_EQ(damage.in_words.substr(0, 13), "0, negligible");
  }
}

TEST(Damage, SaggingParabolaBendsAsADeepBeam) {
  const Damage damage = damage_if([](Point p) { return Point{0.0, -2.0 * parabola(p.x)}; });
  EXPECT_NEAR(damage.deflection_ratio, 2.0 / length, 1e-12);
  const DeepBeam beam{length, height, plain_job().masonry.nu, Bending::sagging};
  EXPECT_NEAR(damage.tensile_strain, tensile_strain(beam, 2.0 / length, 0.0), 1e-12);
}

TEST(Damage, HoggingParabolaBendsAboutTheSoffit) {
  const Damage damage = damage_if([](Point p) { return Point{0.0, 2.0 * parabola(p.x)}; });
  EXPECT_NEAR(damage.deflection_ratio, 2.0 / length, 1e-12);
  const DeepBeam beam{length, height, plain_job().masonry.nu, Bending::hogging};
  EXPECT_NEAR(damage.tensile_strain, tensile_strain(beam, 2.0 / length, 0.0), 1e-12);
}

TEST(Damage, LevelStretchAddsToBendingAndPressureDoesNotTakeOff) {
  const auto with_level = [](double strain) {
    return damage_if([=](Point p) { return Point{strain * p.x, -2.0 * parabola(p.x)}; });
  };
  const double none = with_level(0.0).tensile_strain;
  EXPECT_NEAR(with_level(4e-4).tensile_strain,
              tensile_strain({length, height, 0.2, Bending::sagging}, 2.0 / length, 4e-4), 1e-12);
  EXPECT_GT(with_level(4e-4).tensile_strain, none + 2e-4);
  EXPECT_EQ(with_level(-4e-4).tensile_strain, none);
}

TEST(Damage, CountsFromTheFirstStageOn) {
  const QuadMesh mesh = grid();
  const PanelFields fields = moved(mesh, [](Point p) { return Point{0.0, -5.0 * parabola(p.x)}; });
  EXPECT_EQ(damage_of(plain_job(), mesh, fields, fields.displacement, {}).tensile_strain, 0.0);
  EXPECT_THROW((void)damage_of(plain_job(), mesh, fields, {0.0, 0.0}, {}), std::invalid_argument);
}

TEST(Damage, FollowsTheSoffitWhereTheMeshMovedIt) {
  QuadMesh mesh = grid();
  mesh.chains.push_back(
      {{mesh::ChainKind::soffit},
       {mesh.sides_of(testing::bottom_edge).begin(), mesh.sides_of(testing::bottom_edge).end()}});
  Job job = plain_job();
  job.wall.cut.soffit = -5.0;
  const PanelFields fields = moved(mesh, [](Point p) { return Point{0.0, -2.0 * parabola(p.x)}; });
  EXPECT_NEAR(damage_of(job, mesh, fields, {}, {}).deflection_ratio, 2.0 / length, 1e-12);
}

TEST(Damage, LooseMasonryDoesNotCount) {
  const QuadMesh mesh = grid();
  // A patch on the soffit drops by 50 mm; its neighbours' nodes stay.
  PanelFields fields = moved(mesh, [](Point p) {
    const bool inside = p.y < 1.0 && p.x > 1550.0 && p.x < 2450.0;
    return Point{0.0, inside ? -50.0 : 0.0};
  });
  EXPECT_GT(damage_of(plain_job(), mesh, fields, {}, {}).by_strain, 3);
  for (std::vector<char>* marks : {&fields.quad_loose, &fields.quad_out}) {
    marks->assign(static_cast<std::size_t>(mesh.quad_count()), 0);
    for (std::size_t column = 15; column < 25; ++column) (*marks)[column] = 1;
    EXPECT_EQ(damage_of(plain_job(), mesh, fields, {}, {}).tensile_strain, 0.0);
    marks->clear();
  }
}

TEST(Damage, WidestCrackCanBeWorseThanTheStrain) {
  const QuadMesh mesh = grid();
  const PanelFields still = moved(mesh, [](Point) { return Point{}; });
  std::vector<Crack> cracks(2);
  cracks[0].width = 6.0;
  cracks[1].width = 0.5;
  const Damage damage = damage_of(plain_job(), mesh, still, {}, cracks);
  EXPECT_EQ(damage.by_strain, 0);
  EXPECT_EQ(damage.by_width, 3);
  EXPECT_EQ(damage.widest_crack, 6.0);
  EXPECT_EQ(damage.in_words.substr(0, 11), "3, moderate");
}

// A wave 1 - cos: it hogs over the outer quarters and sags over the middle half, by its amplitude
// over half its length.
TEST(SettlementProfile, IsCutAtItsInflections) {
  std::vector<SettledPoint> profile;
  for (int i = 0; i <= 720; ++i) {
    const double x = 10.0 * i;
    profile.push_back({x, 1.0 - std::cos(2.0 * std::numbers::pi * x / 7200.0)});
  }
  const auto stretches = bent_stretches(profile);
  ASSERT_EQ(stretches.size(), 3U);
  EXPECT_EQ(stretches[0].bending, Bending::hogging);
  EXPECT_EQ(stretches[1].bending, Bending::sagging);
  EXPECT_EQ(stretches[2].bending, Bending::hogging);
  EXPECT_NEAR(stretches[1].from, 1800.0, 225.0) << "to a station";
  EXPECT_NEAR(stretches[1].to, 5400.0, 225.0);
  EXPECT_NEAR(stretches[1].deflection, 1.0, 0.2);
  EXPECT_NEAR(stretches[0].to, stretches[1].from, 1e-9);
}

TEST(SettlementProfile, WavesShorterThanTwoBricksAreBedding) {
  std::vector<SettledPoint> profile;
  for (int i = 0; i <= 80; ++i) {
    const double x = 50.0 * i;
    profile.push_back(
        {x, 10.0 * parabola(x) + 0.01 * std::sin(2.0 * std::numbers::pi * x / 300.0)});
  }
  EXPECT_EQ(bent_stretches(profile).size(), 1U);
}

}  // namespace
}  // namespace deadshore::solver
