#include "viz/stages/stage_views.h"

#include "made_up_job.h"
#include "made_up_stages.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>
#include <string>

namespace deadshore::viz {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

TEST(StageViews, AreOneOfEachStageAndAnalysisAllOfOneSize) {
  const solver::JobResult result = made_up_staged_result();
  const StageViews views = draw_stage_views(result);
  std::size_t count = 0;
  for (const solver::StageResult& stage : result.stages) count += stage.analyses.size();
  ASSERT_EQ(views.views.size(), count);
  const std::regex size("viewBox=\"([^\"]*)\"");
  std::smatch first;
  ASSERT_TRUE(std::regex_search(views.views.front().svg, first, size));
  for (const StageView& view : views.views) {
    std::smatch found;
    ASSERT_TRUE(std::regex_search(view.svg, found, size));
    EXPECT_EQ(found[1], first[1]);
  }
}

TEST(StageViews, HaveNoWordsAndNoMoreThanTwoDecimals) {
  const StageViews views = draw_stage_views(made_up_staged_result());
  for (const StageView& view : some(views.views)) {
    EXPECT_THAT(view.svg, Not(HasSubstr("<use")));
    EXPECT_FALSE(std::regex_search(view.svg, std::regex("[0-9]\\.[0-9]{3}"))) << view.stage;
  }
}

TEST(StageViews, DifferFromStageToStage) {
  const StageViews views = draw_stage_views(made_up_staged_result());
  EXPECT_NE(views.views.front().svg, views.views.back().svg);
}

TEST(StageViews, HaveASpotForEveryNeedleAndPierInTheirOrderAlongTheWall) {
  const solver::JobResult result = made_up_staged_result();
  const StageViews views = draw_stage_views(result);
  ASSERT_EQ(views.spots.size(), result.job.needles.size() + 2);
  EXPECT_EQ(views.spots.front().name, "left pier");
  EXPECT_EQ(views.spots.back().name, "right pier");
  double across = 0.0;
  for (const SupportSpot& spot : views.spots) {
    EXPECT_GT(spot.across, across) << spot.name;
    EXPECT_LT(spot.across, 1.0) << spot.name;
    EXPECT_TRUE(spot.down > 0.0 && spot.down < 1.0) << spot.name;
    across = spot.across;
  }
}

TEST(StageViews, ScaleRisesFromNothing) {
  const StageViews views = draw_stage_views(made_up_staged_result());
  ASSERT_GE(views.scale.size(), 2U);
  EXPECT_EQ(std::stod(views.scale.front().from), 0.0);
  for (std::size_t i = 1; i < views.scale.size(); ++i) {
    EXPECT_GT(std::stod(views.scale[i].from), std::stod(views.scale[i - 1].from));
    EXPECT_TRUE(std::regex_match(views.scale[i].colour, std::regex("#[0-9a-f]{6}")));
  }
}

TEST(StageViews, AreNoneWithoutStages) {
  EXPECT_TRUE(draw_stage_views(made_up_result()).views.empty());
}

}  // namespace
}  // namespace deadshore::viz
