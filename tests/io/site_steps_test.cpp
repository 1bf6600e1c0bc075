#include "io/sheet/site_steps.h"

#include "tests/io/made_up_result.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
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
  test::work_out_again(result);
  return result;
}

TEST(SiteSteps, FollowTheStagesInTheirOrder) {
  const std::vector<SiteStep> steps = site_steps(test::made_up_staged_result());
  ASSERT_EQ(steps.size(), 5U);
  EXPECT_EQ(steps[1].number, 2);
  EXPECT_EQ(steps[1].stage, "needles in");
  EXPECT_EQ(steps[1].title, "Needles in");
  EXPECT_EQ(steps[3].day, 9.0);
  EXPECT_TRUE(std::ranges::all_of(steps, &SiteStep::stands));
}

TEST(SiteSteps, SayWhatIsDoneWithMarksAndPreload) {
  solver::JobResult result = test::made_up_staged_result();
  result.job.needles[0].preload = 6e3;
  result.stages[1].operations.insert(result.stages[1].operations.begin() + 2,
                                     {solver::Act::preload, solver::NeedleId{0}});
  const std::vector<SiteStep> steps = site_steps(result);
  EXPECT_THAT(steps[1].work,
              ElementsAre("Tighten floor shore.",
                          "Needle in on its props and packed, then jacked, one after the other: "
                          "N1 to 6.0 kN and N2 with a gap of 1 mm left."));
  EXPECT_THAT(steps[2].work, ElementsAre(HasSubstr("x = 1000 to 3000 mm up to 1500 mm")));
  EXPECT_THAT(steps[3].work,
              Contains("Set twin beam (2 \u00d7 UB 203x133x25) on the padstones, 150 mm bearing at "
                       "each end."));
  EXPECT_THAT(steps[4].work, Contains("Ease N1 down slowly and take it out."));
}

TEST(SiteSteps, HoldBeforeMasonryComesOutUntilShoresAndNeedlesAreTight) {
  const std::vector<SiteStep> steps = site_steps(test::made_up_staged_result());
  EXPECT_THAT(steps[1].hold_points,
              ElementsAre("Dead shores tight before any masonry comes out.",
                          "Needles tight, props plumb and set as scheduled.",
                          "Permit to load signed.", "Next step not before day 2."));
}

TEST(SiteSteps, HoldBeforeANeedleIsEasedUntilThePackingIsOldEnough) {
  // Packed on day 9, eased on day 37: 28 days, when it has all its strength.
  const std::vector<SiteStep> steps = site_steps(test::made_up_staged_result());
  EXPECT_THAT(
      steps[3].hold_points,
      ElementsAre("Padstones level.", "Beam level, 150 mm on each padstone, 25 mm gap over it.",
                  "Packing full depth, all along; 28 days old before a needle is eased "
                  "(then 12.0 of 12.0 N/mm\u00b2).",
                  "Permit to strike signed."));
}

TEST(SiteSteps, LetPadstonesCureUntilTheBeamGoesOn) {
  solver::JobResult result = test::made_up_staged_result();
  result.job.analysis.sequence = solver::Sequence::at_once;
  const std::vector<SiteStep> steps = site_steps(result);  // the usual steps: 7 days
  const auto padstones = std::ranges::find(steps, std::string("padstones"), &SiteStep::stage);
  ASSERT_NE(padstones, steps.end());
  EXPECT_THAT(padstones->hold_points,
              Contains("Padstones level; 7 days old before the beam goes on."));
}

TEST(SiteSteps, AJobAtOnceHasTheUsualStepsWithoutFigures) {
  const std::vector<SiteStep> steps = site_steps(test::made_up_result());
  ASSERT_EQ(steps.size(), 3U);
  EXPECT_EQ(steps[1].title, "Needles in");
  EXPECT_EQ(steps[2].title, "Cut");
  for (const SiteStep& step : steps) {
    EXPECT_FALSE(step.worked_out);
    EXPECT_TRUE(std::isnan(step.needle_load));
    EXPECT_TRUE(std::isnan(step.movement.expected));
    EXPECT_TRUE(std::isnan(step.movement.stop_at));
  }
}

TEST(SiteSteps, WorkIsOverOnlyWhenEveryNeedleIsOut) {
  EXPECT_THAT(site_steps(test::made_up_staged_result()).back().hold_points,
              Contains("Marks read for the last time."));
  EXPECT_THAT(site_steps(test::made_up_result()).back().hold_points,
              Contains(HasSubstr("The wall hangs on needles")));
}

TEST(SiteSteps, EndWithoutNumbersWhereTheWallDoesNotStand) {
  const std::vector<SiteStep> steps =
      site_steps(test::made_up_staged_result_that_falls("it spreads"));
  ASSERT_EQ(steps.size(), 3U);
  EXPECT_FALSE(std::ranges::all_of(steps, &SiteStep::stands));
  const SiteStep& last = steps.back();
  EXPECT_FALSE(last.stands);
  EXPECT_THAT(last.work, IsEmpty());
  EXPECT_THAT(last.hold_points, IsEmpty());
  EXPECT_TRUE(last.needle.empty());
  EXPECT_TRUE(std::isnan(last.movement.expected));
  EXPECT_TRUE(std::isnan(last.movement.stop_at));
}

TEST(SiteSteps, TheMostLoadedNeedleIsThatOfAllAnalyses) {
  const std::vector<SiteStep> steps = site_steps(test::made_up_staged_result());
  EXPECT_EQ(steps[2].needle, "N2");
  EXPECT_EQ(steps[2].needle_load, 22e3);
}

TEST(SiteSteps, HaveTheStopValuesOfTheMarksAndAskTheEngineerPastThem) {
  // Slight damage at 1.008 mm, so no stop value is above 1.0 mm.
  const std::vector<SiteStep> steps = site_steps(sunk_by({0.0, 0.1, 0.3, 0.4, 0.7}));
  ASSERT_EQ(steps.size(), 5U);
  EXPECT_TRUE(std::isnan(steps[0].movement.stop_at));  // sets the zero
  EXPECT_DOUBLE_EQ(steps[1].movement.stop_at, 1.0);
  EXPECT_FALSE(steps[3].movement.past_stop);
  EXPECT_NEAR(steps[4].movement.expected, 1.4, 1e-12);
  EXPECT_TRUE(steps[4].movement.past_stop);
}

TEST(SiteMarks, AreNamedAndPlacedFromLeftToRight) {
  const solver::JobResult result = test::made_up_staged_result();
  std::vector<std::string> places;
  for (const solver::MonitoringMark& mark : result.monitoring.marks) {
    places.push_back(mark_name(places.size()) + " " + mark_place(result.job, mark));
  }
  EXPECT_THAT(places, ElementsAre("M1 left pier", "M2 over N1", "M3 middle of the cut",
                                  "M4 over N2", "M5 right pier"));
}

}  // namespace
}  // namespace deadshore::io
