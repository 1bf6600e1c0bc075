// Visible damage of masonry and the strains it goes with.
//
// - Categories by width: Burland, Broms & de Mello, 9th ICSMFE, Tokyo 1977 (and Burland 1995):
//   0.1, 1, 5, 15, 25 mm. By limiting tensile strain: Boscardin & Cording, J. Geotech. Engng 115
//   (1989) 1-21: 0.05, 0.075, 0.15, 0.3%. Both read in public copies of the tables.
// - Deep beam: Burland & Wroth, Settlement of Structures, Cambridge 1974, E/G = 2.6:
//   neutral axis in the middle D/L = (0.167 L/H + 0.65 H/L) e_b = (1 + 0.25 (L/H)^2) e_d,
//   at the bottom edge        D/L = (0.083 L/H + 1.3 H/L) e_b = (1 + 0.064 (L/H)^2) e_d;
//   from memory; accepted: the digits given. That bending takes over from shear at twice the L/H
//   when the axis moves to the bottom edge: read in a public thesis on tunnelling in Naples.
// - D/L = 0: the limits of level strain are those of the table (Burland 1995, read there too).

#include "solver/cracks/damage_scale.h"

#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source widths{Field::damage, Certainty::read, "Burland, Broms & de Mello 1977"};
constexpr Source strains{Field::damage, Certainty::read, "Boscardin & Cording 1989"};
constexpr Source deep_beam{Field::damage, Certainty::memory, "Burland & Wroth 1974, E/G 2.6"};

DeepBeam beam(double length_over_height, Bending bending) {
  return {length_over_height * 3000.0, 3000.0, 0.3, bending};
}

/// The least value that a scale puts in a category, found by halving.
template <class Scale>
double begins(int category, double beyond, Scale scale) {
  double below = 0.0;
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (below + beyond);
    (scale(middle) < category ? below : beyond) = middle;
  }
  return beyond;
}

TEST(DamageScale, WidthsOfBurlandsTable) {
  struct Row {
    double width;
    int below, above;
  };
  constexpr std::array<Row, 5> rows{
      {{0.1, 0, 1}, {1.0, 1, 2}, {5.0, 2, 3}, {15.0, 3, 4}, {25.0, 4, 5}}};
  for (const Row& row : rows) {
    EXPECT_EQ(damage_by_width(0.999 * row.width), row.below) << row.width;
    EXPECT_EQ(damage_by_width(1.001 * row.width), row.above) << row.width;
    verify({widths, fmt::format("damage category {}: crack width at which it begins", row.above),
            row.width, begins(row.above, 100.0, damage_by_width), 0.001 * row.width, "mm"});
  }
  EXPECT_EQ(damage_by_width(0.0), 0);
}

TEST(DamageScale, StrainsOfBoscardinAndCordingsTable) {
  struct Row {
    double percent;
    int below, above;
  };
  constexpr std::array<Row, 4> rows{{{0.05, 0, 1}, {0.075, 1, 2}, {0.15, 2, 3}, {0.3, 3, 4}}};
  for (const Row& row : rows) {
    EXPECT_EQ(damage_by_strain(0.999e-2 * row.percent), row.below) << row.percent;
    EXPECT_EQ(damage_by_strain(1.001e-2 * row.percent), row.above) << row.percent;
    verify({strains, fmt::format("damage category {}: strain at which it begins", row.above),
            row.percent, 100.0 * begins(row.above, 1.0, damage_by_strain), 0.001 * row.percent,
            "%"});
  }
  EXPECT_EQ(damage_by_strain(0.0), 0);
}

TEST(DamageScale, EveryCategoryHasItsName) {
  constexpr std::array<const char*, 6> names{"0, negligible", "1, very slight", "2, slight",
                                             "3, moderate",   "4, severe",      "5, very severe"};
  for (int category = 0; category < 6; ++category) {
    EXPECT_EQ(damage_in_words(category).find(names[static_cast<std::size_t>(category)]), 0U);
  }
}

TEST(DeepBeam, FollowsBurlandAndWrothsCurves) {
  for (const double r : {0.5, 1.0, 2.0, 4.0}) {
    const double ratio = 1e-3;
    const DeepBeam sags = beam(r, Bending::sagging);
    const DeepBeam hogs = beam(r, Bending::hogging);
    const auto row = [&](const char* what, double theirs, double strain, double tolerance) {
      verify({deep_beam, fmt::format("deflection ratio over {}, L/H {}", what, r), theirs,
              ratio / strain, tolerance, "-"});
    };
    row("bending strain, sagging", 0.167 * r + 0.65 / r, bending_strain(sags, ratio),
        0.0005 * r + 0.005 / r);
    row("bending strain, hogging", 0.083 * r + 1.3 / r, bending_strain(hogs, ratio),
        0.0005 * r + 0.05 / r);
    row("shear strain, sagging", 1.0 + 0.25 * r * r, diagonal_strain(sags, ratio), 0.0075 * r * r);
    row("shear strain, hogging", 1.0 + 0.064 * r * r, diagonal_strain(hogs, ratio), 0.0005 * r * r);
  }
}

TEST(DeepBeam, BendingTakesOverFromShearAtTwiceTheLengthWhenHogging) {
  const auto changeover = [](Bending bending) {
    double shear_rules = 0.1;
    double bending_rules = 10.0;
    while (bending_rules - shear_rules > 1e-9) {
      const double r = 0.5 * (shear_rules + bending_rules);
      const bool bends =
          bending_strain(beam(r, bending), 1.0) > diagonal_strain(beam(r, bending), 1.0);
      (bends ? bending_rules : shear_rules) = r;
    }
    return shear_rules;
  };
  EXPECT_NEAR(changeover(Bending::hogging), 2.0 * changeover(Bending::sagging), 1e-6);
}

TEST(DeepBeam, LevelStrainAloneIsItsOwnLimit) {
  for (const Bending bending : {Bending::sagging, Bending::hogging}) {
    EXPECT_NEAR(tensile_strain(beam(1.0, bending), 0.0, 7.5e-4), 7.5e-4, 1e-15);
  }
}

// Pure shear and level strain together are a plane strain state: its major principal value by
// Mohr's circle, with the strain across from Poisson's ratio.
TEST(DeepBeam, ShearWithLevelStrainIsMohrsCircle) {
  const DeepBeam b = beam(0.5, Bending::hogging);
  const double shear = diagonal_strain(b, 1e-3);
  const double level = 2e-4;
  const double across = -b.nu * level;
  const double major = 0.5 * (level + across) + std::hypot(0.5 * (level - across), shear);
  EXPECT_NEAR(tensile_strain(b, 1e-3, level), std::max(major, bending_strain(b, 1e-3) + level),
              1e-15);
}

}  // namespace
}  // namespace deadshore::solver
