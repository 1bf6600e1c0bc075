#include "viz/stages/staged_figures.h"

#include "figure_facts.h"
#include "made_up_job.h"
#include "made_up_stages.h"
#include "png_facts.h"
#include "viz/drawings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using testing::ElementsAre;

constexpr double millimetre = 72.0 / 25.4;

/// Quadrilaterals of the cut, far from any that stay.
std::vector<char> middle_of_cut(const JobResult& result) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  std::vector<char> marks;
  for (int quad = 0; quad < mesh.quad_count(); ++quad)
    marks.push_back(mesh.region_of(quad).kind == mesh::RegionKind::cut ? 1 : 0);
  return marks;
}

/// Puts absurd stresses where there is no masonry any more.
void spoil_the_cut(JobResult& result) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const std::vector<char> cut = middle_of_cut(result);
  for (solver::StageResult& stage : result.stages)
    for (solver::PanelResult& panel : stage.analyses) {
      if (panel.base_cut > 0.0) continue;
      const std::vector<char> there = nodes_there(mesh, quads_there(mesh, panel.fields));
      for (int node = 0; node < mesh.node_count(); ++node)
        if (there[node] == 0) panel.fields.node_stress[node] = {-500.0, -900.0, 0.0};
      for (int quad = 0; quad < mesh.quad_count(); ++quad)
        if (cut[quad] != 0) panel.fields.quad_stress[quad] = {-500.0, -900.0, 0.0};
    }
}

TEST(StagedFigures, ComeInTheirOrderAndAreSound) {
  const JobResult result = made_up_staged_result();
  const auto figures = draw_figures(result);
  EXPECT_THAT(
      names_of(figures),
      ElementsAre("elevation", "plan", "stages", "compression-uncracked-cut",
                  "load-flow-uncracked-cut", "deformed-uncracked-cut", "compression-cracked-cut",
                  "load-flow-cracked-cut", "deformed-cracked-cut", "compression-uncracked-finished",
                  "load-flow-uncracked-finished", "deformed-uncracked-finished",
                  "compression-cracked-finished", "load-flow-cracked-finished",
                  "deformed-cracked-finished", "reactions-by-stage", "cracks-packed", "mechanism",
                  "beam", "spread-N1", "spread-N2", "spread-N3", "needle-loads"));
  expect_sound(figures);
  EXPECT_THAT(figures[16].caption, testing::HasSubstr("1.9 mm over needle N1"));
  EXPECT_THAT(figures[16].caption, testing::HasSubstr("2 by crack width): slight"));
  EXPECT_THAT(figures[17].caption, testing::HasSubstr("bore no tension: at 1.4 times the loads"));
  EXPECT_THAT(figures[18].caption, testing::HasSubstr("N2 and N3 out"));
}

TEST(StagedFigures, ScalesDoNotCountMasonryThatIsOut) {
  JobResult result = made_up_staged_result();
  const double step = compression_scale(result).step;
  const double heavy = flow_scale(result).heavy;
  spoil_the_cut(result);
  EXPECT_DOUBLE_EQ(compression_scale(result).step, step);
  EXPECT_DOUBLE_EQ(flow_scale(result).heavy, heavy);
}

TEST(StagedFigures, DrawNoStressWhereMasonryIsOut) {
  JobResult result = made_up_staged_result();
  const auto shown = shown_stages(result);
  const BandScale scale = compression_scale(result);
  const auto draw = [&] {
    const auto& panel = result.stages[4].analyses[0];
    return to_svg(compression_bands(result, panel, shown[4], scale)) +
           to_svg(load_flow(result, panel, shown[4], flow_scale(result)));
  };
  const std::string before = draw();
  spoil_the_cut(result);
  EXPECT_TRUE(draw() == before);
}

TEST(StagedFigures, DrawANeedleOnlyWhereItIsIn) {
  JobResult result = made_up_staged_result();
  auto shown = shown_stages(result);
  const auto draw = [&](std::size_t stage) {
    return to_svg(
        load_flow(result, result.stages[stage].analyses[0], shown[stage], flow_scale(result)));
  };
  const std::string before = draw(7);
  result.job.needles[0].name = "another name";  // taken out by then
  EXPECT_TRUE(draw(7) == before);
  result.job.needles[1].name = "another name";  // still in
  EXPECT_FALSE(draw(7) == before);
}

TEST(StageStrip, IsALandscapePageForAnyNumberOfStages) {
  const JobResult all = made_up_staged_result();
  for (const std::size_t count : {2U, 3U, 6U, 10U, 15U}) {
    JobResult result = all;
    result.stages.resize(std::min(count, all.stages.size()));
    while (result.stages.size() < count) {
      result.stages.push_back(result.stages.back());
      result.stages.back().operations.clear();
    }
    const Size size = stage_strip(result, compression_scale(result)).size;
    EXPECT_NEAR(size.width, 277.0 * millimetre, 0.01);
    EXPECT_LE(size.height, 180.0 * millimetre + 0.01) << count;
  }
}

TEST(StagedFigures, ShowTheStageOfMostOnTheNeedlesTheLastAndThoseThatFall) {
  JobResult result = made_up_staged_result();
  EXPECT_THAT(stages_to_draw(result), ElementsAre(4, 9));
  result.stages[6].analyses[1].no_equilibrium = "it slides";
  EXPECT_THAT(stages_to_draw(result), ElementsAre(4, 6, 9));
}

TEST(StagedFigures, ShowTheCutWhereAnotherStageBringsHardlyMoreOnTheNeedles) {
  JobResult result = made_up_staged_result();
  for (const std::size_t stage : {3U, 4U, 5U}) {
    result.stages[stage] = result.stages[4];
    result.stages[stage].name = "stage " + std::to_string(stage);
  }
  EXPECT_THAT(stages_to_draw(result), ElementsAre(3, 9)) << "the first of them";
  result.stages[3].state = made_up_staged_result().stages[3].state;  // the cut is not out yet
  for (solver::NeedleReaction& needle : result.stages[5].analyses[0].needles) needle.force *= 1.005;
  for (solver::NeedleReaction& needle : result.stages[5].analyses[1].needles) needle.force *= 1.005;
  EXPECT_THAT(stages_to_draw(result), ElementsAre(4, 9));
}

TEST(StagedFigures, ShowAWallThatFallsWithoutStresses) {
  JobResult result = made_up_staged_result();
  result.job.analysis.masonry = {solver::MasonryModel::cracked};
  result.stages.resize(5);
  for (solver::StageResult& stage : result.stages) stage.analyses.erase(stage.analyses.begin());
  result.stages[4].analyses[0].no_equilibrium = "it slides";
  const auto figures = draw_figures(result);
  EXPECT_THAT(names_of(figures), testing::Contains("compression-cracked-cut"));
  EXPECT_THAT(names_of(figures), testing::Not(testing::Contains("load-flow-cracked-cut")));
  expect_sound(figures);
}

TEST(StagedFigures, PickTheGoverningStages) {
  JobResult result = made_up_staged_result();
  EXPECT_EQ(weakest_stage(result), 4U);
  result.stages[5].safety->factor = 0.8;
  EXPECT_EQ(weakest_stage(result), 5U);
  result.stages[5].safety->mechanism.clear();
  EXPECT_EQ(weakest_stage(result), 4U);
  EXPECT_EQ(largest_beam_moment(result)->stage, 8U);
  result.stages[9].analyses[1].cracks[0].width = 7.0;
  ASSERT_EQ(widest_cracks(result).size(), 1U);  // the uncracked analysis has none
  EXPECT_EQ(widest_cracks(result)[0].stage, 9U);
}

TEST(StagedFigures, LeaveOutWhatThereIsNothingToShowOf) {
  JobResult result = made_up_staged_result();
  result.stages.resize(5);
  for (solver::StageResult& stage : result.stages) {
    stage.safety.reset();
    for (solver::PanelResult& panel : stage.analyses) panel.cracks.clear();
  }
  FigureList figures;
  add_staged_figures(figures, result);
  EXPECT_THAT(names_of(figures.draw()), ElementsAre("reactions-by-stage"));
}

TEST(StagedFigures, LeaveBlankWhatIsNotFinite) {
  JobResult result = made_up_staged_result();
  for (solver::StageResult& stage : result.stages) {
    stage.safety->mechanism[5] = std::nan("");
    for (solver::PanelResult& panel : stage.analyses) {
      panel.needles[1].force = std::nan("");
      panel.fields.node_stress[40].yy = HUGE_VAL;
      if (panel.beam) panel.beam->stations[3].moment = std::nan("");
      if (!panel.cracks.empty()) panel.cracks[1].from.x = std::nan("");
    }
  }
  FigureList figures;
  add_strip(figures, result, compression_scale(result));
  add_staged_figures(figures, result);
  expect_sound(figures.draw());
}

TEST(FigureList, GivesNoNameTwice) {
  const Drawing blank{{page_width, 20.0}, [](Canvas&) {}};
  FigureList figures;
  for (int i = 0; i < 3; ++i) figures.add(blank, "beam", "nothing");
  EXPECT_THAT(names_of(figures.draw()), ElementsAre("beam", "beam-2", "beam-3"));
}

TEST(ShownStages, WithoutAnOrderOfWorkHaveTheCutOutAndAllNeedlesIn) {
  const auto shown = shown_stages(made_up_result());
  ASSERT_EQ(shown.size(), 1U);
  EXPECT_TRUE(shown[0].words.empty());
  EXPECT_TRUE(shown[0].works.cut_out);
  for (const solver::NeedleState needle : shown[0].works.needles)
    EXPECT_TRUE(solver::is_in(needle));
}

}  // namespace
}  // namespace deadshore::viz
