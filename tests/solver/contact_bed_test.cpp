#include "solver/panel/contact_bed.h"

#include "solver/job/error.h"
#include "tests/solver/grid_mesh.h"

#include <gtest/gtest.h>

#include <random>

namespace deadshore::solver {
namespace {

using mesh::QuadOrder;

constexpr double stiffness = 20000.0;

/// Four elements of 100 mm; the bearing from 170 to 330 mm covers parts of two and all of none.
class NeedleBedTest : public ::testing::TestWithParam<QuadOrder> {
 protected:
  mesh::QuadMesh mesh_ = testing::rectangle_mesh(4, 2, GetParam(), 400.0, 200.0);

  [[nodiscard]] ContactBed bed(double slack = 0.0, double preload = 0.0) const {
    return needle_bed(mesh_, mesh_.sides_of(testing::bottom_edge),
                      Needle{"N1", 250.0, 160.0, stiffness, slack, preload}, NeedleId{});
  }

  [[nodiscard]] static Eigen::VectorXd force_of(const ContactBed& bed, const Eigen::VectorXd& u) {
    Eigen::VectorXd force = Eigen::VectorXd::Zero(u.size());
    for (const ContactPoint& point : bed.points) point.form.push(point.force(u), force);
    return force;
  }

  [[nodiscard]] Eigen::VectorXd still() const {
    return Eigen::VectorXd::Zero(2 * mesh_.node_count());
  }

  /// Every node sinks by `amount` + `tilt` (x - 250 mm).
  [[nodiscard]] Eigen::VectorXd sunk(double amount, double tilt = 0.0) const {
    Eigen::VectorXd u = still();
    for (int node = 0; node < mesh_.node_count(); ++node) {
      u(2 * node + 1) = -amount - tilt * (mesh_.nodes[static_cast<std::size_t>(node)].x - 250.0);
    }
    return u;
  }
};
INSTANTIATE_TEST_SUITE_P(Orders, NeedleBedTest,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

TEST_P(NeedleBedTest, PushesUpByStiffnessTimesSettlement) {
  const ContactState state = state_of(bed(), sunk(1.5));
  EXPECT_NEAR(state.force, 1.5 * stiffness, 1e-8);
  EXPECT_NEAR(state.approach, 1.5, 1e-13);
  EXPECT_NEAR(state.contact, 1.0, 1e-13);
}

TEST_P(NeedleBedTest, DoesNotPullDown) {
  const ContactState state = state_of(bed(), sunk(-0.1));
  EXPECT_EQ(state.force, 0.0);
  EXPECT_EQ(state.contact, 0.0);
  EXPECT_EQ(energy_of(bed(), sunk(-0.1)), 0.0);
}

TEST_P(NeedleBedTest, SlackMustCloseFirst) {
  const ContactBed slack = bed(2.0);
  EXPECT_EQ(state_of(slack, sunk(1.9)).force, 0.0);
  EXPECT_NEAR(state_of(slack, sunk(2.5)).force, 0.5 * stiffness, 1e-8);
}

TEST_P(NeedleBedTest, PreloadPushesOnAWallThatDoesNotMove) {
  EXPECT_NEAR(state_of(bed(0.0, 5000.0), still()).force, 5000.0, 1e-8);
}

TEST_P(NeedleBedTest, ForceOnNodesActsAtTheMiddleOfTheBearing) {
  const Eigen::VectorXd force = force_of(bed(), sunk(1.0));
  double sum = 0.0;
  double moment = 0.0;
  for (int node = 0; node < mesh_.node_count(); ++node) {
    EXPECT_EQ(force(2 * node), 0.0);
    sum += force(2 * node + 1);
    moment += force(2 * node + 1) * (mesh_.nodes[static_cast<std::size_t>(node)].x - 250.0);
  }
  EXPECT_NEAR(sum, -stiffness, 1e-8);  // resists sinking: an upward push enters as negative
  EXPECT_NEAR(moment, 0.0, 1e-6);
}

// Tilted about its middle by `tilt` a bed of width b resists with the couple K b^2 / 12 * tilt.
TEST_P(NeedleBedTest, ResistsTiltLikeAnEvenBed) {
  const Eigen::VectorXd force = force_of(bed(), sunk(10.0, 1e-3));
  double moment = 0.0;
  for (int node = 0; node < mesh_.node_count(); ++node) {
    moment -= force(2 * node + 1) * (mesh_.nodes[static_cast<std::size_t>(node)].x - 250.0);
  }
  EXPECT_NEAR(moment, stiffness * 160.0 * 160.0 / 12.0 * 1e-3, 1e-6);
}

TEST_P(NeedleBedTest, ForceIsTheDerivativeOfTheEnergyAndTangentOfTheForce) {
  const ContactBed needle = bed(0.01);
  const EquationMap equations(mesh_, {});
  const StiffnessPattern pattern(mesh_, equations);
  std::mt19937 random(5);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  const Eigen::VectorXd u =
      Eigen::VectorXd::NullaryExpr(2 * mesh_.node_count(), [&] { return uniform(random); });
  const double contact = state_of(needle, u).contact;
  ASSERT_GT(contact, 0.0);
  ASSERT_LT(contact, 1.0);

  const Eigen::VectorXd force = force_of(needle, u);
  SparseStiffness lower = pattern.empty();
  for (const ContactPoint& point : needle.points) {
    if (point.closure(u) < 0.0) continue;
    point.form.over(equations).add_stiffness(point.stiffness * point.length, pattern, lower);
  }
  const Eigen::MatrixXd tangent = Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
  const double step = 1e-6;
  for (int node = 0; node < mesh_.node_count(); ++node) {
    for (int c = 0; c < 2; ++c) {
      Eigen::VectorXd ahead = u;
      Eigen::VectorXd behind = u;
      ahead(2 * node + c) += step;
      behind(2 * node + c) -= step;
      ASSERT_EQ(state_of(needle, ahead).contact,
                state_of(needle, behind).contact);  // no kink between
      EXPECT_NEAR(force(2 * node + c),
                  (energy_of(needle, ahead) - energy_of(needle, behind)) / (2.0 * step),
                  1e-8 * stiffness);
      const Eigen::VectorXd change =
          (force_of(needle, ahead) - force_of(needle, behind)) / (2.0 * step);
      const int column = equations.equation(node, c);
      for (int row_node = 0; row_node < mesh_.node_count(); ++row_node) {
        EXPECT_NEAR(tangent(equations.equation(row_node, 1), column), change(2 * row_node + 1),
                    1e-8 * stiffness);
      }
    }
  }
}

TEST_P(NeedleBedTest, RefusesABearingThatRunsOffTheSoffit) {
  const Needle needle{"N9", 350.0, 160.0, stiffness, 0.0, 0.0};
  try {
    (void)needle_bed(mesh_, mesh_.sides_of(testing::bottom_edge), needle, NeedleId{});
    FAIL() << "accepted";
  } catch (const SolveError& error) {
    EXPECT_STREQ(error.what(), "needle N9 has masonry over 130 mm of its 160 mm bearing");
  }
}

}  // namespace
}  // namespace deadshore::solver
