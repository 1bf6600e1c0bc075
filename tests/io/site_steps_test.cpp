#include "io/sheet/site_steps.h"

#include "tests/io/made_up_result.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <initializer_list>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

/// The staged result with the whole wall sunk by so many mm in each stage; the cracked one twice as
/// much.
solver::JobResult sunk_by(std::initializer_list<double> settlements) {
  solver::JobResult result = test::made_up_staged_result();
  auto stage = result.stages.begin();
  for (const double settlement : settlements) {
    for (solver::PanelResult& analysis : stage->analyses) {
      const bool cracked = analysis.model == solver::MasonryModel::cracked;
      for (std::size_t i = 1; i < analysis.fields.displacement.size(); i += 2) {
        analysis.fields.displacement[i] -= cracked ? 2.0 * settlement : settlement;
      }
    }
    ++stage;
  }
  return result;
}

TEST(SiteSteps, FollowTheStagesInTheirOrder) {
  const SitePlan plan = site_plan(test::made_up_staged_result());
  ASSERT_EQ(plan.steps.size(), 5U);
  EXPECT_EQ(plan.steps[1].number, 2);
  EXPECT_EQ(plan.steps[1].stage, "needles in");
  EXPECT_EQ(plan.steps[1].title, "Needles in");
  EXPECT_EQ(plan.steps[3].day, 9.0);
  EXPECT_TRUE(plan.stands());
}

TEST(SiteSteps, SayWhatIsDoneWithMarksAndPreload) {
  solver::JobResult result = test::made_up_staged_result();
  result.job.needles[0].preload = 6e3;
  result.stages[1].operations.insert(result.stages[1].operations.begin() + 2,
                                     {solver::Act::preload, "N1"});
  const SitePlan plan = site_plan(result);
  EXPECT_THAT(plan.steps[1].work,
              ElementsAre("Tighten floor shore.",
                          "Needle in on its props and packed, then jacked, one after the other: "
                          "N1 to 6.0 kN and N2 with a gap of 1 mm left."));
  EXPECT_THAT(plan.steps[2].work, ElementsAre(HasSubstr("x = 1000 to 3000 mm up to 1500 mm")));
  EXPECT_THAT(plan.steps[3].work,
              Contains("Set twin beam (2 \u00d7 UB 203x133x25) on the padstones, 150 mm bearing at "
                       "each end."));
  EXPECT_THAT(plan.steps[4].work, Contains("Ease N1 down slowly and take it out."));
}

TEST(SiteSteps, HoldBeforeMasonryComesOutUntilShoresAndNeedlesAreTight) {
  const SitePlan plan = site_plan(test::made_up_staged_result());
  EXPECT_THAT(plan.steps[1].hold_points,
              ElementsAre("Dead shores tight before any masonry comes out.",
                          "Needles tight, props plumb and set as scheduled.",
                          "Permit to load signed.", "Next step not before day 2."));
}

TEST(SiteSteps, HoldBeforeANeedleIsEasedUntilThePackingIsOldEnough) {
  // Packed on day 9, eased on day 37: 28 days, when it has all its strength.
  const SitePlan plan = site_plan(test::made_up_staged_result());
  EXPECT_THAT(
      plan.steps[3].hold_points,
      ElementsAre("Padstones level.", "Beam level, 150 mm on each padstone, 25 mm gap over it.",
                  "Packing full depth, all along; 28 days old before a needle is eased "
                  "(then 12.0 of 12.0 N/mm\u00b2).",
                  "Permit to strike signed."));
}

TEST(SiteSteps, LetPadstonesCureUntilTheBeamGoesOn) {
  solver::JobResult result = test::made_up_staged_result();
  result.job.analysis.sequence = solver::Sequence::at_once;
  const SitePlan plan = site_plan(result);  // the usual steps: 7 days
  const auto padstones = std::ranges::find(plan.steps, std::string("padstones"), &SiteStep::stage);
  ASSERT_NE(padstones, plan.steps.end());
  EXPECT_THAT(padstones->hold_points,
              Contains("Padstones level; 7 days old before the beam goes on."));
}

TEST(SiteSteps, AJobAtOnceHasTheUsualStepsWithoutFigures) {
  const SitePlan plan = site_plan(test::made_up_result());
  ASSERT_EQ(plan.steps.size(), 3U);
  EXPECT_EQ(plan.steps[1].title, "Needles in");
  EXPECT_EQ(plan.steps[2].title, "Cut");
  for (const SiteStep& step : plan.steps) {
    EXPECT_FALSE(step.worked_out);
    EXPECT_TRUE(std::isnan(step.needle_load));
    EXPECT_TRUE(std::isnan(step.movement));
    EXPECT_TRUE(std::isnan(step.stop_at));
  }
}

TEST(SiteSteps, WorkIsOverOnlyWhenEveryNeedleIsOut) {
  EXPECT_THAT(site_plan(test::made_up_staged_result()).steps.back().hold_points,
              Contains("Marks read for the last time."));
  EXPECT_THAT(site_plan(test::made_up_result()).steps.back().hold_points,
              Contains(HasSubstr("The wall hangs on needles")));
}

TEST(SiteSteps, EndWithoutNumbersWhereTheWallDoesNotStand) {
  const SitePlan plan = site_plan(test::made_up_staged_result_that_falls("it spreads"));
  ASSERT_EQ(plan.steps.size(), 3U);
  EXPECT_FALSE(plan.stands());
  const SiteStep& last = plan.steps.back();
  EXPECT_FALSE(last.stands);
  EXPECT_THAT(last.work, IsEmpty());
  EXPECT_THAT(last.hold_points, IsEmpty());
  EXPECT_TRUE(last.needle.empty());
  EXPECT_TRUE(std::isnan(last.movement));
  EXPECT_TRUE(std::isnan(last.stop_at));
}

TEST(SiteSteps, TheMostLoadedNeedleIsThatOfAllAnalyses) {
  const SitePlan plan = site_plan(test::made_up_staged_result());
  EXPECT_EQ(plan.steps[2].needle, "N2");
  EXPECT_EQ(plan.steps[2].needle_load, 22e3);
}

TEST(Monitoring, MarksAreOverNeedlesMiddleAndPiersFromLeftToRight) {
  const auto marks = monitoring_marks(test::made_up_staged_result());
  std::vector<std::string> places;
  for (const MonitoringMark& mark : marks) {
    places.push_back(mark.name + " " + mark.where);
    EXPECT_EQ(mark.at.y, 1500.0);
  }
  EXPECT_THAT(places, ElementsAre("M1 left pier", "M2 over N1", "M3 middle of the cut",
                                  "M4 over N2", "M5 right pier"));
}

TEST(Monitoring, MovementCountsFromTheFirstStageAndIsTheLargestOfAllAnalyses) {
  const auto marks = monitoring_marks(sunk_by({0.2, 0.1, 0.6, 0.7, 0.9}));
  for (const MonitoringMark& mark : some(marks)) {
    ASSERT_EQ(mark.movement.size(), 5U);
    EXPECT_EQ(mark.movement[0], 0.0);
    EXPECT_NEAR(mark.movement[1], -0.1, 1e-12);  // raised; the uncracked wall by less
    EXPECT_NEAR(mark.movement[2], 0.8, 1e-12);
    EXPECT_NEAR(mark.movement[4], 1.4, 1e-12);
  }
}

TEST(Monitoring, NothingIsExpectedOfAWallWhoseFirstStageIsNotAsBuilt) {
  solver::JobResult result = sunk_by({0.2, 0.1, 0.6, 0.7, 0.9});
  result.stages.front().operations = {{solver::Act::fit, "N1"}};
  for (const SiteStep& step : some(site_plan(result).steps)) {
    EXPECT_TRUE(std::isnan(step.movement));
    EXPECT_TRUE(std::isnan(step.stop_at));
    EXPECT_FALSE(is_past_stop(step));
  }
}

// A deep beam of 2.0 x 1.5 m over the cut, E / G = 2.4, sagging. By Burland & Wroth 1974 its
// bending strain is (D / L) / (L / 12 t + 3 I E / (2 t L H G)) with t = 0.75 m, I = H^3 /
// 12: 1.4876 D / L. Category 2 begins at 0.075%: Boscardin & Cording 1989.
TEST(Monitoring, SlightDamageComesWithTheStrainOfTheDamageScale) {
  const solver::Job job = test::made_up_result().job;
  EXPECT_NEAR(movement_at_slight_damage(job), 0.00075 / 1.4876 * 2000.0, 5e-4);
}

TEST(StopValue, IsHalfAsMuchAgainRoundedUpToHalfAMillimetre) {
  EXPECT_DOUBLE_EQ(stop_value(0.8, 9.0), 1.5);  // 1.2
  EXPECT_DOUBLE_EQ(stop_value(1.0, 9.0), 1.5);
  EXPECT_DOUBLE_EQ(stop_value(1.001, 9.0), 2.0);
}

TEST(StopValue, IsNoLessThanOneMillimetre) {
  EXPECT_DOUBLE_EQ(stop_value(0.2, 9.0), 1.0);
  EXPECT_DOUBLE_EQ(stop_value(0.0, 9.0), 1.0);
  EXPECT_DOUBLE_EQ(stop_value(-0.3, 9.0), 1.0);
}

TEST(StopValue, NeverPassesWhereDamageIsSlight) {
  EXPECT_DOUBLE_EQ(stop_value(2.0, 2.59), 2.5);
  EXPECT_DOUBLE_EQ(stop_value(0.2, 0.78), 0.7);
}

TEST(StopValue, IsNotGivenWhereMoreIsExpectedOrNothingIsKnown) {
  EXPECT_TRUE(std::isnan(stop_value(2.6, 2.59)));
  EXPECT_TRUE(std::isnan(stop_value(not_known, 2.59)));
}

TEST(SiteSteps, StopValuesComeByTheRuleAndTheEngineerIsAskedPastIt) {
  // Slight damage at 1.008 mm, so no stop value is above 1.0 mm.
  const SitePlan plan = site_plan(sunk_by({0.0, 0.1, 0.3, 0.4, 0.7}));
  EXPECT_TRUE(std::isnan(plan.steps[0].stop_at));  // sets the zero
  EXPECT_DOUBLE_EQ(plan.steps[1].stop_at, 1.0);
  EXPECT_DOUBLE_EQ(plan.steps[2].stop_at, 1.0);
  EXPECT_FALSE(is_past_stop(plan.steps[3]));
  EXPECT_NEAR(plan.steps[4].movement, 1.4, 1e-12);
  EXPECT_TRUE(is_past_stop(plan.steps[4]));
  EXPECT_FALSE(is_past_stop(plan.steps[0]));
}

}  // namespace
}  // namespace deadshore::io
