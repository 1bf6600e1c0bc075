// EN 1996-1-1, worked by hand from its formulas. 3.6.1.2, f_k = K f_b^0.7 f_m^0.3 (K 0.50 UK NA,
// 0.55 recommended; from memory, unverified); 6.1.3 (read in a public copy): a pad of
// 440 x 215 mm on a wall 215 thick and 2300 high, f_d 6.170 / 3.0 = 2.057 N/mm2, at 0, 500 and 1000
// mm from the end. Accepted: the digits given.

#include "solver/checks/masonry_checks.h"
#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <string>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source strength{Field::masonry_members, Certainty::by_hand,
                          "EN 1996-1-1 3.6.1.2, K from memory"};
constexpr Source pad{Field::masonry_members, Certainty::by_hand,
                     "EN 1996-1-1 6.1.3, read in a public copy"};

TEST(MasonryStrength, FollowsFromUnitsAndMortar) {
  verify({strength, "masonry, K 0.50, f_b 20, f_m 4: f_k", 6.170,
          masonry_strength({0.50, 20.0, 4.0, false}), 0.0005, "N/mm2"});
  verify({strength, "masonry, K 0.50, f_b 20, f_m 4, joint inside: f_k", 4.94,
          masonry_strength({0.50, 20.0, 4.0, true}), 0.005, "N/mm2"});
  verify({strength, "masonry, K 0.50, f_b 10, f_m 2: f_k", 3.085,
          masonry_strength({0.50, 10.0, 2.0, false}), 0.0005, "N/mm2"});
  verify({strength, "masonry, K 0.50, f_b 10, f_m 1: f_k", 2.506,
          masonry_strength({0.50, 10.0, 1.0, false}), 0.0005, "N/mm2"});
  verify({strength, "masonry, K 0.55, f_b 20, f_m 4: f_k", 6.787,
          masonry_strength({0.55, 20.0, 4.0, false}), 0.0005, "N/mm2"});
}

TEST(ConcentratedLoad, OnAPadAtThreeDistancesFromTheEnd) {
  struct Row {
    double from_end, spread_length, enhancement, resistance;
  };
  constexpr std::array<Row, 3> rows{{{0.0, 1104.0, 1.0616, 206.6},
                                     {500.0, 1604.0, 1.2764, 248.3},
                                     {1000.0, 1767.9, 1.3862, 269.7}}};
  const SafetyBasis basis = partial_factors();
  for (const Row& row : rows) {
    const ConcentratedLoad load{440.0, 215.0, 215.0, row.from_end, 5000.0, 2300.0, 0.0};
    const ConcentratedResistance result =
        concentrated_resistance(load, masonry_strength({0.50, 20.0, 4.0, false}), basis);
    const std::string at = fmt::format("pad 440x215, {} mm from the end: ", row.from_end);
    verify({pad, at + "l_efm", row.spread_length, result.spread_length, 0.05, "mm"});
    verify({pad, at + "beta", row.enhancement, result.enhancement, 0.00005, "-"});
    verify({pad, at + "N_Rdc", row.resistance, result.resistance / 1e3, 0.05, "kN"});
  }
}

}  // namespace
}  // namespace deadshore::solver
