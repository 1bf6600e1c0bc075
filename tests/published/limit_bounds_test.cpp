// Strict bounds of limit analysis around limit loads that are known in closed form for masonry with
// -f_c <= principal stresses <= 0. From memory where a source is named; else derived here.

#include "solver/limit/bound_analysis.h"
#include "solver/limit/triangle_mesh.h"
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

constexpr double most = 1e4;
constexpr mesh::Interval anywhere{-1e9, 1e9};

// Chains of a grid mesh, by their place.
constexpr std::size_t bottom = 0;
constexpr std::size_t right = 1;
constexpr std::size_t top = 2;
constexpr std::size_t left = 3;

struct Pair {
  double lower = 0.0;
  double upper = 0.0;
};

/// Both bounds; fails where the lower one does not prove itself.
Pair bounds_of(const BoundProblem& problem) {
  const LowerBound lower = lower_bound(problem, most);
  EXPECT_LT(lower.out_of_balance, 1e-9);
  EXPECT_LE(lower.tension, (1.0 + 1e-9) * tension_left_in_bounds * problem.masonry_strength);
  return {lower.factor, upper_bound(problem, most).factor};
}

/// Expects bounds on both sides of an exact value, and the mean of them near it.
void expect_around(const Source& source, const std::string& what, double exact, const Pair& pair,
                   double tolerance) {
  EXPECT_LE(pair.lower, exact * (1.0 + 1e-4)) << what;  // of the tension left
  EXPECT_GE(pair.upper, exact) << what;
  verify({source, what + ": lower bound", exact, pair.lower, tolerance * exact, "-"});
  verify({source, what + ": upper bound", exact, pair.upper, tolerance * exact, "-"});
}

// A pier 240 mm wide under a load of eccentricity e: the block of stress f_c over b - 2 e.

constexpr Source stress_block{Field::limit_analysis, Certainty::memory,
                              "Stress block of EN 1996-1-1 6.1.2.2; exact for the material"};
constexpr double b = 240.0;
constexpr double thickness = 100.0;
constexpr double strength = 2.0;

/// The load stands on the block that it presses, so that it needs no plate to bring it in.
Pair pier(double e, int columns) {
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(columns, columns, mesh::QuadOrder::four_node, b, 2.0 * b);
  TriangleMesh mesh = triangles_of(quads);
  const mesh::Interval block{2.0 * e, b};
  split_chain_at(mesh, top, block.from);
  BoundProblem problem = plain_bound_problem(mesh, {thickness, strength, 0.0});
  hold(problem, mesh, bottom, {true, true});
  load(problem, mesh, top, block, strength * thickness);
  return bounds_of(problem);
}

TEST(LimitBounds, PierBearsABlockOfStress) {
  for (const double e : {0.0, 30.0, 75.0}) {
    expect_around(stress_block, fmt::format("pier 240 mm, e {} mm", e), 1.0, pier(e, 6), 2e-3);
  }
}

/// A stiff head that brings an eccentric point load in, a grid's row of elements high: how far off
/// the bounds are falls with the elements.
Pair headed_pier(double e, int columns) {
  const int rows = 2 * columns;
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(columns, rows, mesh::QuadOrder::four_node, b, 2.0 * b);
  TriangleMesh mesh = triangles_of(quads);
  const mesh::Interval patch{0.5 * b + e - 10.0, 0.5 * b + e + 10.0};
  split_chain_at(mesh, top, patch.from);
  split_chain_at(mesh, top, patch.to);
  BoundProblem problem = plain_bound_problem(mesh, {thickness, strength, 0.0});
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    mesh::Point middle;
    for (int k = 0; k < 3; ++k) middle.y += mesh.corner(static_cast<int>(i), k).y / 3.0;
    if (middle.y < 2.0 * b * 0.75) continue;
    problem.is_masonry[i] = 0;
    problem.compression[i] = problem.tension[i] = 200.0 * strength;
  }
  hold(problem, mesh, bottom, {true, true});
  load(problem, mesh, top, patch, strength * thickness * (b - 2.0 * e) / patch.length());
  return bounds_of(problem);
}

TEST(LimitBounds, BoundsOfAPierUnderAnEccentricLoadCloseAsTheElementsHalve) {
  double wide = 0.0;
  for (const int columns : {4, 8, 16}) {
    const Pair pair = headed_pier(50.0, columns);
    EXPECT_LE(pair.lower, 1.0 + 1e-4);
    EXPECT_GE(pair.upper, 1.0);
    const double gap = pair.upper - pair.lower;
    if (wide > 0.0) {
      EXPECT_LT(gap, 0.7 * wide) << columns;  // first order would be 0.5
    }
    wide = gap;
    if (columns == 16)
      expect_around(stress_block, "headed pier, e 50 mm, elements of 15 mm", 1.0, pair, 0.04);
  }
}

// A patch load on the top of a wall: the strength times the patch, wherever it stands. Nothing at
// the sides helps, since no principal stress passes f_c; a column under the patch bears as much.

constexpr Source patch_source{Field::limit_analysis, Certainty::memory,
                              "Derived: a column of f_c under the patch, which crushes"};

Pair patch(double from, int columns) {
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(columns, columns, mesh::QuadOrder::four_node, 1000.0, 1000.0);
  TriangleMesh mesh = triangles_of(quads);
  const mesh::Interval x{from, from + 100.0};
  split_chain_at(mesh, top, x.from);
  split_chain_at(mesh, top, x.to);
  refine(
      mesh,
      [&](mesh::Point p) {
        return 40.0 + 0.5 * std::hypot(p.x - x.middle(), std::max(0.0, 1000.0 - p.y));
      },
      4000);
  BoundProblem problem = plain_bound_problem(mesh, {215.0, 2.4, 0.0});
  hold(problem, mesh, bottom, {true, true});
  EXPECT_NEAR(load(problem, mesh, top, x, 600.0), 60e3, 1e-6);
  return bounds_of(problem);
}

TEST(LimitBounds, PatchLoadCrushesWhatItStandsOn) {
  const double exact = 2.4 * 215.0 * 100.0 / 60e3;
  expect_around(patch_source, "60 kN on 100 mm at the corner of a wall", exact, patch(900.0, 5),
                0.03);
  expect_around(patch_source, "60 kN on 100 mm amid a wall", exact, patch(430.0, 5), 0.03);
}

// A flat arch between held ends under an even load on its top. Two halves that turn about hinges at
// half its depth give q = 2 f_c t h^2 / L^2 as an upper bound; a slender one bears as much.

constexpr Source thrust_line{Field::limit_analysis, Certainty::memory,
                             "Thrust line of a flat arch, blocks of f_c at crown and ends"};

Pair flat_arch(double slenderness, int rows) {
  const double h = 200.0;
  const double L = slenderness * h;
  const mesh::QuadMesh quads =
      testing::rectangle_mesh(static_cast<int>(slenderness) * rows / 2, rows,
                              mesh::QuadOrder::four_node, L, h);
  const TriangleMesh mesh = triangles_of(quads);
  BoundProblem problem = plain_bound_problem(mesh, {thickness, strength, 0.0});
  hold(problem, mesh, left, {true, true});
  hold(problem, mesh, right, {true, true});
  load(problem, mesh, top, anywhere, 2.0 * strength * thickness * h * h / (L * L));
  return bounds_of(problem);
}

TEST(LimitBounds, FlatArchBearsItsThrustLine) {
  double wide = 0.0;
  for (const int rows : {2, 4, 8}) {
    const Pair pair = flat_arch(10.0, rows);
    EXPECT_LE(pair.lower, 1.0);
    EXPECT_GE(pair.upper, pair.lower);
    const double gap = pair.upper - pair.lower;
    if (wide > 0.0) {
      EXPECT_LT(gap, 0.75 * wide) << rows;
    }
    wide = gap;
    // The arch rises by half of its depth: its thrust is longer than its level part by the square
    // of the slope at the ends, 4 * 0.5 / 10.
    if (rows == 8) expect_around(thrust_line, "flat arch, L/h 10", 1.0 - 0.02, pair, 0.1);
  }
}

// Least thickness of a semicircular arch under its own weight, t/R = 0.1075 (Milankovitch 1907).

constexpr Source milankovitch{Field::limit_analysis, Certainty::memory, "Milankovitch 1907"};
constexpr double R = 1000.0;

Pair semicircle(double t, int through, int along) {
  const mesh::QuadMesh quads =
      testing::grid_mesh(along, through, mesh::QuadOrder::four_node, [&](double s, double v) {
        const double angle = std::numbers::pi * (1.0 - s);
        const double radius = R + t * (v - 0.5);
        return mesh::Point{radius * std::cos(angle), radius * std::sin(angle)};
      });
  const TriangleMesh mesh = triangles_of(quads);
  BoundProblem problem = plain_bound_problem(mesh, {100.0, 1.0, 1e-6});
  hold(problem, mesh, left, {true, true});
  hold(problem, mesh, right, {true, true});
  // Straight edges that face down hold no weight: that of the triangles beside them goes to the
  // triangles that lie across their quadrilaterals.
  std::vector<double> weight = problem.weight;
  let_fringe_go(problem);
  for (std::size_t i = 0; i < weight.size(); ++i) {
    const double gone = weight[i] - problem.weight[i];
    const std::size_t quad = i / 4;
    problem.weight[4 * quad + (i + 2) % 4] += gone;
  }
  return bounds_of(problem);
}

/// Least thickness over radius at which a bound passes 1.
template <class Bound>
double least_thickness(const Bound& bound, int through) {
  double falls = 0.07;
  double stands = 0.2;
  while (stands - falls > 0.001) {
    const double middle = 0.5 * (falls + stands);
    (semicircle(middle * R, through, 48).*bound >= 1.0 ? stands : falls) = middle;
  }
  return 0.5 * (falls + stands);
}

TEST(LimitBounds, LeastThicknessOfASemicircleLiesBetweenThatOfBothBounds) {
  double wide = 0.0;
  for (const int through : {1, 2, 4}) {
    const double stands = least_thickness(&Pair::lower, through);
    const double falls = least_thickness(&Pair::upper, through);
    EXPECT_GE(stands, 0.1075 - 0.001);
    EXPECT_LE(falls, 0.1075 + 0.002);  // crushing and straight sides
    const double gap = stands - falls;
    if (wide > 0.0) {
      EXPECT_LT(gap, 0.75 * wide) << through;
    }
    wide = gap;
    if (through < 4) continue;
    verify({milankovitch, "semicircular arch: least thickness over radius, by stresses", 0.1075,
            stands, 0.1 * 0.1075, "-"});
    verify({milankovitch, "semicircular arch: least thickness over radius, by a mechanism", 0.1075,
            falls, 0.1 * 0.1075, "-"});
  }
}

}  // namespace
}  // namespace deadshore::solver
