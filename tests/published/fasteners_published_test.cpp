// EN 1995-1-1 8.2.2 (8.6) and 8.3.1.1, nails in timber to timber; equations from memory, unverified
// against the printed page.
// (a) A smooth round nail of 3.35 mm, f_u 600 N/mm2, through 38 mm into 52 mm of C24: 859 N without
//     the rope effect, worked by hand (Johansen). Accepted: its three digits.
// (b) Each way of giving way by Johansen's limit equilibrium (K. W. Johansen, "Theory of timber
//     connections", 1949), found here from statics alone: embedding stresses f_h d along the nail,
//     plastic hinges M_y, no factors. The standard's 1.05 and 1.15 stand before (d), (e) and (f).

#include "solver/checks/timber_checks.h"
#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1995{Field::timber, Certainty::by_hand, "EN 1995-1-1 8.2.2, 8.3.1.1"};
constexpr Source column{Field::timber, Certainty::by_hand, "EN 1995-1-1 6.3.2"};
constexpr Source johansen{Field::timber, Certainty::derived,
                          "Limit equilibrium of a nail (Johansen 1949)"};

SingleShear nail(double diameter, double side, double point) {
  return {.diameter = diameter,
          .tensile_strength = 600.0,
          .side_thickness = side,
          .penetration = point};
}

TEST(PublishedFasteners, ANailOfThreePointThreeFiveThrough38Into52OfC24) {
  const double f_h = embedment_strength(350.0, 3.35, false);
  const double yield = nail_yield_moment(600.0, 3.35);
  const JohansenModes modes = johansen_modes(nail(3.35, 38.0, 52.0), f_h, f_h, yield);
  verify({en1995, "nail 3.35 mm, 38 + 52 mm of C24: resistance", 859.0, modes.least(), 0.5, "N"});
  EXPECT_EQ(modes.governing(), 'f');
}

TEST(PublishedFasteners, EmbedmentIsLessInAHoleThatTheNailMakesItself) {
  // By hand: 0.082 x 350 = 28.7; x (1 - 0.0335) = 27.74; x 3.35^-0.3 = 28.7 / 1.437 = 19.97.
  verify({en1995, "nail 3.35 mm in C24, hole drilled: f_h", 27.74,
          embedment_strength(350.0, 3.35, true), 0.005, "N/mm2"});
  verify({en1995, "nail 3.35 mm in C24, not drilled: f_h", 19.97,
          embedment_strength(350.0, 3.35, false), 0.005, "N/mm2"});
}

/// The moment that one timber can give a nail at the joint while it takes `force` over `thickness`:
/// pushed back over `a`, the other way over the rest, so that a force P leaves room for a couple.
/// No hinge inside: the nail turns as a stiff rod.
double stiff_couple(double force, double f_d, double thickness) {
  const double a = 0.5 * (thickness + force / f_d);  // next to the joint
  const double b = thickness - a;
  return f_d * (b * (a + 0.5 * b) - 0.5 * a * a);
}

/// The same with a hinge M_y where the shear is nought.
double hinged_couple(double force, double f_d, double yield) {
  return yield - 0.5 * force * force / f_d;
}

/// Largest force that two couples at the joint hold together, by bisection.
template <class Couples>
double largest_force(double most, Couples couples) {
  double low = 0.0;
  double high = most;
  for (int i = 0; i < 200; ++i) {
    const double force = 0.5 * (low + high);
    (couples(force) >= 0.0 ? low : high) = force;
  }
  return low;
}

TEST(PublishedFasteners, EveryModeIsAsStaticsGivesIt) {
  struct Case {
    double d, t1, t2, f1, f2, yield;
  };
  for (const Case c :
       {Case{3.35, 38.0, 52.0, 19.97, 19.97, 4172.0}, Case{6.0, 40.0, 60.0, 15.0, 25.0, 19000.0},
        Case{8.0, 20.0, 90.0, 22.0, 14.0, 40000.0}}) {
    const JohansenModes modes = johansen_modes(nail(c.d, c.t1, c.t2), c.f1, c.f2, c.yield);
    const double q1 = c.f1 * c.d;
    const double q2 = c.f2 * c.d;
    const double most = std::min(q1 * c.t1, q2 * c.t2);
    EXPECT_NEAR(modes.resistance[0], q1 * c.t1, 1e-9 * q1 * c.t1);
    EXPECT_NEAR(modes.resistance[1], q2 * c.t2, 1e-9 * q2 * c.t2);
    const double stiff = largest_force(1e3 * most, [&](double force) {
      return stiff_couple(force, q1, c.t1) + stiff_couple(force, q2, c.t2);
    });
    const double hinge_in_point = largest_force(1e3 * most, [&](double force) {
      return stiff_couple(force, q1, c.t1) + hinged_couple(force, q2, c.yield);
    });
    const double hinge_in_side = largest_force(1e3 * most, [&](double force) {
      return hinged_couple(force, q1, c.yield) + stiff_couple(force, q2, c.t2);
    });
    const double two_hinges = largest_force(1e3 * most, [&](double force) {
      return hinged_couple(force, q1, c.yield) + hinged_couple(force, q2, c.yield);
    });
    const auto expect_mode = [&](std::size_t mode, double factor, double force) {
      verify({johansen, fmt::format("nail {} mm, mode {}: resistance", c.d, "abcdef"[mode]),
              factor * force, modes.resistance[mode], 1e-6 * force, "N"});
    };
    expect_mode(2, 1.0, stiff);
    expect_mode(3, 1.05, hinge_in_point);
    expect_mode(4, 1.05, hinge_in_side);
    expect_mode(5, 1.15, two_hinges);
  }
}

TEST(PublishedFasteners, EachModeGovernsInItsRange) {
  struct Case {
    char mode;
    double t1, t2, f1, f2, yield;
  };
  // A thin side (a) or point (b); a stiff nail (c); a hinge where timber is thick (d, e); a slender
  // nail in thick timber (f).
  for (const Case c :
       {Case{'a', 5.0, 200.0, 20.0, 20.0, 1e6}, Case{'b', 200.0, 5.0, 20.0, 20.0, 1e6},
        Case{'c', 30.0, 30.0, 20.0, 20.0, 1e6}, Case{'d', 20.0, 80.0, 20.0, 20.0, 6600.0},
        Case{'e', 80.0, 20.0, 20.0, 20.0, 6600.0}, Case{'f', 80.0, 80.0, 20.0, 20.0, 6600.0}}) {
    const JohansenModes modes = johansen_modes(nail(4.0, c.t1, c.t2), c.f1, c.f2, c.yield);
    EXPECT_EQ(modes.governing(), c.mode);
  }
}

// EN 1995-1-1 6.3.2 worked by hand: 47 x 97 C24 over 1.8 m, weak way: i 13.57 mm, lambda
// 132.7, lambda_rel 2.250, k 3.225, k_c 0.1806; k_mod 0.6: 0.1806 x 0.6 x 21 / 1.3 = 1.751 N/mm2.
// Digits accepted: three.
TEST(PublishedFasteners, ALegOfAStandBuckles) {
  const TimberClass c24{"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};
  const TimberMember leg{{47.0, 97.0}, c24, LoadDuration::permanent, ServiceClass::two};
  const Check check = check_timber_compression(leg, 1000.0, 1800.0, 1800.0, partial_factors());
  verify({column, "leg 47x97 C24, 1.8 m, weak way: stress it bears", 1.751, check.capacity, 0.0006,
          "N/mm2"});
}

}  // namespace
}  // namespace deadshore::solver
