// EN 1990 6.4.3.2 with the values of the UK NA (read in public guides): G 15.58, imposed 3.0 (psi_0
// 0.7), snow 1.5 kN/m (psi_0 0.5) -> 26.66 by 6.10, 25.31 by 6.10a, 25.08 by 6.10b, unfactored
// 20.08. Worked by hand. Accepted: the digits given.

#include "solver/checks/safety_basis.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1990{Field::loads, Certainty::by_hand,
                        "EN 1990 6.4.3.2, UK NA as in public guides"};

TEST(CombinationsEn1990, AFloorWithSnowAbove) {
  constexpr double G = 15.58;
  constexpr std::array<VariableAction, 2> variable{{{3.0, 0.7}, {1.5, 0.5}}};
  verify({en1990, "floor with snow above: 6.10", 26.66, combine(Combination::eq_6_10, G, variable),
          0.005, "kN/m"});
  verify({en1990, "floor with snow above: 6.10a", 25.31,
          combine(Combination::eq_6_10a, G, variable), 0.005, "kN/m"});
  verify({en1990, "floor with snow above: 6.10b", 25.08,
          combine(Combination::eq_6_10b, G, variable), 0.005, "kN/m"});
  verify({en1990, "floor with snow above: the worse of 6.10a and b", 25.31,
          combine(Combination::eq_6_10a_or_b, G, variable), 0.005, "kN/m"});
  verify({en1990, "floor with snow above: unfactored", 20.08,
          combine(Combination::unfactored, G, variable), 0.005, "kN/m"});
}

}  // namespace
}  // namespace deadshore::solver
