#include "solver/panel/rigid_motion.h"

#include "solver/job/error.h"
#include "tests/solver/grid_mesh.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <initializer_list>

namespace deadshore::solver {
namespace {

using mesh::Point;
using mesh::QuadMesh;
using mesh::QuadOrder;
using ::testing::HasSubstr;
using ::testing::Optional;

constexpr double length = 2000.0;
constexpr double height = 900.0;

/// Two meshes as one; nodes at the same place become one node.
QuadMesh joined(QuadMesh mesh, const QuadMesh& other) {
  std::vector<int> number;
  for (const Point& p : other.nodes) {
    int node = 0;
    while (node < mesh.node_count()) {
      const Point& q = mesh.nodes[static_cast<std::size_t>(node)];
      if (std::hypot(p.x - q.x, p.y - q.y) < 1e-6) break;
      ++node;
    }
    if (node == mesh.node_count()) mesh.nodes.push_back(p);
    number.push_back(node);
  }
  for (const int node : other.connectivity) {
    mesh.connectivity.push_back(number[static_cast<std::size_t>(node)]);
  }
  mesh.region_of_quad.resize(mesh.region_of_quad.size() + other.region_of_quad.size(), 0);
  return mesh;
}

QuadMesh wall_from(Point corner) {
  return testing::grid_mesh(4, 3, QuadOrder::four_node, [&](double s, double t) {
    return Point{corner.x + s * length, corner.y + t * height};
  });
}

std::vector<Support> supports_along(const QuadMesh& mesh, mesh::Chain chain,
                                    std::initializer_list<int> components) {
  std::vector<Support> supports;
  for (const int node : testing::nodes_on(mesh, chain)) {
    for (const int component : components) supports.push_back({node, component, 0.0});
  }
  return supports;
}

/// A needle of 150 mm under the bottom of a mesh.
ContactBed needle_at(const QuadMesh& mesh, double x, double slack) {
  return needle_bed(mesh, mesh.sides_of(testing::bottom_edge),
                    Needle{"N", x, 150.0, 20000.0, slack, 0.0}, NeedleId{});
}

std::optional<std::string> unheld(const QuadMesh& mesh, const std::vector<Support>& supports,
                                  std::span<const ContactBed> beds = {}) {
  return RigidMotions(mesh, supports, {}).unheld(points_of(beds));
}

TEST(RigidMotions, NameWhatNothingHolds) {
  const QuadMesh wall = wall_from({0.0, 0.0});
  EXPECT_EQ(unheld(wall, {}),
            "the wall can move sideways, move up and down or turn: nothing holds it");
  EXPECT_EQ(unheld(wall, supports_along(wall, testing::bottom_edge, {1})),
            "the wall can move sideways: nothing holds it");
  EXPECT_EQ(unheld(wall, supports_along(wall, testing::left_edge, {0})),
            "the wall can move up and down: nothing holds it");
  const int corner = testing::node_at(wall, {0.0, 0.0});
  EXPECT_EQ(unheld(wall, {{corner, 0, 0.0}, {corner, 1, 0.0}}),
            "the wall can turn: nothing holds it");
  EXPECT_EQ(unheld(wall, supports_along(wall, testing::bottom_edge, {0, 1})), std::nullopt);
}

// Three bars hold a body in the plane unless they are parallel or meet in one point.
TEST(RigidMotions, ThreeSupportsHoldUnlessTheyMeetInAPoint) {
  const QuadMesh wall = wall_from({0.0, 0.0});
  const int left = testing::node_at(wall, {0.0, 0.0});
  const int right = testing::node_at(wall, {length, 0.0});
  const int above = testing::node_at(wall, {0.0, height});
  EXPECT_EQ(unheld(wall, {{left, 0, 0.0}, {left, 1, 0.0}, {right, 1, 0.0}}), std::nullopt);
  EXPECT_NE(unheld(wall, {{left, 0, 0.0}, {left, 1, 0.0}, {above, 1, 0.0}}), std::nullopt);
  EXPECT_NE(unheld(wall, {{left, 0, 0.0}, {left, 1, 0.0}, {right, 0, 0.0}}), std::nullopt);
}

TEST(RigidMotions, NeedlesHoldUpAndAgainstTurning) {
  const QuadMesh wall = wall_from({0.0, 0.0});
  const std::vector<Support> held_sideways = {{testing::node_at(wall, {0.0, 0.0}), 0, 0.0}};
  const ContactBed bed = needle_at(wall, 700.0, 0.0);
  EXPECT_EQ(unheld(wall, held_sideways, {&bed, 1}), std::nullopt);
  ContactBed point = bed;
  point.points.resize(1);
  EXPECT_EQ(unheld(wall, held_sideways, {&point, 1}), "the wall can turn: nothing holds it");
}

TEST(RigidMotions, EveryPartMustBeHeld) {
  const QuadMesh left = wall_from({0.0, 0.0});
  const QuadMesh apart = joined(left, wall_from({length + 100.0, 0.0}));
  EXPECT_THAT(unheld(apart, supports_along(left, testing::bottom_edge, {0, 1})),
              Optional(HasSubstr("the masonry between x = 2.10 m and 4.10 m can move sideways")));
  const QuadMesh together = joined(left, wall_from({length, 0.0}));
  EXPECT_EQ(unheld(together, supports_along(left, testing::bottom_edge, {0, 1})), std::nullopt);
}

TEST(RigidMotions, ABeamTurnsOnOneBearingAndFallsWithNone) {
  const QuadMesh wall = wall_from({0.0, 0.0});
  const BeamLine beam = make_beam_line(wall.node_count(), 0.0, length, 250.0, 2e12, 1e8, 1.0);
  const RigidMotions motions(wall, supports_along(wall, testing::bottom_edge, {0, 1}), beam);
  EXPECT_EQ(motions.unheld({}), "the beam can move up and down or turn: nothing holds it");
  ContactPoint left;
  add_rise(beam, 100.0, left.form, -1.0);
  const std::vector<const ContactPoint*> one = {&left};
  EXPECT_EQ(motions.unheld(one), "the beam can turn: nothing holds it");
  ContactPoint right;
  add_rise(beam, 1900.0, right.form, -1.0);
  const std::vector<const ContactPoint*> both = {&left, &right};
  EXPECT_EQ(motions.unheld(both), std::nullopt);
}

/// The wall on two needles, held sideways at one corner: nothing but contact holds it up.
struct WallOnNeedles {
  explicit WallOnNeedles(double slack)
      : mesh(wall_from({0.0, 0.0})),
        model(mesh, std::vector<Support>{{testing::node_at(mesh, {0.0, 0.0}), 0, 0.0}}) {
    loading.materials = {{1500.0, 0.2, 19e-6, 215.0, {}}};
    loading.load = model.weight(loading.materials);
    loading.beds = {needle_at(mesh, 400.0, slack), needle_at(mesh, 1600.0, slack)};
  }
  [[nodiscard]] double weight() const { return length * height * 215.0 * 19e-6; }

  QuadMesh mesh;
  PanelModel model;
  PanelLoading loading;
};

TEST(Newton, ContactThatOnlyJustTouchesHoldsTheWall) {
  WallOnNeedles wall(0.0);
  Eigen::VectorXd u = wall.model.start();
  const NewtonReport report = minimise(wall.model, wall.loading, u);
  EXPECT_TRUE(report.converged);
  EXPECT_NEAR(state_of(wall.loading.beds[0], u).force, 0.5 * wall.weight(), 1e-6 * wall.weight());
}

TEST(Newton, FindsTheNeedlesThatTheWallComesDownOn) {
  WallOnNeedles wall(3.0);
  Eigen::VectorXd u = wall.model.start();
  const NewtonReport report = minimise(wall.model, wall.loading, u);
  EXPECT_TRUE(report.converged);
  EXPECT_NEAR(state_of(wall.loading.beds[1], u).force, 0.5 * wall.weight(), 1e-6 * wall.weight());
  EXPECT_LT(u(2 * testing::node_at(wall.mesh, {length, height}) + 1), -3.0);
}

// Held as one body, but folding at the node that its two halves share: only pivots tell.
TEST(Newton, RefusesAWallThatFoldsAtANode) {
  const QuadMesh below = wall_from({0.0, 0.0});
  const QuadMesh mesh = joined(below, wall_from({length, height}));
  const std::vector<Support> supports = supports_along(below, testing::bottom_edge, {0, 1});
  ASSERT_EQ(unheld(mesh, supports), std::nullopt);
  PanelModel model(mesh, supports);
  PanelLoading loading{{{1500.0, 0.2, 19e-6, 215.0, {}}}, {}, {}};
  loading.load = model.weight(loading.materials);
  Eigen::VectorXd u = model.start();
  EXPECT_THROW((void)minimise(model, loading, u), SolveError);
}

// A tower of fifty times its width hangs on residual stiffness alone: the softest that could stand.
TEST(Newton, PivotsOfTheSoftestWallAreFarFromSingular) {
  const QuadMesh mesh = testing::distorted_mesh(2, 100, QuadOrder::four_node, 100.0, 5000.0, 3);
  PanelModel model(mesh, supports_along(mesh, testing::bottom_edge, {0, 1}));
  PanelLoading loading{{{1500.0, 0.2, 19e-6, 215.0, 0.0}}, {}, {}};
  Eigen::VectorXd open = Eigen::VectorXd::Zero(2 * mesh.node_count());
  for (int node = 0; node < mesh.node_count(); ++node) {
    const Point& p = mesh.nodes[static_cast<std::size_t>(node)];
    open.segment<2>(2 * node) = 1e-3 * Eigen::Vector2d(p.x, p.y);
  }
  SparseStiffness stiffness = model.empty_stiffness();
  (void)model.resistance(loading, open, &stiffness);
  EXPECT_TRUE(model.factor().factorize(stiffness));
  EXPECT_GT(model.factor().least_pivot(), 1e3 * singular_pivot);
}

}  // namespace
}  // namespace deadshore::solver
