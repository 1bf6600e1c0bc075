#include "viz/section/frame_view.h"

#include "made_up_frame.h"
#include "made_up_job.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace deadshore::viz {
namespace {

constexpr double legend_height = 24.0;

ShownFrame shown_with(const solver::NeedleFrame& frame) {
  solver::JobResult result = made_up_result();
  put_on_frame(result, frame);
  return shown_frame(result, result.needle_designs[1]);
}

TEST(FrameView, KnowsTheFrameOfItsNeedleAndHowManyShareIt) {
  const ShownFrame shown = shown_with(made_up_frame("back wall"));
  EXPECT_EQ(shown.frame.name, "back wall");
  EXPECT_EQ(shown.design.demand.needle, "N2");
  EXPECT_EQ(shown.needles, 3);
}

TEST(FrameView, NeedleHangsUnderThePacking) {
  const ShownFrame shown = shown_with(made_up_frame("back wall"));
  EXPECT_DOUBLE_EQ(shown.needle_top(), 2200.0 - 50.0);
  EXPECT_DOUBLE_EQ(shown.needle_bottom(), 2200.0 - 50.0 - 152.4);
}

TEST(FrameView, WithoutAnAnswerTheNeedleRunsPastItsPropsByItsOverhang) {
  ShownFrame shown = shown_with(made_up_frame("back wall"));
  shown.design.answer.stations.clear();
  EXPECT_DOUBLE_EQ(shown.reach().from, -0.5 * 215.0 - 900.0 - 150.0);
  EXPECT_DOUBLE_EQ(shown.reach().to, 0.5 * 215.0 + 600.0 + 150.0);
  EXPECT_DOUBLE_EQ(shown.reach().length(), solver::length_of(shown.frame, 215.0));
}

TEST(FrameView, SectionAndDiagramsFitThePage) {
  for (const double distance : {300.0, 900.0, 4000.0}) {
    solver::NeedleFrame frame = made_up_frame("back wall");
    frame.props[0].distance = distance;
    const ShownFrame shown = shown_with(frame);
    const FramePage page = fit_frame(shown, legend_height);
    EXPECT_LE(page.size.height, 610.0);
    EXPECT_GT(page.left_chain, 90.0);
    EXPECT_LT(page.right_chain, page_width - 80.0);
    EXPECT_GT(page.view.down(page.wall_top), heading_height);
    EXPECT_LT(page.view.down(page.deepest), page.level_chain);
    EXPECT_LT(page.level_chain, page.diagrams);
    EXPECT_DOUBLE_EQ(page.legend + legend_height + 2.0, page.size.height);
  }
}

TEST(FrameView, LoadsOfPropsCloseTogetherStandInTwoRows) {
  solver::NeedleFrame frame = made_up_frame("back wall");
  frame.props.push_back(frame.props[1]);
  frame.props[2].distance += 250.0;
  ShownFrame shown = shown_with(frame);
  shown.design.answer.props.push_back(shown.design.answer.props[1]);
  EXPECT_THAT(fit_frame(shown, legend_height).foot_rows, testing::ElementsAre(0, 0, 1));
  shown.frame.props[2].distance += 900.0;
  EXPECT_THAT(fit_frame(shown, legend_height).foot_rows, testing::ElementsAre(0, 0, 0));
}

TEST(FrameView, MakesRoomOverThePropThatHoldsATailDown) {
  solver::NeedleFrame frame = made_up_frame("back wall");
  frame.props[1].action = solver::PropAction::down;
  frame.props[1].level = 5000.0;
  const FramePage page = fit_frame(shown_with(frame), legend_height);
  EXPECT_GT(page.view.down(5000.0), heading_height + 40.0);
}

}  // namespace
}  // namespace deadshore::viz
