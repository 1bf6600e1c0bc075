// Least thickness of a semicircular arch without tension under its own weight: t/R = 0.1075
// (Milankovitch 1907, for the exact centres of gravity of the voussoirs; 0.106 in Heyman, The Stone
// Skeleton (1995)). From memory; R is the radius of the centre line.
//
// Elements know stress at their Gauss points only: with n of them through the thickness the line of
// thrust must keep (1 - 1/sqrt(3)) / (2 n) of it away from each face, so that the least thickness
// found falls to the exact one as 1/n. The elements differ from voussoirs in having no joints: the
// mechanism is smeared over an element along the arch.

#include "solver/limit/limit_analysis.h"
#include "tests/published/comparison.h"
#include "tests/solver/limit_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source milankovitch{Field::limit_analysis, Certainty::memory, "Milankovitch 1907"};

constexpr double R = 1000.0;

bool arch_stands(double thickness, int through, int along) {
  const mesh::QuadMesh quads =
      testing::grid_mesh(along, through, mesh::QuadOrder::eight_node, [&](double s, double t) {
        const double angle = std::numbers::pi * (1.0 - s);
        const double radius = R + thickness * (t - 0.5);
        return mesh::Point{radius * std::cos(angle), radius * std::sin(angle)};
      });
  LimitProblem problem = testing::plain_problem(quads, 100.0, 1.0);
  problem.supports.clear();
  testing::fix_chain(problem, testing::left_edge);
  testing::fix_chain(problem, testing::right_edge);
  testing::add_own_weight(problem, 5e-6);  // N/mm3: thrust presses on 1% of the thickness
  LimitAnalysis analysis(problem);
  return analysis.stands();
}

double least_thickness(int through) {
  double falls = 0.09 * R;
  double stands = 0.16 * R;
  while (stands - falls > 0.002 * R) {
    const double middle = 0.5 * (falls + stands);
    (arch_stands(middle, through, 32) ? stands : falls) = middle;
  }
  return 0.5 * (falls + stands);
}

TEST(LimitArch, LeastThicknessOfASemicircleUnderItsOwnWeight) {
  const double coarse = least_thickness(2);
  const double fine = least_thickness(4);
  EXPECT_LT(fine, coarse);
  verify({milankovitch, "semicircular arch, own weight: least thickness over radius", 0.1075,
          (2.0 * fine - coarse) / R, 0.04 * 0.1075, "-"});
}

}  // namespace
}  // namespace deadshore::solver
