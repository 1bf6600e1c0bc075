// Thrust of a flat arch: a strip without tension of span L and depth d under a load w per length
// pushes on its abutments with H = w L^2 / (8 f), f the rise of its line of thrust (statics of the
// three-pinned arch; for flat arches Heyman, The Stone Skeleton (1995), from memory). The thrust at
// the abutment is brought in at a known height y, and the least thrust is that of the line which
// rises to the top at midspan: f = d - y.
//
// Elements know stress at their Gauss points only: with n of them through the depth, the line can
// rise no nearer to the top than the last points, (1 - 1/sqrt(3)) / (2 n) of the depth. The block
// that the thrust needs, 2% of the depth, is smaller than the share of these points. That the even
// push fans out to the last points costs something too: measured, 6% with 2 elements through the
// depth, 0.7% with 4, 0.06% with 8. Tension of 1e-5 of the strength, the distance of the points
// from midspan and the gap of the program come to 0.1% each. So 1% is tolerated, from 4 elements.

#include "solver/limit/limit_program.h"
#include "tests/published/comparison.h"
#include "tests/solver/grid_mesh.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source statics{Field::limit_analysis, Certainty::derived,
                         "Statics of the three-pinned arch; Heyman 1995"};

constexpr double L = 3000.0;
constexpr double d = 300.0;
constexpr double w = 8e-4;  // N/mm on a strip 1 mm thick; its strength is 1 N/mm2

constexpr double thrust_for(double rise) {
  return w * L * L / (8.0 * rise);
}

/// Least thrust on half the strip, midspan on its right. `slant` times a push that grows downwards
/// is added to an even push on the end, so that the thrust comes in at d/2 - slant d/6.
double least_thrust(double slant, int through) {
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(24, through, mesh::QuadOrder::eight_node, 0.5 * L, d);
  std::vector<Support> supports;
  for (const int node : testing::nodes_on(quads, testing::left_edge))
    supports.push_back({node, 1, 0.0});
  for (const int node : testing::nodes_on(quads, testing::right_edge))
    supports.push_back({node, 0, 0.0});
  const std::vector<double> thickness(static_cast<std::size_t>(quads.quad_count()), 1.0);
  const Equilibrium equilibrium(quads, supports, thickness);

  Eigen::VectorXd weight = Eigen::VectorXd::Zero(2 * quads.node_count());
  Eigen::VectorXd push = weight;
  const auto down = [](mesh::Point, const Eigen::Vector2d&) { return Eigen::Vector2d(0.0, -w); };
  const auto inwards = [&](mesh::Point p, const Eigen::Vector2d&) {
    return Eigen::Vector2d((1.0 + slant * (1.0 - 2.0 * p.y / d)) / d, 0.0);
  };
  testing::add_traction(quads, testing::top_edge, 1.0, down, weight);
  testing::add_traction(quads, testing::left_edge, 1.0, inwards, push);

  const double expected = thrust_for(0.5 * d);
  LimitProgram program;
  program.load = equilibrium.equations().gather_free(weight);
  program.load_rise = expected * equilibrium.equations().gather_free(push);
  program.strength.assign(thickness.size(), {1.0, 1e-5, 0.0});
  program.parameter_cost = 1.0;
  program.most_parameter = 10.0;
  LimitSolver solver(equilibrium);
  return expected * solver.solve(program, 1.0, 1e-3).parameter;
}

double last_points(int through) {
  return d * (1.0 - 1.0 / std::numbers::sqrt3) / (2.0 * through);
}

TEST(LimitLintel, LeastThrustIsThatOfTheHighestLine) {
  for (const double slant : {0.0, 1.0}) {
    const double height = 0.5 * d - slant * d / 6.0;
    for (const int through : {4, 8}) {
      const double exact = thrust_for(d - last_points(through) - height);
      verify({statics,
              fmt::format("flat arch, thrust at {} mm of 300, {} elements deep: least thrust",
                          height, through),
              exact, least_thrust(slant, through), 0.01 * exact, "N"});
    }
  }
}

TEST(LimitLintel, FinerElementsComeToTheThrustOfTheWholeDepthFromAbove) {
  const double coarse = least_thrust(0.0, 4);
  const double fine = least_thrust(0.0, 8);
  const double exact = thrust_for(0.5 * d);
  EXPECT_GT(coarse, fine);
  EXPECT_GT(fine, exact);
  // The rise, and so 1/H, is linear in the size of the elements.
  verify({statics, "flat arch, whole depth, extrapolated from two meshes: 1 / least thrust",
          1.0 / exact, 2.0 / fine - 1.0 / coarse, 0.01 / exact, "1/N"});
}

}  // namespace
}  // namespace deadshore::solver
