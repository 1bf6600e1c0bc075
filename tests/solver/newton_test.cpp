#include "solver/panel/newton.h"

#include "solver/job/error.h"
#include "solver/panel/wall_panel.h"
#include "tests/solver/grid_mesh.h"
#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace deadshore::solver {
namespace {

using mesh::QuadOrder;
using testing::distorted_mesh;

/// A small distorted wall on one needle between two short piers, pushed sideways and bearing down
/// on a slack needle: cracks, crushes nothing, opens part of the contact.
class CrackedWall : public ::testing::TestWithParam<QuadOrder> {
 protected:
  CrackedWall()
      : mesh_(distorted_mesh(8, 4, GetParam(), 1600.0, 600.0, 17)), model_(mesh_, supports()) {
    loading_.materials = {{1500.0, 0.2, 19e-6, 215.0, 0.05}};
    loading_.load = model_.weight(loading_.materials);
    testing::add_traction(
        mesh_, testing::top_edge, 215.0,
        [](mesh::Point, const Eigen::Vector2d&) { return Eigen::Vector2d(0.005, -0.08); },
        loading_.load);
    loading_.beds.push_back(needle_bed(mesh_, mesh_.sides_of(testing::bottom_edge),
                                       Needle{"N1", 750.0, 150.0, 20000.0, 0.01, 0.0}, NeedleId{}));
  }

  /// The outer quarter of the bottom is fixed at each end.
  [[nodiscard]] std::vector<Support> supports() const {
    std::vector<Support> fixed;
    for (const int node : testing::nodes_on(mesh_, testing::bottom_edge)) {
      const double x = mesh_.nodes[static_cast<std::size_t>(node)].x;
      if (x > 401.0 && x < 1199.0) continue;
      fixed.push_back({node, 0, 0.0});
      fixed.push_back({node, 1, 0.0});
    }
    return fixed;
  }

  [[nodiscard]] Eigen::VectorXd random_displacement(unsigned seed, double size) const {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> uniform(-size, size);
    const Eigen::VectorXd free =
        Eigen::VectorXd::NullaryExpr(model_.equations().count(), [&] { return uniform(random); });
    return model_.start() + model_.spread_out(free);
  }

  mesh::QuadMesh mesh_;
  PanelModel model_;
  PanelLoading loading_;
};
INSTANTIATE_TEST_SUITE_P(Orders, CrackedWall,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

/// Whether the pattern of cracks and contacts is the same at both displacements.
bool same_pattern(const PanelModel& model, const PanelLoading& loading, const Eigen::VectorXd& a,
                  const Eigen::VectorXd& b) {
  for (int quad = 0; quad < model.mesh().quad_count(); ++quad) {
    for (int point = 0; point < 4; ++point) {
      if (crack_state(loading.materials[0], model.strain(quad, point, a)) !=
          crack_state(loading.materials[0], model.strain(quad, point, b))) {
        return false;
      }
    }
  }
  return state_of(loading.beds[0], a).contact == state_of(loading.beds[0], b).contact;
}

TEST_P(CrackedWall, ResistanceIsTheDerivativeOfTheEnergyAndTangentOfTheResistance) {
  const Eigen::VectorXd u = random_displacement(4, 0.05);
  SparseStiffness lower = model_.empty_stiffness();
  const Eigen::VectorXd resistance = model_.resistance(loading_, u, &lower);
  const double step = 1e-6;
  int tried = 0;
  for (unsigned seed = 100; seed < 140; ++seed) {
    const Eigen::VectorXd along = random_displacement(seed, 1.0);
    const Eigen::VectorXd ahead = u + step * along;
    const Eigen::VectorXd behind = u - step * along;
    if (!same_pattern(model_, loading_, ahead, behind)) continue;
    ++tried;
    const double slope =
        (model_.energy(loading_, ahead) - model_.energy(loading_, behind)) / (2.0 * step);
    const Eigen::VectorXd out_of_balance = resistance - loading_.load;
    EXPECT_NEAR(slope, out_of_balance.dot(along), 1e-7 * out_of_balance.norm() * along.norm());

    const Eigen::VectorXd change = model_.gather_free(
        (model_.resistance(loading_, ahead) - model_.resistance(loading_, behind)) / (2.0 * step));
    const Eigen::VectorXd predicted =
        lower.selfadjointView<Eigen::Lower>() * model_.gather_free(along);
    EXPECT_LT((change - predicted).norm(), 1e-6 * predicted.norm());
  }
  EXPECT_GT(tried, 10);
}

TEST_P(CrackedWall, ComesToTheSamePointFromAnywhere) {
  const Eigen::VectorXd expected = testing::solve(model_, loading_);
  ASSERT_GT(state_of(loading_.beds[0], expected).contact, 0.0);
  ASSERT_FALSE(same_pattern(model_, loading_, expected, model_.start())) << "nothing cracks";
  for (const double size : {0.01, 1.0, 100.0}) {
    for (const unsigned seed : {1U, 2U}) {
      Eigen::VectorXd u = random_displacement(seed, size);
      const NewtonReport report = minimise(model_, loading_, u);
      ASSERT_TRUE(report.converged) << "from +-" << size << " mm: " << report.residual;
      EXPECT_LT((u - expected).norm(), 1e-5 * expected.norm());
    }
  }
}

TEST_P(CrackedWall, EndsAtTheLeastEnergy) {
  const Eigen::VectorXd u = testing::solve(model_, loading_);
  const double least = model_.energy(loading_, u);
  for (unsigned seed = 1; seed < 20; ++seed) {
    EXPECT_GT(model_.energy(loading_, u + random_displacement(seed, 1e-3)), least);
  }
}

// Newton's method: near the answer, where no crack or contact changes state any more, a step leaves
// an error that goes with the square of the error before it.
TEST_P(CrackedWall, ErrorIsSquaredByAStepNearTheAnswer) {
  loading_.load *= 1.5;  // so that much of it is cracked in one direction
  NewtonOptions one_step;
  one_step.most_iterations = 1;
  one_step.tolerance = 0.0;
  one_step.round_off = 0.0;
  const auto step = [&](Eigen::VectorXd u) {
    EXPECT_EQ(minimise(model_, loading_, u, one_step).iterations, 1);
    return u;
  };
  const Eigen::VectorXd answer = step(testing::solve(model_, loading_));
  int tried = 0;
  for (unsigned seed = 1; seed <= 5; ++seed) {
    const Eigen::VectorXd away = random_displacement(seed, 1.0);
    const auto error_after = [&](double size) {
      EXPECT_TRUE(same_pattern(model_, loading_, answer, answer + size * away));
      return (step(answer + size * away) - answer).norm();
    };
    const double far = error_after(1e-5);
    const double near = error_after(2e-6);
    ASSERT_GT(near, 1e-13 * answer.norm()) << "nothing but round-off";
    EXPECT_NEAR(std::log(far / near) / std::log(5.0), 2.0, 0.1);
    ++tried;
  }
  EXPECT_EQ(tried, 5);
}

TEST_P(CrackedWall, ReportsEveryStep) {
  Eigen::VectorXd u = model_.start();
  int calls = 0;
  double last = 0.0;
  const NewtonReport report = minimise(model_, loading_, u, {}, [&](int, double residual) {
    ++calls;
    last = residual;
  });
  EXPECT_EQ(calls, report.iterations + 1);
  EXPECT_EQ(last, report.residual);
  EXPECT_LE(report.residual, 1e-10);
}

TEST_P(CrackedWall, SaysWhenIterationsRunOut) {
  Eigen::VectorXd u = model_.start();
  NewtonOptions options;
  options.most_iterations = 2;
  const NewtonReport report = minimise(model_, loading_, u, options);
  EXPECT_FALSE(report.converged);
  EXPECT_EQ(report.iterations, 2);
}

TEST(Newton, TakesOneStepWhereEverythingIsLinear) {
  const mesh::QuadMesh mesh = distorted_mesh(6, 6, QuadOrder::four_node, 600.0, 600.0, 3);
  PanelModel model(mesh, testing::supports_at(mesh, testing::nodes_on(mesh, testing::bottom_edge),
                                              [](mesh::Point) { return Eigen::Vector2d::Zero(); }));
  PanelLoading loading{{{1500.0, 0.2, 19e-6, 215.0, {}}}, {}, {}};
  loading.load = model.weight(loading.materials);
  Eigen::VectorXd u = model.start();
  const NewtonReport report = minimise(model, loading, u);
  EXPECT_TRUE(report.converged);
  EXPECT_EQ(report.iterations, 1);
}

TEST(Newton, RefusesAWallThatNothingHolds) {
  const mesh::QuadMesh mesh = distorted_mesh(3, 3, QuadOrder::four_node, 300.0, 300.0, 3);
  PanelModel model(mesh, {});
  PanelLoading loading{{{1500.0, 0.2, 19e-6, 215.0, {}}}, {}, {}};
  loading.load = model.weight(loading.materials);
  Eigen::VectorXd u = model.start();
  EXPECT_THROW((void)minimise(model, loading, u), SolveError);
}

/// The invented wall on its mesh, with its displacement as if it could not crack.
struct MeshedWall {
  explicit MeshedWall(Job of)
      : job(std::move(of)), mesh(mesh_of(job)), model(mesh.quads, supports_of(job, mesh.quads)) {
    uncracked = model.start();
    EXPECT_TRUE(minimise(model, loading(MasonryModel::uncracked), uncracked).converged);
  }
  [[nodiscard]] PanelLoading loading(MasonryModel masonry = MasonryModel::cracked) const {
    return loading_of(job, model, masonry);
  }

  Job job;
  mesh::WallMesh mesh;
  PanelModel model;
  Eigen::VectorXd uncracked;
};

Job cracking_wall(double tensile_strength, double mesh_size, WallEnd ends) {
  Job job = invented_wall();
  job.masonry.tensile_strength = tensile_strength;
  job.analysis.mesh_size = mesh_size;
  job.left_end = job.right_end = ends;
  return job;
}

TEST(Newton, FactorisationsDoNotGrowWithTheMeshOrAsTheTensileStrengthGoes) {
  const auto solve = [](double tensile_strength, double size) {
    const WallEnd ends = tensile_strength > 0.0 ? WallEnd::free : WallEnd::held;
    MeshedWall wall(cracking_wall(tensile_strength, size, ends));
    Eigen::VectorXd u = wall.uncracked;
    const NewtonReport report = minimise(wall.model, wall.loading(), u);
    EXPECT_TRUE(report.converged);
    EXPECT_LE(report.iterations, 30) << size << " mm, " << tensile_strength << " N/mm2";
  };
  for (const double size : {200.0, 100.0, 50.0}) solve(0.0, size);
  for (const double size : {200.0, 100.0}) solve(0.1, size);
}

// The energy is strictly convex: from whatever side, the pushes must come out the same.
TEST(Newton, AnswerDoesNotDependOnTheWayThere) {
  MeshedWall wall(cracking_wall(0.0, 200.0, WallEnd::held));
  const PanelLoading loading = wall.loading();
  Eigen::VectorXd u = wall.uncracked;
  ASSERT_TRUE(minimise(wall.model, loading, u).converged);
  Eigen::VectorXd v = 1.02 * u;
  ASSERT_TRUE(minimise(wall.model, loading, v).converged);
  for (const ContactBed& bed : loading.beds) {
    EXPECT_NEAR(state_of(bed, v).force, state_of(bed, u).force, 1e-8 * state_of(bed, u).force);
  }
}

TEST(Newton, SmallChangesOfLoadCostFewFactorisations) {
  MeshedWall wall(cracking_wall(0.1, 100.0, WallEnd::free));
  const PanelLoading loading = wall.loading();
  Eigen::VectorXd u = wall.uncracked;
  const NewtonReport cold = minimise(wall.model, loading, u);
  ASSERT_TRUE(cold.converged);
  EXPECT_LE(minimise(wall.model, loading, u).iterations, 1) << "from the answer";
  wall.job.line_loads.front().dead *= 1.1;
  const NewtonReport warm = minimise(wall.model, wall.loading(), u);
  EXPECT_TRUE(warm.converged);
  EXPECT_LE(warm.iterations, 8);
}

// With no tension and free ends only the residual stiffness holds the spreading wall together: it
// moves as one over the residual.
TEST(Newton, FindsTheAnswerThatOnlyTheResidualHolds) {
  MeshedWall wall(cracking_wall(0.0, 200.0, WallEnd::free));
  PanelLoading loading = wall.loading();
  Eigen::VectorXd u = wall.uncracked;
  EXPECT_TRUE(minimise(wall.model, loading, u).converged);
  loading.materials[0].residual *= 0.1;
  EXPECT_TRUE(minimise(wall.model, loading, u).converged);
  const double movement = u.lpNorm<Eigen::Infinity>();
  loading.materials[0].residual *= 0.1;
  EXPECT_TRUE(minimise(wall.model, loading, u).converged);
  EXPECT_GT(u.lpNorm<Eigen::Infinity>(), 5.0 * movement);
}

}  // namespace
}  // namespace deadshore::solver
