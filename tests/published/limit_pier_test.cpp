// Pier of rigid-plastic masonry without tension under an eccentric load: a block of stress f_c over
// b - 2 e, so that P_u = f_c t (b - 2 e). The stress block of EN 1996-1-1 6.1.2.2 (1), there for
// walls out of plane (Phi = 1 - 2 e/t); exact for this material by equilibrium and by the mechanism
// that turns about the block's end. From memory of the standard; calculated from the formula.

#include "solver/limit/limit_analysis.h"
#include "tests/published/comparison.h"
#include "tests/solver/limit_samples.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source block{Field::limit_analysis, Certainty::memory,
                       "Stress block of EN 1996-1-1 6.1.2.2; exact for the material"};

constexpr double b = 240.0;
constexpr double t = 100.0;
constexpr double strength = 2.0;
constexpr double P = 1000.0;

/// `columns` elements across; the top sixth is a head plate that brings the load in.
LimitFactor factor_at(double e, int columns) {
  mesh::QuadMesh quads =
      testing::rectangle_mesh(columns, columns, mesh::QuadOrder::eight_node, b, 2.0 * b);
  LimitProblem problem = testing::plain_problem(quads, t, strength);
  const std::size_t plate = static_cast<std::size_t>(columns / 6 * columns);
  std::fill(problem.is_masonry.end() - static_cast<std::ptrdiff_t>(plate), problem.is_masonry.end(),
            0);
  for (std::size_t i = problem.tension.size() - plate; i < problem.tension.size(); ++i) {
    problem.tension[i] = problem.compression[i] = 5.0 * strength;
  }
  Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * quads.node_count());
  testing::add_traction(
      quads, testing::top_edge, t,
      [&](mesh::Point p, const Eigen::Vector2d&) {
        return Eigen::Vector2d(0.0, -P / (b * t) * (1.0 + 12.0 * e * (p.x - 0.5 * b) / (b * b)));
      },
      load);
  for (int node = 0; node < quads.node_count(); ++node) {
    problem.other_load(node) = -load(2 * node + 1);
  }
  LimitAnalysis analysis(problem);
  return analysis.factor(0.0, 0.0);
}

TEST(LimitPier, CrushesAllOverUnderACentralLoad) {
  const LimitFactor factor = factor_at(0.0, 6);
  verify({block, "pier 240 mm, central load: factor", strength * t * b / P, factor.lower,
          1e-3 * strength * t * b / P, "-"});
  EXPECT_LE(factor.lower, factor.upper);
}

TEST(LimitPier, BearsABlockOfStressUnderAnEccentricLoad) {
  for (const double e : {30.0, 60.0, 80.0}) {
    const double exact = strength * t * (b - 2.0 * e) / P;
    // The block's end falls inside an element: a twelfth of the depth is half an element.
    verify({block, fmt::format("pier 240 mm, e {} mm: factor", e), exact, factor_at(e, 12).lower,
            strength * t * b / 24.0 / P, "-"});
  }
}

}  // namespace
}  // namespace deadshore::solver
