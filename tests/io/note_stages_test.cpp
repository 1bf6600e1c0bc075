#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using nlohmann::json;
using test::PageRow;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

std::string note_of(const solver::JobResult& result) {
  return test::note_html(result, {}, {"wall.toml", "title = 1"});
}

std::string chapter(const solver::JobResult& result, const std::string& id) {
  return test::section_of(note_of(result), id);
}

std::vector<PageRow> rows_of(const solver::JobResult& result, const std::string& table) {
  const test::Page page = test::parsed(note_of(result));
  return page == nullptr ? std::vector<PageRow>() : test::rows_in_order(page, table);
}

/// What the viewer's script works on; null where there is no viewer.
json viewer_data(const solver::JobResult& result) {
  const test::Page page = test::parsed(note_of(result));
  std::string data = "null";
  test::for_each_element(page, [&](vtkXMLDataElement* element) {
    const char* id = element->GetAttribute("id");
    if (id != nullptr && std::string(id) == "viewer-data") data = element->GetCharacterData();
  });
  return json::parse(data);
}

TEST(NoteStages, TheViewersLoadsAreThoseOfTheTables) {
  const solver::JobResult result = test::made_up_staged_result();
  const json data = viewer_data(result);
  for (const char* model : {"uncracked", "cracked"}) {
    const auto rows = rows_of(result, fmt::format("reactions-{}-1", model));
    const json& supports = data.at("supports").at(model);
    for (const json& support : supports) {
      const auto column = std::ranges::find(rows[0].cells, support.at("name").get<std::string>());
      if (column == rows[0].cells.end()) continue;  // in another table, or by another name
      const auto at = static_cast<std::size_t>(column - rows[0].cells.begin());
      const json& values = support.at("values");
      ASSERT_EQ(values.size() + 1, rows.size());
      for (std::size_t stage = 0; stage < values.size(); ++stage) {
        const std::string printed =
            values[stage].is_null() ? "\u2013" : values[stage].get<std::string>();
        EXPECT_EQ(printed, rows[stage + 1].cells.at(at)) << support << stage;
      }
    }
    EXPECT_EQ(data.at("facts").at(model).size(), result.stages.size());
  }
  EXPECT_EQ(data.at("start"), 2);  // the cut governs
}

TEST(NoteStages, ThereIsNoViewerWithoutStagesOrWhereNothingStands) {
  EXPECT_TRUE(viewer_data(test::made_up_result()).is_null());
  solver::JobResult result = test::made_up_staged_result_that_falls("nothing ties it");
  EXPECT_FALSE(viewer_data(result).is_null());
  result.stages.erase(result.stages.begin(), result.stages.end() - 1);
  EXPECT_TRUE(viewer_data(result).is_null());
}

TEST(NoteStages, AnAtOnceAnalysisHasNoSuchChapters) {
  const std::string note = note_of(test::made_up_result());
  for (const char* id : {"stages", "safety", "beam"}) {
    EXPECT_THAT(note, Not(HasSubstr(fmt::format("<section id=\"{}\"", id))));
  }
  EXPECT_THAT(test::section_of(note, "assumptions"), HasSubstr("act at once on the wall as cut"));
  EXPECT_THAT(test::section_of(note, "not-checked"), HasSubstr("Each may load a needle more"));
}

TEST(NoteStages, WorkIsTabledWithTheWorstOfEachStage) {
  const auto rows = rows_of(test::made_up_staged_result(), "stages-of-work");
  ASSERT_EQ(rows.size(), 6U);  // the head, then five stages
  EXPECT_THAT(rows[2].cells,
              ElementsAre("needles in", "1", "tighten floor shore; put in N1 and N2, packed tight",
                          "\u2013", "0.50", "0.00", "0", "0.00", "3.50"));
  EXPECT_THAT(rows[3].cells, ElementsAre("cut", "2", "take out the masonry of the cut", "N2 22.0",
                                         "2.41", "1.40", "2", "1.2", "1.25"));
  EXPECT_EQ(rows[3].css_class, "unverified");  // loose masonry is to be noticed
}

TEST(NoteStages, ReactionsAddUpToTheLoadInEveryStage) {
  const solver::JobResult result = test::made_up_staged_result();
  for (const char* model : {"uncracked", "cracked"}) {
    const auto first = rows_of(result, fmt::format("reactions-{}-1", model));
    const auto second = rows_of(result, fmt::format("reactions-{}-2", model));
    ASSERT_EQ(first.size(), 6U) << model;
    ASSERT_EQ(second.size(), 6U) << model;
    for (std::size_t stage = 1; stage < first.size(); ++stage) {
      std::vector<std::string> heads(first[0].cells.begin() + 1, first[0].cells.end());
      std::vector<std::string> cells(first[stage].cells.begin() + 1, first[stage].cells.end());
      heads.insert(heads.end(), second[0].cells.begin() + 1, second[0].cells.end());
      cells.insert(cells.end(), second[stage].cells.begin() + 1, second[stage].cells.end());
      double sum = 0.0;
      for (std::size_t column = 0; heads[column] != "load in all"; ++column) {
        if (cells[column] != "\u2013") sum += std::stod(cells[column]);
      }
      const auto total = std::ranges::find(heads, "load in all") - heads.begin();
      EXPECT_NEAR(sum, std::stod(cells[total]), 1e-9) << first[stage].cells[0];
    }
  }
}

TEST(NoteStages, ReactionsOfManySupportsAreSplitIntoTablesThatFitThePage) {
  solver::JobResult result = test::made_up_staged_result();
  for (int i = 3; i <= 12; ++i) {
    const std::string name = fmt::format("N{}", i);
    result.job.needles.push_back({name, 1500.0, 150.0, 20e3, 0.0, 0.0});
    for (solver::StageResult& stage : result.stages) {
      stage.state.needles.push_back(solver::NeedleState::not_yet);
      for (solver::PanelResult& analysis : stage.analyses) {
        analysis.needles.push_back({name, 1500.0, 0.0, 0.0, 0.0});
      }
    }
  }
  std::vector<std::string> heads;
  for (int part = 1; part <= 3; ++part) {
    const auto rows = rows_of(result, fmt::format("reactions-cracked-{}", part));
    ASSERT_FALSE(rows.empty()) << part;
    EXPECT_LE(rows[0].cells.size(), 9U) << part;  // the stage and eight supports
    heads.insert(heads.end(), rows[0].cells.begin() + 1, rows[0].cells.end());
  }
  EXPECT_EQ(heads.size(), 19U);  // 12 needles, 2 piers, the cut, joists, the load, 2 beam ends
  EXPECT_TRUE(rows_of(result, "reactions-cracked-4").empty());
}

TEST(NoteStages, CracksAreThoseOfTheStageWithTheWidest) {
  const solver::JobResult result = test::made_up_staged_result();
  const auto rows = rows_of(result, "cracks");
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_THAT(rows[1].cells,
              ElementsAre("over needle N1", "1.40", "700", "1400, 1500", "1800, 2000", "51"));
  EXPECT_THAT(chapter(result, "stages"),
              HasSubstr("in stage \u201ccut\u201d, which has the widest"));
}

TEST(NoteStages, WithoutCracksItSaysSo) {
  solver::JobResult result = test::made_up_staged_result();
  for (solver::StageResult& stage : result.stages) {
    for (solver::PanelResult& analysis : stage.analyses) analysis.cracks.clear();
  }
  EXPECT_THAT(chapter(result, "stages"), HasSubstr("No crack wider than a hair in any stage."));
}

TEST(NoteStages, SafetyIsTabledWithItsVerdicts) {
  solver::JobResult result = test::made_up_staged_result();
  result.stages[1].safety->factor = 0.8;
  result.stages[1].safety->verdict = "It falls & <crushes>.";
  const auto rows = rows_of(result, "safety-factors");
  ASSERT_EQ(rows.size(), 11U);  // the head, then five stages with their verdicts
  EXPECT_EQ(rows[3].cells.at(1), "0.80");
  EXPECT_THAT(rows[3].css_class, HasSubstr("fails"));
  EXPECT_EQ(rows[4].cells.at(0), "It falls & <crushes>.");
  EXPECT_THAT(rows[5].cells, ElementsAre("cut", "1.25", "1.25", "1.27", "2.50", "1.5", "0.0120"));
  EXPECT_THAT(chapter(result, "summary"), HasSubstr("The wall stands by tension alone."));
  EXPECT_THAT(chapter(result, "summary"), HasSubstr("Loose without tension"));
  result.stages[1].safety->factor = 0.7;
  result.stages[2].safety->factor = 0.8;
  EXPECT_THAT(chapter(result, "summary"), HasSubstr("Held by tension alone"));
}

TEST(NoteStages, BeamIsSetByHandAgainstItsWorstStage) {
  const solver::JobResult result = test::made_up_staged_result();
  const auto rows = rows_of(result, "beam-hand");
  ASSERT_EQ(rows.size(), 6U);
  EXPECT_EQ(rows[1].cells.at(0), "Moment kNm");
  EXPECT_EQ(rows[1].cells.at(3), "12.50 (finished)");
  EXPECT_EQ(rows[4].cells.at(2), "13.0 (finished)");
  EXPECT_THAT(chapter(result, "beam"), HasSubstr("Arching is not relied on."));
  // EN 1992-1-1 (3.2): beta_cc(7) = exp(0.25 (1 - sqrt(28 / 7))) = exp(-0.25) = 0.7788; 3.1.2(5),
  // (6): 0.7788 x (12 + 8) - 8 = 7.58 N/mm2
  const auto packing = rows_of(result, "packing-by-age");
  ASSERT_EQ(packing.size(), 3U);
  EXPECT_EQ(packing[0].cells.at(4), "7");
  EXPECT_EQ(packing[1].cells.at(4), "63");
  EXPECT_EQ(packing[2].cells.at(4), "7.58");  // of 12 N/mm2
}

TEST(NoteStages, LoadsAgreeLessWhatTheDeadShoreCarries) {
  const solver::JobResult result = test::made_up_staged_result();
  const std::string loads = chapter(result, "loads");
  EXPECT_THAT(loads, HasSubstr("adds up to 100.0 kN, less 20.0 kN that is off the wall in stage "
                               "\u201ccut\u201d"));
  EXPECT_THAT(loads, HasSubstr("loaded with 80.0 kN there."));
  EXPECT_THAT(loads, Not(HasSubstr("The loads do not agree.")));
}

TEST(NoteStages, LoadsOfTheStagesThatDoNotAddUpAreSaidLoudly) {
  solver::JobResult result = test::made_up_staged_result();
  for (solver::StageResult& stage : result.stages) stage.state.line_load_share.at(0) = 0.75;
  EXPECT_THAT(chapter(result, "loads"), HasSubstr("The loads do not agree."));
}

TEST(NoteStages, SummaryNamesTheStageOfEachWorst) {
  solver::JobResult result = test::made_up_staged_result();
  std::string summary = chapter(result, "summary");
  EXPECT_THAT(summary, HasSubstr("\u201ccut\u201d, day 2: it has the most "
                                 "loaded needle of the analyses, N2<"));
  EXPECT_THAT(summary, HasSubstr("3.10 mm in stage \u201cfinished\u201d"));
  EXPECT_THAT(summary, HasSubstr("1.40 mm in stage \u201ccut\u201d, over needle N1<"));
  EXPECT_THAT(summary, HasSubstr("2, slight: cracks"));
  EXPECT_THAT(summary, HasSubstr("1.25 on all loads, least in stage \u201ccut\u201d"));
  EXPECT_THAT(summary, HasSubstr("Loose masonry: 1.2 kN would fall."));
  EXPECT_THAT(summary, HasSubstr("115.0 kN before the work, 80.0 kN in "
                                 "stage \u201ccut\u201d<"));

  solver::Check check;
  check.member = "beam";
  check.check = "deflection";
  check.stage = "finished";
  check.demand = 9.0;
  check.capacity = 10.0;
  check.unit = "mm";
  result.checks = {check};
  summary = chapter(result, "summary");
  EXPECT_THAT(summary, HasSubstr("\u201cfinished\u201d, day 37: it has the "
                                 "worst check, beam, deflection (0.90)<"));
}

TEST(NoteStages, LooseMasonryIsWarnedOfOnceWithTheOtherStages) {
  solver::JobResult result = test::made_up_staged_result();
  solver::LoosePatch smaller = result.stages[2].analyses.back().loose.front();
  smaller.weight = 500.0;
  result.stages[3].analyses.back().loose = {smaller};
  const std::string summary = chapter(result, "summary");
  EXPECT_EQ(summary.find("would fall."), summary.rfind("would fall."));
  EXPECT_THAT(summary, HasSubstr("Loose too in stage \u201cpacked\u201d (0.50 kN)."));
}

TEST(NoteStages, AStageThatFallsEndsTheWorkAndNamesTheLastThatStands) {
  const solver::JobResult result = test::made_up_staged_result_that_falls("nothing ties it.");
  const std::string note = note_of(result);
  EXPECT_THAT(note, Not(HasSubstr("nan")));
  EXPECT_THAT(test::section_of(note, "summary"),
              HasSubstr("in stage \u201ccut\u201d there is no equilibrium: nothing ties it."));
  const std::string stages = test::section_of(note, "stages");
  EXPECT_THAT(stages, HasSubstr("The last stage in which it stands is \u201cneedles in\u201d."));
  const auto rows = rows_of(result, "stages-of-work");
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_EQ(rows[3].css_class, "fails");
  EXPECT_THAT(rows[3].cells.back(), HasSubstr("DOES NOT STAND"));
  EXPECT_TRUE(rows_of(result, "design-loads").empty());
}

TEST(NoteStages, WorkThatEndsBeforeTheCutLeavesNothingToCompare) {
  solver::JobResult result = test::made_up_staged_result();
  result.stages.resize(2);
  EXPECT_THAT(chapter(result, "methods"), HasSubstr("nothing to set the hand method against"));
  EXPECT_TRUE(rows_of(result, "comparison").empty());
}

TEST(NoteStages, EvidenceHasARowForEachStage) {
  const solver::JobResult result = test::made_up_staged_result();
  const auto rows = rows_of(result, "evidence-cracked");
  ASSERT_EQ(rows.size(), 6U);
  EXPECT_EQ(rows[3].cells.at(0), "cut");
  EXPECT_EQ(rows[3].cells.at(1), "80.00");
  EXPECT_EQ(rows[3].cells.at(2), "80.00");  // joists and the base under the cut are counted
  EXPECT_EQ(rows[1].cells.at(2), "115.00");
  EXPECT_THAT(chapter(result, "evidence"), HasSubstr("twice as large, %, stage \u201ccut\u201d"));
}

TEST(NoteStages, WordsAreTrueOfTheSequence) {
  const std::string note = note_of(test::made_up_staged_result());
  EXPECT_THAT(test::section_of(note, "assumptions"), HasSubstr("followed stage by stage"));
  EXPECT_THAT(test::section_of(note, "assumptions"), Not(HasSubstr("order of the\nwork is not")));
  EXPECT_THAT(test::section_of(note, "assumptions"), HasSubstr("Of the permanent beam"));
  EXPECT_THAT(test::section_of(note, "not-checked"), Not(HasSubstr("Each may load a needle more")));
  EXPECT_THAT(test::section_of(note, "not-checked"),
              Not(HasSubstr("The permanent beam, its padstones")));
}

TEST(NoteStages, NamesOfStagesAndShoresCannotBecomeMarkup) {
  const std::string hostile = "</td><script>\"&\x01";
  solver::JobResult result = test::made_up_staged_result();
  result.stages[2].name = hostile;
  result.stages[2].safety->verdict = hostile;
  result.stages[2].analyses.back().cracks.front().where = hostile;
  result.stages[2].analyses.back().damage->in_words = hostile;
  result.job.beam->name = hostile;
  result.job.beam->member.section.name = hostile;
  result.job.dead_shores.front().name = hostile;
  for (solver::StageResult& stage : result.stages) {
    stage.operations = {{solver::Act::tighten, solver::ShoreId{0}}};
  }
  const std::string note = note_of(result);
  EXPECT_THAT(note, Not(HasSubstr("</td><script>")));
  EXPECT_NE(test::parsed(note), nullptr);
  EXPECT_EQ(viewer_data(result).at("stages").at(2).at("name"), hostile);
}

}  // namespace
}  // namespace deadshore::io
