#include "solver/job/error.h"
#include "solver/members/error.h"
#include "solver/needle/needle_advice.h"
#include "solver/needle/needle_analysis.h"
#include "solver/needle/needle_checks.h"
#include "tests/solver/needle_samples.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace deadshore::solver {
namespace {

constexpr NeedleSite site{215.0, 2350.0};

const Check& check_named(const std::vector<Check>& checks, const std::string& member,
                         const std::string& name) {
  const auto found = std::find_if(checks.begin(), checks.end(), [&](const Check& check) {
    return check.member == member && check.check == name;
  });
  if (found == checks.end()) throw std::logic_error("no check " + name);
  return *found;
}

// Lever rule; moment under a load spread over the wall's thickness, R (a b / l - t / 8).
TEST(NeedleFrame, ReactionsFollowTheLever) {
  NeedleFrame frame = sample_needle();
  frame.props[0].distance = 300.0;
  frame.props[1].distance = 600.0;
  const double R = 20000.0;
  const NeedleAnswer answer = analyse_needle(frame, site, {R, 0.0});
  const double a = 107.5 + 300.0;
  const double b = 107.5 + 600.0;
  EXPECT_NEAR(answer.props[0].load, R * b / (a + b), 1e-3 * R);
  EXPECT_NEAR(answer.props[1].load, R * a / (a + b), 1e-3 * R);
  EXPECT_NEAR(answer.props[0].place, a, 1e-9);
  EXPECT_NEAR(answer.props[1].place, -b, 1e-9);
  // The largest moment lies where the shear is zero, inside the loaded strip.
  const double into_strip = 215.0 * b / (a + b);  // from the inner face
  const double largest =
      R * b / (a + b) * (a - 107.5 + into_strip) - 0.5 * R / 215.0 * into_strip * into_strip;
  EXPECT_NEAR(answer.largest_moment, largest, 2e-3 * largest);
}

TEST(NeedleFrame, WeightOfTheNeedleGoesToTheProps) {
  const NeedleAnswer bare = analyse_needle(sample_needle(), site, {10000.0, 0.0});
  const NeedleAnswer heavy = analyse_needle(sample_needle(), site, {10000.0, 1.0});
  const double weight = weight_of(sample_needle().member) * length_of(sample_needle(), 215.0);
  EXPECT_NEAR(heavy.props[0].load + heavy.props[1].load - bare.props[0].load - bare.props[1].load,
              weight, 0.01 * weight);
}

TEST(NeedleFrame, ExtensionIsWhatIsLeftBelowTheNeedle) {
  NeedleFrame frame = sample_needle();
  frame.packing = {20.0, 1000.0, 5.0};
  frame.props[0].level = -100.0;
  EXPECT_DOUBLE_EQ(extension_of(frame, frame.props[0], 2350.0),
                   2350.0 - 20.0 - 152.4 - 75.0 + 100.0);
}

TEST(NeedleFrame, PropOutsideItsRangeIsRefused) {
  NeedleFrame frame = sample_needle();
  EXPECT_THROW((void)analyse_needle(frame, {215.0, 4200.0}, {1000.0, 1.0}), MemberError);
  EXPECT_THROW((void)analyse_needle(frame, {215.0, 1500.0}, {1000.0, 1.0}), MemberError);
}

TEST(NeedleFrame, EverySofterPartMakesItSofter) {
  const double reference = needle_stiffness(sample_needle(), site, 10000.0);
  NeedleFrame soft_ground = sample_needle();
  soft_ground.props[0].footing.subgrade_modulus *= 0.5;
  NeedleFrame far_prop = sample_needle();
  far_prop.props[0].distance = far_prop.props[1].distance = 900.0;
  NeedleFrame packed = sample_needle();
  packed.packing = {25.0, 500.0, 5.0};
  for (const NeedleFrame& softer : {soft_ground, far_prop, packed}) {
    EXPECT_LT(needle_stiffness(softer, site, 10000.0), reference);
  }
}

TEST(NeedleFrame, MirroredFrameHasMirroredProps) {
  NeedleFrame frame = sample_needle();
  frame.props[0].distance = 400.0;
  NeedleFrame image = frame;
  image.props[0].side = PropSide::outside;
  image.props[1].side = PropSide::inside;
  const NeedleAnswer a = analyse_needle(frame, site, {15000.0, 1.0});
  const NeedleAnswer b = analyse_needle(image, site, {15000.0, 1.0});
  for (std::size_t i = 0; i < 2; ++i)
    EXPECT_NEAR(a.props[i].load, b.props[i].load, 0.005 * 15000.0);
  EXPECT_NEAR(a.stiffness, b.stiffness, 0.005 * a.stiffness);
}

TEST(NeedleFrame, TailIsHeldDownByAPropAbove) {
  NeedleFrame frame = sample_needle();
  frame.props[1] = frame.props[0];
  frame.props[1].mark = "tail";
  frame.props[1].action = PropAction::down;
  frame.props[1].distance = 1500.0;
  frame.props[1].level = 2350.0 + 75.0 + 2400.0;
  const NeedleAnswer answer = analyse_needle(frame, site, {10000.0, 1.0});
  const double arm = 107.5 + 600.0;
  const double weight = weight_of(frame.member) * length_of(frame, 215.0);
  EXPECT_NEAR(answer.props[1].load, 10000.0 * arm / 900.0, weight);
  EXPECT_NEAR(answer.props[0].load, 10000.0 + answer.props[1].load + weight, 0.1 * weight);
}

TEST(NeedleFrame, WithoutAnythingToHoldItsTailItDoesNotStand) {
  NeedleFrame frame = sample_needle();
  frame.props[1].side = PropSide::inside;
  frame.props[1].distance = 1500.0;
  EXPECT_THROW((void)analyse_needle(frame, site, {10000.0, 0.0}), SolveError);
}

TEST(NeedleChecks, LoadsAreFactoredByTheirPermanentShare) {
  const MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  CheckRules rules;
  const auto moment = [&](double dead_share) {
    const NeedleDemand demand{"N1", "hand", "cut", 20000.0, dead_share};
    return check_named(check_needle(sample_needle(), site, demand, masonry, rules), "N1", "bending")
        .demand;
  };
  const double own_weight = 1.35 * 0.06;  // kNm, about
  EXPECT_NEAR(moment(1.0) / moment(0.0), 1.35 / 1.5, 0.01 * own_weight + 0.002);
}

TEST(NeedleChecks, PropAndGroundAreCheckedUnfactored) {
  const NeedleDemand demand{"N1", "hand", "cut", 20000.0, 0.5};
  const MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  const auto checks = check_needle(sample_needle(), site, demand, masonry, {});
  const Check& prop = check_named(checks, "N1 inner prop", "prop strength");
  EXPECT_NEAR(prop.demand, 10.0, 0.3);
  EXPECT_EQ(prop.stage, "cut");
  EXPECT_TRUE(std::is_sorted(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
    return a.utilisation() > b.utilisation();
  }));
}

TEST(NeedleChecks, SuspendedFloorIsNeverPassed) {
  NeedleFrame frame = sample_needle();
  frame.props[0].footing.suspended_floor = "kitchen floor";
  const NeedleDemand demand{"N1", "hand", "cut", 5000.0, 0.5};
  const auto checks = check_needle(frame, site, demand, {2.4, 800.0, 900.0, 3000.0}, {});
  const bool flagged = std::any_of(checks.begin(), checks.end(), [](const Check& check) {
    return check.member == "N1 inner prop" && check.not_verified && !check.passes();
  });
  EXPECT_TRUE(flagged);
}

TEST(NeedleAdvice, FailingSectionIsExchangedForTheLightestThatPasses) {
  NeedleFrame frame = sample_needle();
  const SteelSection tiny{"RSJ 76x76x13", SectionKind::i_section, 76.2, 76.2, 5.1, 8.4, 9.4};
  const SteelSection fits{"UC 152x152x23", SectionKind::i_section, 152.4, 152.2, 5.8, 6.8, 7.6};
  const SteelSection big{"UC 203x203x46", SectionKind::i_section, 203.2, 203.6, 7.2, 11.0, 10.2};
  frame.member = steel_member(tiny, SteelGrade::s275);
  const std::vector sections = {tiny, fits, big};
  const NeedleDemand demand{"N1", "hand", "cut", 40000.0, 0.5};
  const auto advice = advise(frame, site, demand, {10.0, 800.0, 900.0, 3000.0}, {}, {sections, {}});
  ASSERT_FALSE(advice.empty());
  EXPECT_NE(advice.front().find("lightest section of the tables that passes is UC 152x152x23"),
            std::string::npos)
      << advice.front();
}

}  // namespace
}  // namespace deadshore::solver
