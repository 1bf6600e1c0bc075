// EN 1065, characteristic strength of adjustable telescopic steel props, kN with l in m:
// A 51.0 l_max/l^2 <= 44.0, B 68.0 l_max/l^2 <= 51.0, C 102.0 l_max/l^2 <= 59.5, D 34.0, E 51.0.
// B's formula and D's value read in public copies; the rest from memory, unverified. Values
// calculated from the formulas. Accepted: the digits given.

#include "solver/checks/prop_checks.h"
#include "solver/members/error.h"
#include "solver/members/prop.h"
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

constexpr Source en1065{Field::props, Certainty::by_hand,
                        "EN 1065, formulas from memory but B and D"};
constexpr Source geometry{Field::props, Certainty::derived, "Geometry of a ring"};

Prop prop_of(PropClass prop_class, double longest) {
  Prop prop;
  prop.name = "prop";
  prop.shortest = 1000.0;
  prop.longest = longest;
  prop.outer = {60.3, 3.2};
  prop.inner = {48.3, 3.2};
  prop.prop_class = prop_class;
  return prop;
}

TEST(En1065, ClassBOf35DecimetresAtFiveExtensions) {
  const Prop b35 = prop_of(PropClass::b, 3500.0);
  const std::array<std::array<double, 3>, 5> expected{{{2000.0, 51.0, 30.9},
                                                       {2500.0, 38.08, 23.08},
                                                       {2750.0, 31.47, 19.07},
                                                       {3000.0, 26.44, 16.03},
                                                       {3500.0, 19.43, 11.77}}};
  for (const auto& [extension, strength, safe] : expected) {
    const std::string at = fmt::format("B35 at {} m: ", extension / 1e3);
    verify({en1065, at + "characteristic strength", strength,
            characteristic_strength(b35, extension) / 1e3, 0.006, "kN"});
    verify({en1065, at + "safe load, over 1.65", safe,
            safe_load(b35, extension, SafeLoadBasis::en_1065).load / 1e3, 0.01, "kN"});
  }
}

TEST(En1065, TheOtherClassesFollowTheirOwnLines) {
  verify({en1065, "A30 at 3 m: characteristic strength", 17.0,
          characteristic_strength(prop_of(PropClass::a, 3000.0), 3000.0) / 1e3, 1e-9, "kN"});
  verify({en1065, "A30 at 1.5 m: characteristic strength", 44.0,
          characteristic_strength(prop_of(PropClass::a, 3000.0), 1500.0) / 1e3, 1e-9, "kN"});
  verify({en1065, "C40 at 3 m: characteristic strength", 45.33,
          characteristic_strength(prop_of(PropClass::c, 4000.0), 3000.0) / 1e3, 0.005, "kN"});
  verify({en1065, "C40 at 2.3 m: characteristic strength", 59.5,
          characteristic_strength(prop_of(PropClass::c, 4000.0), 2300.0) / 1e3, 1e-9, "kN"});
  for (const double extension : {2000.0, 4500.0}) {
    EXPECT_EQ(characteristic_strength(prop_of(PropClass::d, 4500.0), extension), 34e3);
    EXPECT_EQ(characteristic_strength(prop_of(PropClass::e, 4500.0), extension), 51e3);
  }
}

// Euler loads of pinned tubes, pi^2 E I / l^2 with E 210 GPa, calculated.
TEST(En1065, TubesOfPropsHaveTheAreaAndInertiaOfTheTables) {
  const Tube inner{48.3, 3.2};
  const Tube outer{60.3, 3.2};
  verify({geometry, "tube 48.3x3.2: area", 453.0, inner.area(), 0.5, "mm2"});
  verify({geometry, "tube 48.3x3.2: I", 115857.0, inner.inertia(), 10.0, "mm4"});
  verify({geometry, "tube 60.3x3.2: I", 234682.0, outer.inertia(), 20.0, "mm4"});
}

}  // namespace
}  // namespace deadshore::solver
