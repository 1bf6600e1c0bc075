// The examples in the headers of solver/, as they stand there: `header_examples` compares the two.
#include "solver/checks/member_buckling.h"
#include "solver/conic/interior_step.h"
#include "solver/fem/job_mesh.h"
#include "solver/fem/sparse_cholesky.h"
#include "solver/frame/frame.h"
#include "solver/frame/solve_frame.h"
#include "solver/job/error.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/wall_panel.h"
#include "solver/spread/spread.h"

#include <Eigen/Core>
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

/// What an example prints.
template <class Example>
std::string printed_by(const Example& example) {
  testing::internal::CaptureStdout();
  example();
  return testing::internal::GetCapturedStdout();
}

void check_a_column() {
  const SteelSection section{"UC 152x152x23", SectionKind::i_section, 152.4, 152.2, 5.8, 6.8, 7.6};
  const SteelMember column = steel_member(section, SteelGrade::s275);
  const Check check =
      check_flexural_buckling(column, SectionAxis::z, 3000.0, 200e3, partial_factors());
  fmt::print("{}: {:.0f} of {:.0f} {}, {:.2f}, {}\n", check.check, check.demand, check.capacity,
             check.unit, check.utilisation(), check.passes() ? "passes" : "fails");
}

// By hand: i_z 37.0 mm, slenderness 0.934, curve c with chi 0.579, 0.579 x 2920 mm2 x 275 N/mm2.
TEST(HeaderExamples, CheckAColumn) {
  EXPECT_EQ(printed_by(check_a_column), "buckling about z: 200 of 465 kN, 0.43, passes\n");
}

void spread_a_wall() {
  Job job;
  job.wall.length = 4000.0;
  job.wall.top = {{0.0, 3300.0}, {4000.0, 3300.0}};
  job.wall.cut = {800.0, 3200.0, 2100.0};
  job.thickness = 215.0;
  job.masonry = {"brick", 19e-6, 3000.0, 0.2, 5.0, 0.1};
  job.needles = {{"N1", 1600.0, 152.0, 50e3}, {"N2", 2400.0, 152.0, 50e3}};
  const SpreadResult hand = spread_at_45_degrees(job);
  for (const SpreadSum& needle : hand.needles) {
    fmt::print("{:.2f} of {:.2f} kN\n", needle.total / 1e3, hand.load_total / 1e3);
  }
}

// By hand: from jamb to midline 1.2 m x 1.2 m, less the part of the 724 mm wedge beside the jamb
// that the lever of its middle, (1041 - 800) / 800, leaves to the pier: 1.257 m2 of 4.085 kN/m2.
TEST(HeaderExamples, SpreadAWall) {
  EXPECT_EQ(printed_by(spread_a_wall), "5.13 of 33.33 kN\n5.13 of 33.33 kN\n");
}

void factorise_a_matrix() {
  SparseStiffness K(2, 2);  // lower triangle
  K.insert(0, 0) = 2.0;
  K.insert(1, 0) = -1.0;
  K.insert(1, 1) = 2.0;
  K.makeCompressed();
  SparseCholesky factor(K);
  if (!factor.factorize(K)) throw SolveError("K is singular");
  const Eigen::VectorXd u = factor.solve(Eigen::Vector2d(1.0, 0.0));
  fmt::print("({:.3f}, {:.3f}), least pivot {:.2f}\n", u(0), u(1), factor.least_pivot());
}

// By hand: u = (2, 1) / 3; pivots 2 and 2 - 1/2, over their diagonal entries 1 and 3/4.
TEST(HeaderExamples, FactoriseAMatrix) {
  EXPECT_EQ(printed_by(factorise_a_matrix), "(0.667, 0.333), least pivot 0.75\n");
}

void solve_a_beam() {
  Frame frame;
  frame.nodes = {{0.0, 0.0, "left end"}, {4000.0, 0.0, "right end"}};
  FrameMember member;
  member.to = 1;  // from node 0
  member.E = 210e3;
  member.A = 3000.0;
  member.I = 20e6;
  frame.members = {member};
  frame.supports = {pinned_support(0), pinned_support(1)};
  frame.point_loads = {{.member = 0, .at = 2000.0, .y = -10e3}};
  const FrameSolution beam = solve(frame).value();
  const SectionState middle = section(beam.members[0], 2000.0);
  fmt::print("{:.1f} kN, {:.1f} kNm, {:.2f} mm\n", beam.reactions[0].y / 1e3, middle.moment / 1e6,
             middle.deflection);
}

// Half the load, P L / 4 and P L^3 / (48 E I), downwards.
TEST(HeaderExamples, SolveABeam) {
  EXPECT_EQ(printed_by(solve_a_beam), "5.0 kN, 10.0 kNm, -3.17 mm\n");
}

struct NearestPoint {
  Mohr a;
  ConePairs all{std::vector<ConePair<Mohr>>(1), {}};  // x = multiplier = (1, 0, 0)
  Eigen::Matrix3d inverse = Eigen::Matrix3d::Zero();

  struct Direction {
    ConeChanges cones;
  };
  ConePairs& pairs() { return all; }
  bool factorise() {
    inverse = all.cones[0].scaling.inverse_with(1.0, 1.0);  // of W^-2 + I
    return true;
  }
  Direction direction(const ConeValues& targets) {
    const Mohr residual = all.cones[0].slack - a - all.cones[0].multiplier;
    const Mohr x = inverse * (targets.cones[0] - residual);
    return {{{{x}, {}}, {{x + residual}, {}}}};
  }
  void move(const Direction&, const StepLengths&) {}
};

void find_the_nearest_point() {
  NearestPoint nearest{Mohr(1.0, 3.0, 0.0)};  // eigenvalues 4 and -2
  const StepRules rules{.one_length = true};
  while (complementarity_of(nearest.all).all > 1e-12 && interior_step(nearest, rules)) continue;
  const Mohr x = nearest.all.cones[0].slack;
  fmt::print("mean {:.3f}, radius {:.3f}\n", x(0), std::hypot(x(1), x(2)));
}

// The projection puts 0 in place of the negative eigenvalue: 4 and 0.
TEST(HeaderExamples, FindTheNearestPointOfTheCone) {
  EXPECT_EQ(printed_by(find_the_nearest_point), "mean 2.000, radius 2.000\n");
}

void solve_a_wall() {
  Job job;
  job.wall.length = 4000.0;
  job.wall.top = {{0.0, 3300.0}, {4000.0, 3300.0}};
  job.wall.cut = {800.0, 3200.0, 2100.0};
  job.thickness = 215.0;
  job.masonry = {"brick", 19e-6, 3000.0, 0.2, 5.0, 0.1};
  job.needles = {{"N1", 1600.0, 152.0, 50e3}, {"N2", 2400.0, 152.0, 50e3}};
  const mesh::WallMesh wall = mesh_of(job);
  PanelModel model(wall.quads, supports_of(job, wall.quads));
  const PanelLoading loading = loading_of(job, model, MasonryModel::cracked);
  Eigen::VectorXd u = model.start();
  if (!minimise(model, loading, u).converged) throw SolveError("no convergence");
  for (const ContactBed& needle : loading.beds) {
    fmt::print("{:.1f} kN\n", state_of(needle, u).force / 1e3);
  }
}

// Less than by hand: the masonry arches over needles that give.
TEST(HeaderExamples, SolveAWall) {
  EXPECT_EQ(printed_by(solve_a_wall), "2.9 kN\n2.9 kN\n");
}

}  // namespace
}  // namespace deadshore::solver
