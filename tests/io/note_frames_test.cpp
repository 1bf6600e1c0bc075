#include "tests/io/made_up_result.h"
#include "tests/io/note_page.h"
#include "tests/viz/made_up_frame.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Check;
using test::PageRow;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

Check made_up_check(const std::string& member, const std::string& name, double demand,
                    double capacity) {
  Check check;
  check.member = member;
  check.check = name;
  check.clause = "EN 1993-1-1 6.2.5";
  check.working = "demand & <numbers> of " + member;
  check.stage = "cut";
  check.demand = demand;
  check.capacity = capacity;
  check.unit = "kN";
  return check;
}

/// Both needles on one frame; one prop fails, one stands on a suspended floor, the rest passes.
solver::JobResult framed_result() {
  solver::JobResult result = test::made_up_result();
  viz::put_on_frame(result, viz::made_up_frame("back wall"));
  result.needle_designs[0].advice = {"UC 152x152x23 is the lightest that passes"};
  result.needle_designs[1].advice = {"UC 152x152x23 is the lightest that passes"};
  Check floor = solver::not_verified("suspended floor", "common practice", "nobody has shown it");
  floor.member = "N2 inner prop";
  floor.demand = 11.5;
  floor.unit = "kN";
  result.checks = {floor, made_up_check("N1 inner prop", "prop strength", 18.0, 15.0),
                   made_up_check("N1 outer prop", "prop strength", 12.0, 15.0),
                   made_up_check("N1", "bending", 9.1, 22.0)};
  for (solver::NeedleDesign& design : result.needle_designs) design.checks = result.checks;
  return result;
}

std::string note_of(const solver::JobResult& result) {
  return test::note_html(result, {}, {"wall.toml", "title = 1"});
}

std::vector<PageRow> rows_of(const solver::JobResult& result, const std::string& table) {
  const test::Page page = test::parsed(note_of(result));
  return page == nullptr ? std::vector<PageRow>() : test::rows_in_order(page, table);
}

TEST(NoteFrames, WithoutFramesThereAreNoSuchChapters) {
  const std::string note = note_of(test::made_up_result());
  EXPECT_THAT(note, Not(HasSubstr("needle-frames")));
  EXPECT_THAT(note, Not(HasSubstr("member-checks")));
  EXPECT_THAT(test::section_of(note, "assumptions"), Not(HasSubstr("Of the needle frames")));
  EXPECT_THAT(test::section_of(note, "not-checked"), HasSubstr("The needles themselves"));
}

TEST(NoteFrames, ChecksKeepTheirOrderEachWithItsWorkingUnderIt) {
  const auto rows = rows_of(framed_result(), "checks");
  ASSERT_EQ(rows.size(), 9U);  // the head, then four checks with a line each
  EXPECT_THAT(rows[1].cells, ElementsAre("N2 inner prop", "suspended floor", "11.5", "\u2013", "kN",
                                         "NOT VERIFIED"));
  EXPECT_THAT(rows[2].cells, ElementsAre("Not verified (common practice): nobody has shown it."));
  EXPECT_EQ(rows[3].cells.at(0), "N1 inner prop");
  EXPECT_THAT(rows[4].cells.at(0), HasSubstr("of N1 inner prop"));
}

TEST(NoteFrames, AFailingCheckIsLoudInWordsAndInItsRow) {
  const auto rows = rows_of(framed_result(), "checks");
  const auto failing = std::ranges::find_if(
      rows, [](const PageRow& row) { return row.css_class.starts_with("fails"); });
  ASSERT_NE(failing, rows.end());
  EXPECT_THAT(failing->cells,
              ElementsAre("N1 inner prop", "prop strength", "18.0", "15.0", "kN", "1.20 FAILS"));
  EXPECT_THAT(std::next(failing)->cells.at(0), HasSubstr("EN 1993-1-1 6.2.5: "));
  const std::string summary = test::section_of(note_of(framed_result()), "summary");
  EXPECT_THAT(summary, HasSubstr("1 check fails."));
  EXPECT_THAT(summary, HasSubstr("N1 inner prop, prop strength: 18.0 kN against 15.0 kN"));
  EXPECT_THAT(summary, HasSubstr("1 check is not verified."));
  EXPECT_THAT(summary, HasSubstr("N2 inner prop, suspended floor: nobody has shown it."));
  EXPECT_THAT(summary, HasSubstr("1.20 FAILS: N1 inner prop, prop strength"));
}

TEST(NoteFrames, WhereAllPassesTheSummaryNamesTheWorst) {
  solver::JobResult result = framed_result();
  result.checks.erase(result.checks.begin(), result.checks.begin() + 2);
  const std::string summary = test::section_of(note_of(result), "summary");
  EXPECT_THAT(summary, HasSubstr("Worst utilisation"));
  EXPECT_THAT(summary, HasSubstr("0.80: N1 outer prop, prop strength"));
  EXPECT_THAT(summary, Not(HasSubstr("fail")));
}

TEST(NoteFrames, ManyFailuresAreCountedAndTheFirstNamed) {
  solver::JobResult result = framed_result();
  result.checks.assign(9, made_up_check("N1", "bending", 30.0, 22.0));
  const std::string summary = test::section_of(note_of(result), "summary");
  EXPECT_THAT(summary, HasSubstr("9 checks fail."));
  EXPECT_THAT(summary, HasSubstr("and 3 more"));
}

TEST(NoteFrames, PropScheduleSetsLoadsAgainstTheSafeLoadsOfTheChecks) {
  const solver::JobResult result = framed_result();
  const auto rows = rows_of(result, "prop-schedule");
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_EQ(rows[1].cells.at(0), "N1");
  EXPECT_EQ(rows[1].cells.at(1), "outer");
  EXPECT_EQ(rows[1].cells.at(3), "outside");
  EXPECT_EQ(rows[1].cells.at(7), "15.0");
  EXPECT_EQ(rows[1].cells.at(8), "0.80");
  EXPECT_EQ(rows[2].cells.at(8), "1.20 FAILS");
  EXPECT_EQ(rows[2].css_class, "fails");
  EXPECT_EQ(rows[4].cells.at(7), "\u2013");  // N2's prop has no strength check here
  EXPECT_THAT(note_of(result), HasSubstr("Props in all: 4 \u00d7 B35."));
}

TEST(NoteFrames, NeedlesSharesOfTheirPropsAddUpToTheLoadFromTheWall) {
  const solver::JobResult result = framed_result();
  const auto props = rows_of(result, "prop-schedule");
  const auto needles = rows_of(result, "needle-answers");
  ASSERT_EQ(needles.size(), 3U);
  EXPECT_NEAR(std::stod(props[1].cells.at(6)) + std::stod(props[2].cells.at(6)),
              std::stod(needles[1].cells.at(1)), 0.11);  // two figures rounded to 0.1
}

TEST(NoteFrames, AdviceThatHoldsForSeveralNeedlesIsSaidOnce) {
  EXPECT_THAT(test::section_of(note_of(framed_result()), "needle-frames"),
              HasSubstr("N1 and N2: UC 152x152x23 is the lightest that passes."));
}

TEST(NoteFrames, RulesNameTheCombinationAndTheFactors) {
  solver::JobResult result = framed_result();
  EXPECT_THAT(test::section_of(note_of(result), "member-checks"),
              HasSubstr("EN 1990 (6.10) with \u03b3G 1.35 and \u03b3Q 1.50"));
  result.job.check_rules.combination = solver::Combination::eq_6_10a_or_b;
  EXPECT_THAT(test::section_of(note_of(result), "member-checks"), HasSubstr("\u03be 0.925"));
  result.job.check_rules.basis.method = solver::SafetyMethod::permissible;
  const std::string permissible = test::section_of(note_of(result), "member-checks");
  EXPECT_THAT(permissible, HasSubstr("It is not factored."));
  EXPECT_THAT(permissible, Not(HasSubstr("EN 1990")));
}

TEST(NoteFrames, OnlyWhatIsGivenOutrightIsSaidToBeUnchecked) {
  solver::JobResult result = framed_result();
  std::string not_checked = test::section_of(note_of(result), "not-checked");
  EXPECT_THAT(not_checked, Not(HasSubstr("The needles themselves")));
  EXPECT_THAT(not_checked, Not(HasSubstr("given outright")));
  EXPECT_THAT(not_checked, HasSubstr("The ground itself"));
  result.job.needles[1].frame.reset();
  not_checked = test::section_of(note_of(result), "not-checked");
  EXPECT_THAT(not_checked, HasSubstr("Anything of N2, whose stiffness is given outright"));
}

TEST(NoteFrames, AWallThatFallsLeavesTheFramesWithoutLoads) {
  solver::JobResult result = framed_result();
  result.needle_designs.clear();
  result.checks.clear();
  const std::string note = note_of(result);
  EXPECT_THAT(test::section_of(note, "needle-frames"), HasSubstr("The wall does not stand"));
  EXPECT_THAT(note, Not(HasSubstr("id=\"member-checks\"")));
}

TEST(NoteFrames, NamesOfFramesAndPropsCannotBecomeMarkup) {
  const std::string hostile = "</td><script>\"&\x01";
  solver::NeedleFrame frame = viz::made_up_frame(hostile);
  frame.props[0].mark = hostile;
  frame.props[0].prop.name = hostile;
  frame.props[1].footing.suspended_floor = hostile;
  frame.props[0].footing.ground.name = hostile;
  solver::JobResult result = test::made_up_result();
  viz::put_on_frame(result, frame);
  result.needle_designs[0].advice = {hostile};
  result.checks = {made_up_check(hostile, hostile, 2.0, 1.0),
                   solver::not_verified(hostile, hostile, hostile)};
  const std::string note = note_of(result);
  EXPECT_THAT(note, Not(HasSubstr("<script")));
  EXPECT_NE(test::parsed(note), nullptr);
}

}  // namespace
}  // namespace deadshore::io
