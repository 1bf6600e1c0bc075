#include "viz/figures.h"

#include "figure_facts.h"
#include "made_up_frame.h"
#include "made_up_job.h"
#include "viz/drawings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::viz {
namespace {

using solver::JobResult;

TEST(Figures, ComeInTheirOrderAndAreSound) {
  const JobResult result = made_up_result();
  const auto figures = draw_figures(result);
  EXPECT_THAT(names_of(figures),
              testing::ElementsAre("elevation", "plan", "compression-uncracked",
                                   "load-flow-uncracked", "deformed-uncracked",
                                   "compression-cracked", "load-flow-cracked", "deformed-cracked",
                                   "spread-N1", "spread-N2", "spread-N3", "needle-loads"));
  expect_sound(figures);
}

TEST(Figures, OfOneResultAreTheSameBytes) {
  const auto once = draw_figures(made_up_result());
  const auto twice = draw_figures(made_up_result());
  ASSERT_EQ(once.size(), twice.size());
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_TRUE(once[i].svg == twice[i].svg) << once[i].name;
    EXPECT_TRUE(once[i].png == twice[i].png) << once[i].name;
  }
}

TEST(Figures, ElevationHasTheLoadThatEachNeedleIsDesignedFor) {
  JobResult by_hand = made_up_result();
  by_hand.hand.needles[0].total = 50e3;
  JobResult unyielding = made_up_result();
  unyielding.comparison[0].unyielding = 50e3;
  const auto elevation = [](const JobResult& result) { return draw_figures(result).front(); };
  EXPECT_EQ(elevation(by_hand).name, "elevation");
  EXPECT_TRUE(elevation(by_hand).svg == elevation(unyielding).svg);
  EXPECT_FALSE(elevation(by_hand).svg == elevation(made_up_result()).svg);
}

TEST(Figures, OfAWallThatDoesNotStandShowNoStresses) {
  JobResult result = made_up_result();
  result.stages[0].analyses[1].no_equilibrium = "nothing holds the right end";
  for (auto& row : result.comparison) row.cracked = std::nan("");
  const auto figures = draw_figures(result);
  EXPECT_THAT(names_of(figures), testing::ElementsAre("elevation", "plan", "compression-uncracked",
                                                      "load-flow-uncracked", "deformed-uncracked",
                                                      "compression-cracked", "spread-N1",
                                                      "spread-N2", "spread-N3", "needle-loads"));
  EXPECT_THAT(figures[5].caption, testing::HasSubstr("no equilibrium"));
  expect_sound(figures);
}

TEST(Figures, LeaveBlankWhatIsNotFinite) {
  JobResult result = made_up_result();
  for (auto& panel : result.stages[0].analyses) {
    for (std::size_t i = 0; i < panel.fields.node_stress.size(); i += 7)
      panel.fields.node_stress[i].yy = i % 2 == 0 ? std::nan("") : HUGE_VAL;
    for (std::size_t i = 0; i < panel.fields.quad_stress.size(); i += 5)
      panel.fields.quad_stress[i].xy = std::nan("");
    panel.fields.displacement[3] = std::nan("");
  }
  expect_sound(draw_figures(result));
  result.stages[0].analyses[0].no_equilibrium = "it slides";
  result.stages[0].analyses[1].fields = {};
  expect_sound(draw_figures(result));
}

TEST(Figures, TakeNamesInAnyScriptAndLength) {
  JobResult result = made_up_result();
  result.job.title = "Żabia 7, Łódź – 橋の下 & <\"left\"> " + std::string(300, 'w');
  result.job.wall.openings[0].name = "Überlängenbezeichnung der Fensteröffnung im Treppenhaus";
  result.job.lintels[0].shape = result.job.wall.lintels[0];
  result.job.line_loads[0].name = std::string(90, 'M');
  result.job.needles[0].name = "Nadel №1 ganz außen links";
  result.comparison[0].needle = result.job.needles[0].name;
  expect_sound(draw_figures(result));
}

TEST(Figures, OfABareWallWithTheCutAtItsEnd) {
  JobResult result = made_up_result();
  result.job.wall.cut.left = 0.0;
  result.job.left_end = solver::WallEnd::free;
  result.job.wall.openings.clear();
  result.job.wall.lintels.clear();
  result.job.lintels.clear();
  result.job.line_loads.clear();
  result.job.point_loads.clear();
  expect_sound(draw_figures(result));
}

TEST(Figures, NamesEndInTheStageWhereThereAreSeveral) {
  JobResult result = made_up_result();
  result.stages.push_back(result.stages.front());
  result.stages.back().name = "beam in";
  EXPECT_THAT(names_of(draw_figures(result)), testing::Contains("load-flow-cracked-beam-in"));
}

TEST(Figures, OfNeedleFramesComeLastWithTheMostLoadedNeedleOfEach) {
  JobResult result = made_up_result();
  result.comparison[1].hand = 40e3;
  put_on_frame(result, made_up_frame("back wall"));
  result.job.needle_frames.push_back(made_up_frame("loads"));
  result.job.needle_frames.push_back(made_up_frame("that no needle stands on"));
  result.job.needles[2].frame = 1;
  const auto figures = draw_figures(result);
  ASSERT_EQ(figures.size(), 14U);
  EXPECT_EQ(figures[12].name, "needle-back-wall");
  EXPECT_THAT(figures[12].caption, testing::HasSubstr("at N2 with 40.0 kN"));
  EXPECT_EQ(figures[13].name, "needle-loads-2");  // "needle-loads" are the bars
  EXPECT_THAT(figures[13].caption, testing::HasSubstr("at N3"));
  expect_sound(figures);
}

TEST(Figures, OfUnusualNeedleFramesAreSound) {
  JobResult result = made_up_result();
  solver::NeedleFrame frame = made_up_frame(std::string(120, 'W'));
  frame.leaves = {{0.0, 102.5}, {177.5, 280.0}};
  frame.packing.thickness = 0.0;
  frame.member = solver::TimberMember{{225.0, 225.0}, {"C24"}};
  frame.props[0].footing.suspended_floor = "the boarded floor over the old coal cellar";
  frame.props.push_back(frame.props[1]);
  frame.props.back().mark = "tail, wedged under the landing";
  frame.props.back().action = solver::PropAction::down;
  frame.props.back().level = 4300.0;
  frame.props.push_back(frame.props[1]);
  frame.props.back().mark = "second inner one";
  frame.props.back().distance += 250.0;
  put_on_frame(result, frame);
  expect_sound(draw_figures(result));
  for (solver::NeedleDesign& design : result.needle_designs) {
    design.answer.stations[3].moment = std::nan("");
    design.answer.props[0].load = std::nan("");
    design.answer.bending_deflection = HUGE_VAL;
  }
  expect_sound(draw_figures(result));
  for (solver::NeedleDesign& design : result.needle_designs) design.answer = {};
  expect_sound(draw_figures(result));
}

TEST(CompressionScale, IsOneForAllAnalysesAndLeavesPeaksToTheOpenBand) {
  JobResult result = made_up_result();
  const BandScale both = compression_scale(result);
  double largest = 0.0;
  for (const auto& stress : result.stages[0].analyses[0].fields.node_stress)
    largest = std::max(largest, -solver::principal_of(stress).minor);
  EXPECT_LT(both.upper(), largest);
  result.stages[0].analyses.pop_back();  // the milder one
  EXPECT_DOUBLE_EQ(compression_scale(result).step, both.step);
}

}  // namespace
}  // namespace deadshore::viz
