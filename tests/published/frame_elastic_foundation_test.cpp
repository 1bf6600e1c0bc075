// Beams on an elastic foundation: M. Hetenyi, Beams on Elastic Foundation (1946); the values are
// recomputed from his formulas in the tests. k 4.5 N/mm2, EI 51.572 kNm2, P 20 kN: long beam 4.803
// mm and 2.314 kNm under the force; 1 m long 5.486 mm, ends 2.906 mm, 2.242 kNm.

#include "tests/published/comparison.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source hetenyi{Field::beams, Certainty::by_hand, "Hetenyi 1946, art. 20"};
constexpr Source rates{Field::beams, Certainty::derived,
                       "Theory: springs at points, by the trapezium rule"};

constexpr double k = 4.5;         // N/mm2
constexpr double EI = 5.1572e10;  // N mm2
constexpr double P = 20000.0;     // N

struct Answer {
  double deflection = 0.0;  ///< under the force, mm
  double end = 0.0;         ///< deflection of the ends
  double moment = 0.0;      ///< under the force, N mm
};

/// A beam of `count` (even) members on as many springs as nodes, the force at its middle.
Answer beam_on_springs(double length, int count, bool compression_only = true) {
  std::vector<double> x;
  for (int i = 0; i <= count; ++i) x.push_back(length * i / count);
  Frame beam = testing::level_beam(x);
  for (FrameMember& member : beam.members) member.I = EI / member.E;
  for (int i = 0; i <= count; ++i) {
    const double tributary = length / count * (i == 0 || i == count ? 0.5 : 1.0);
    beam.springs.push_back({i, ground, 0.0, -1.0, k * tributary, compression_only, 0.0});
  }
  beam.supports = {{0, 0.0, std::nullopt, std::nullopt}};
  const int middle = count / 2;
  beam.node_loads = {{middle, 0.0, -P, 0.0}};
  const FrameSolution solution = solve(beam).value();
  const auto at = static_cast<std::size_t>(middle);
  return {-solution.nodes[at].y, -solution.nodes[0].y, section(solution.members[at], 0.0).moment};
}

const double lambda = std::pow(k / (4.0 * EI), 0.25);

/// Hetenyi 1946, the free-ended beam of length l under a central force (art. 20).
Answer hetenyi_free_ended(double l) {
  const double u = lambda * l;
  const double below = std::sinh(u) + std::sin(u);
  return {P * lambda / (2.0 * k) * (std::cosh(u) + std::cos(u) + 2.0) / below,
          2.0 * P * lambda / k * std::cosh(u / 2.0) * std::cos(u / 2.0) / below,
          P / (4.0 * lambda) * (std::cosh(u) - std::cos(u)) / below};
}

TEST(ElasticFoundation, FormulasGiveThePublishedNumbers) {
  EXPECT_NEAR(P * lambda / (2.0 * k), 4.803, 0.0005);
  EXPECT_NEAR(P / (4.0 * lambda), 2.314e6, 500.0);
  const Answer due = hetenyi_free_ended(1000.0);
  EXPECT_NEAR(due.deflection, 5.486, 0.0005);
  EXPECT_NEAR(due.end, 2.906, 0.0005);
  EXPECT_NEAR(due.moment, 2.242e6, 500.0);
}

TEST(ElasticFoundation, ShortBeamAgrees) {
  const Answer found = beam_on_springs(1000.0, 64);
  const Answer due = hetenyi_free_ended(1000.0);
  verify({hetenyi, "sole of 1 m on ground, 64 parts: deflection under the force", due.deflection,
          found.deflection, 0.001 * due.deflection, "mm"});
  verify({hetenyi, "sole of 1 m on ground, 64 parts: deflection of its ends", due.end, found.end,
          0.001 * due.end, "mm"});
  verify({hetenyi, "sole of 1 m on ground, 64 parts: moment", due.moment / 1e6, found.moment / 1e6,
          0.001 * due.moment / 1e6, "kNm"});
}

TEST(ElasticFoundation, ErrorFallsWithTheSquareOfTheSpacing) {
  const Answer due = hetenyi_free_ended(1000.0);
  const Answer coarse = beam_on_springs(1000.0, 16);
  const Answer fine = beam_on_springs(1000.0, 32);
  const auto order = [](double rough, double better, double exact) {
    return std::log2((rough - exact) / (better - exact));
  };
  verify({rates, "sole on ground: error of deflection falls by", 2.0,
          order(coarse.deflection, fine.deflection, due.deflection), 0.05, "order"});
  verify({rates, "sole on ground: error of moment falls by", 2.0,
          order(coarse.moment, fine.moment, due.moment), 0.05, "order"});
}

TEST(ElasticFoundation, LongBeamIsEndless) {
  // 2 pi / lambda to each side of the force: its waves have died away by 0.2 %.
  const Answer found = beam_on_springs(4.0 * M_PI / lambda, 96, false);
  const double due = P * lambda / (2.0 * k);
  verify({hetenyi, "endless beam on ground, 96 parts: deflection under the force", due,
          found.deflection, 0.005 * due, "mm"});
  EXPECT_NEAR(found.end, 0.0, 0.01 * found.deflection);
}

}  // namespace
}  // namespace deadshore::solver
