// Strength and stiffness of cement with age, EN 1992-1-1 (3.2) and (3.5): beta_cc for the three
// classes of cement, s 0.20 (R), 0.25 (N) and 0.38 (S), at 3, 7 and 28 days, as tabled in handbooks
// (from memory, unverified). Accepted: the digits given.

#include "solver/job/permanent_works.h"
#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1992{Field::permanent_beam, Certainty::memory,
                        "EN 1992-1-1 (3.2), (3.5), as tabled in handbooks"};

struct Cement {
  double s;
  std::array<double, 3> strength;  // at 3, 7 and 28 days
};
constexpr std::array<Cement, 3> cements{
    {{0.20, {0.663, 0.819, 1.0}}, {0.25, {0.598, 0.779, 1.0}}, {0.38, {0.458, 0.684, 1.0}}}};
constexpr std::array<double, 3> ages = {3.0, 7.0, 28.0};

TEST(DryPackingEn1992, GainsStrengthAsTabled) {
  for (const Cement& cement : cements)
    for (std::size_t i = 0; i < ages.size(); ++i)
      verify({en1992,
              fmt::format("cement of s {} at {} days: part of its strength", cement.s, ages[i]),
              cement.strength[i], hardened_strength_share({25.0, 15000.0, 20.0, cement.s}, ages[i]),
              0.0005, "-"});
}

// (0.779)^0.3 = 0.928: at a week the modulus has lost 7% where the strength has lost 22%.
TEST(DryPackingEn1992, GainsStiffnessFasterThanStrength) {
  EXPECT_NEAR(packing_bed({25.0, 15000.0, 20.0, 0.25}, 7.0), 0.928 * 15000.0 / 25.0,
              0.0005 * 15000.0 / 25.0);
}

}  // namespace
}  // namespace deadshore::solver
