#include "io/sheet/sheet.h"

#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

std::vector<test::PageRow> rows_of(const std::string& sheet, const std::string& table) {
  const test::Page page = test::parsed(sheet);
  return page == nullptr ? std::vector<test::PageRow>() : test::rows_in_order(page, table);
}

TEST(Sheet, IsAWellFormedPageWithoutScriptOrLinksOut) {
  for (const solver::JobResult& result : {test::made_up_result(), test::made_up_staged_result(),
                                          test::made_up_staged_result_that_falls("it spreads")}) {
    const std::string sheet = sheet_html(result);
    EXPECT_NE(test::parsed(sheet), nullptr);
    EXPECT_THAT(sheet, Not(HasSubstr("<script")));
    EXPECT_THAT(sheet, Not(HasSubstr("src=")));
    EXPECT_THAT(sheet, Not(HasSubstr("href=\"http")));
  }
}

TEST(Sheet, ShowsTheWallInOnePicture) {
  const std::string sheet = sheet_html(test::made_up_staged_result());
  const std::size_t picture = sheet.find("<svg");
  ASSERT_NE(picture, std::string::npos);
  EXPECT_EQ(sheet.find("<svg", picture + 1), std::string::npos);
}

TEST(Sheet, NumbersEveryStepAndHasABoxForEveryHoldPoint) {
  const std::string sheet = sheet_html(test::made_up_staged_result());
  const auto rows = rows_of(sheet, "steps");
  ASSERT_EQ(rows.size(), 6U);  // the head, then five steps
  for (std::size_t i = 1; i < rows.size(); ++i) {
    ASSERT_EQ(rows[i].cells.size(), 8U);
    EXPECT_EQ(rows[i].cells[0], std::to_string(i));
  }
  EXPECT_EQ(rows[3].cells[1], "2");
  EXPECT_EQ(rows[3].cells[4], "N2 22.0");
  std::size_t boxes = 0;
  for (std::size_t at = sheet.find("class=\"box\""); at != std::string::npos;
       at = sheet.find("class=\"box\"", at + 1)) {
    ++boxes;
  }
  EXPECT_GE(boxes, 5U);
  EXPECT_THAT(sheet, AllOf(HasSubstr("Permit to load signed."),
                           HasSubstr("28 days old before a needle is eased")));
}

TEST(Sheet, SchedulesNeedlesAndMarks) {
  const std::string sheet = sheet_html(test::made_up_staged_result());
  const auto needles = rows_of(sheet, "schedule");
  ASSERT_EQ(needles.size(), 3U);
  EXPECT_EQ(needles[1].cells[0], "N1");
  EXPECT_EQ(needles[1].cells[1], "1500");
  EXPECT_EQ(needles[1].cells[3], "30.0");  // by hand, more than any analysis
  EXPECT_EQ(rows_of(sheet, "marks").size(), 6U);
}

TEST(Sheet, HasBlanksForThoseWhoAnswerForIt) {
  const auto rows = rows_of(sheet_html(test::made_up_staged_result()), "signatures");
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_EQ(rows[1].cells[0], "Designed");
  EXPECT_EQ(rows[2].cells[0], "Checked");
  EXPECT_THAT(rows[3].cells[0], HasSubstr("Permit to load"));
  EXPECT_THAT(rows[4].cells[0], HasSubstr("Permit to strike"));
}

TEST(Sheet, SaysWhatIsLiftedAndThatPeopleCanBeHurt) {
  solver::JobResult result = test::made_up_staged_result();
  result.removed = solver::removed_masonry(result.job);
  const std::string sheet = sheet_html(result);
  EXPECT_THAT(sheet, AllOf(HasSubstr("Comes out:"), HasSubstr("local rules and the person decide"),
                           HasSubstr("Walls fall without warning and kill")));
}

TEST(Sheet, EscapesNames) {
  solver::JobResult result = test::made_up_staged_result();
  result.job.title = "Mill <b>& \"Co\"";
  result.job.needles[0].name = "N<1>";
  result.job.beam->name = "beam & beam";
  const std::string sheet = sheet_html(result);
  EXPECT_NE(test::parsed(sheet), nullptr);
  EXPECT_THAT(sheet, AllOf(HasSubstr("Mill &lt;b&gt;&amp; &quot;Co&quot;"), HasSubstr("N&lt;1&gt;"),
                           HasSubstr("beam &amp; beam"), Not(HasSubstr("Mill <b>"))));
}

TEST(Sheet, GivesNoFiguresWhereTheWallDoesNotStand) {
  const std::string sheet = sheet_html(test::made_up_staged_result_that_falls("it spreads"));
  EXPECT_THAT(sheet, AllOf(HasSubstr("DO NOT BEGIN."), HasSubstr("does not stand in this step"),
                           Not(HasSubstr("nan"))));
  const auto rows = rows_of(sheet, "steps");
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_EQ(rows[3].css_class, "fails");
  const auto needles = rows_of(sheet, "schedule");
  ASSERT_EQ(needles.size(), 3U);
  EXPECT_EQ(needles[1].cells[3], "\u2013");
}

TEST(Sheet, AsksForTheEngineerWhereMoreIsExpectedThanMayBe) {
  solver::JobResult result = test::made_up_staged_result();
  for (solver::PanelResult& analysis : result.stages.back().analyses) {
    for (std::size_t i = 1; i < analysis.fields.displacement.size(); i += 2) {
      analysis.fields.displacement[i] -= 3.0;
    }
  }
  test::work_out_again(result);
  const std::string sheet = sheet_html(result);
  EXPECT_THAT(sheet, HasSubstr("Ask the engineer first."));
  const auto rows = rows_of(sheet, "steps");
  ASSERT_EQ(rows.size(), 6U);
  EXPECT_EQ(rows[5].cells[5], "3.0");
  EXPECT_EQ(rows[5].cells[6], "ask");
  EXPECT_EQ(rows[4].cells[6], "1.0");
}

TEST(Sheet, OfAJobAtOnceSetsNoStopValues) {
  const std::string sheet = sheet_html(test::made_up_result());
  EXPECT_THAT(sheet, HasSubstr("the engineer sets the stop values before it begins"));
  for (const auto& row : rows_of(sheet, "steps")) {
    ASSERT_EQ(row.cells.size(), 8U);
    if (row.cells[6] != "Stop at mm") {
      EXPECT_EQ(row.cells[6], "\u2013");
    }
  }
}

}  // namespace
}  // namespace deadshore::io
