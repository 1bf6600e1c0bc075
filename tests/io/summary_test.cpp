#include "io/commands/summary.h"

#include "solver/study/verdict.h"
#include "tests/io/made_up_result.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <span>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// One needle: 20 kN by hand, 15 kN uncracked, 30 kN cracked.
solver::JobResult one_needle() {
  solver::JobResult result;
  result.job.title = "A wall";
  result.job.needles = {{.name = "N1", .x = 1400.0}};
  result.hand.needles.resize(1);
  result.hand.needles[0].total = 20.0e3;
  result.hand.left_pier.total = 40.0e3;
  result.hand.right_pier.total = 50.0e3;
  result.hand.load_total = 110.0e3;
  solver::PanelResult uncracked;
  uncracked.needles = {{.name = "N1", .x = 1400.0, .force = 15.0e3}};
  uncracked.load_total = 110.0e3;
  uncracked.max_settlement = 1.25;
  solver::PanelResult cracked = uncracked;
  cracked.model = solver::MasonryModel::cracked;
  cracked.needles[0].force = 30.0e3;
  result.stages = {{"cut", {uncracked, cracked}}};
  result.stages[0].state.cut_out = true;
  return result;
}

solver::PanelResult& cracked_of(solver::JobResult& result) {
  return result.stages.back().analyses.back();
}

solver::Check check_of(double demand) {
  solver::Check check;
  check.member = "N1";
  check.check = "bending";
  check.clause = "EN 1993-1-1 6.2.5";
  check.demand = demand;
  check.capacity = 22.0;
  check.unit = "kNm";
  return check;
}

std::string line_with(const std::string& text, const std::string& part) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (line.find(part) != std::string::npos) return line;
  }
  return "";
}

TEST(Summary, GivesEachNeedleByHandAndByElements) {
  const std::string row = line_with(summary_of(one_needle()), "N1");
  std::istringstream cells(row);
  std::string name;
  double x = 0.0;
  double hand = 0.0;
  double uncracked = 0.0;
  double cracked = 0.0;
  double worst = 0.0;
  ASSERT_TRUE(cells >> name >> x >> hand >> uncracked >> cracked >> worst) << row;
  EXPECT_EQ(x, 1.4);
  EXPECT_EQ(hand, 20.0);
  EXPECT_EQ(uncracked, 15.0);
  EXPECT_EQ(cracked, 30.0);
  EXPECT_EQ(worst, 1.5);  // 1.5 times is further off than 0.75 times
}

TEST(Summary, GivesReactionsWithTheErrorOfTheMeshRoundedUp) {
  solver::JobResult result = one_needle();
  EXPECT_THAT(summary_of(result), Not(HasSubstr("+-")));
  cracked_of(result).mesh_error = {{support_of(solver::NeedleId{0}), 61.0},
                                   {solver::supports::left_pier, 5.0}};
  const std::string text = summary_of(result);
  EXPECT_THAT(line_with(text, "N1"), HasSubstr("30.00 +- 0.07"));
  EXPECT_THAT(line_with(text, "left pier"), HasSubstr("0.00 +- 0.01"));
  EXPECT_THAT(text, HasSubstr("+-: for the size of the elements alone"));
}

TEST(Summary, NamesTheNeedleThatMovesMostWithWhatIsUnsure) {
  solver::JobResult result = one_needle();
  EXPECT_THAT(summary_of(result), Not(HasSubstr("what if")));
  result.job.needles.push_back({.name = "N2", .x = 2800.0});
  result.hand.needles.resize(2);
  for (solver::PanelResult& analysis : result.stages.front().analyses) {
    analysis.needles.push_back({.name = "N2", .x = 2800.0});
  }
  result.sensitivities = {test::made_up_sensitivity()};
  const std::string joined = std::regex_replace(summary_of(result), std::regex("\n"), " ");
  EXPECT_THAT(joined, HasSubstr("what if: N1 24.10 to 30.00 kN for 24.55 (cracked), for 1 mm lost "
                                "in the packing of N2; one thing changed at a time"));
}

TEST(Summary, SaysNothingOfAnAnalysisThatDoesNotStand) {
  solver::JobResult result = one_needle();
  cracked_of(result).no_equilibrium = "nothing stops the wall spreading";
  const std::string text = summary_of(result);
  EXPECT_THAT(text, HasSubstr("!! NO EQUILIBRIUM, cracked: nothing stops the wall spreading"));
  EXPECT_THAT(line_with(text, "N1"), Not(HasSubstr("30.00")));
  EXPECT_THAT(text, HasSubstr("largest settlement, uncracked: 1.25 mm"));
  EXPECT_THAT(text, Not(HasSubstr("largest settlement, cracked")));
  EXPECT_FALSE(verdict_of(result).nothing_fails());
}

TEST(Summary, NamesLooseMasonry) {
  solver::JobResult result = one_needle();
  EXPECT_TRUE(verdict_of(result).nothing_fails());
  cracked_of(result).loose.resize(1);
  cracked_of(result).loose[0].weight = 2340.0;
  EXPECT_THAT(summary_of(result), HasSubstr("!! LOOSE MASONRY, cracked: 2.34 kN"));
  EXPECT_FALSE(verdict_of(result).nothing_fails());
}

TEST(Summary, SumsUpManyLoosePlacesAndPointsToTheNote) {
  solver::JobResult result = one_needle();
  cracked_of(result).loose.resize(9);
  for (solver::LoosePatch& patch : cracked_of(result).loose) patch.weight = 500.0;
  cracked_of(result).loose[4].weight = 1250.0;
  cracked_of(result).loose[4].where = "over the stair";
  const std::string text = summary_of(result);
  EXPECT_THAT(text, HasSubstr("!! LOOSE MASONRY, cracked: 5.25 kN would fall, in 9 places. The "));
  EXPECT_EQ(text.find("LOOSE MASONRY"), text.rfind("LOOSE MASONRY"));
  const std::string joined = std::regex_replace(text, std::regex("\n"), " ");
  EXPECT_THAT(joined, HasSubstr("largest, 1.25 kN, between x = 0.00 m and 0.00 m: over the stair. "
                                "All are in the note."));
}

TEST(Summary, AlarmsComeLastWorstFirst) {
  solver::JobResult result = test::made_up_staged_result();
  result.checks = {check_of(33.0)};
  const std::string text = summary_of(result);
  EXPECT_LT(text.find("worst first"), text.find("!! LOOSE MASONRY"));
  EXPECT_LT(text.find("!! LOOSE MASONRY"), text.find("!! FAILS"));
  EXPECT_LT(text.find("!! FAILS"), text.find("\n! LOOSE WITHOUT TENSION"));
  EXPECT_LT(text.find("\n! LOOSE WITHOUT TENSION"), text.find("Caution:"));
}

TEST(Summary, WorksForOneModelAlone) {
  solver::JobResult result = one_needle();
  result.stages.back().analyses.pop_back();
  EXPECT_THAT(line_with(summary_of(result), "N1"), HasSubstr(" - "));
}

TEST(Summary, FitsEightyColumnsWhateverTheNames) {
  solver::JobResult result = one_needle();
  result.job.title =
      "A title that is too long for one line of a terminal, because it says far too much";
  result.job.needles[0].name = "the needle beside the old bread oven's flue";
  cracked_of(result).loose.resize(1);
  cracked_of(result).loose[0].weight = 9.0e9;
  for (solver::PanelResult& analysis : result.stages.back().analyses) {
    analysis.base_left = 12345.6e3;
    analysis.mesh_error = {{support_of(solver::NeedleId{0}), 12.3e3},
                           {solver::supports::left_pier, 123.4e3}};
  }
  cracked_of(result).loose[0].where = "over the old bread oven, which has no lintel of its own";
  std::istringstream lines(summary_of(result));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(Summary, SendsTheReaderToAnEngineer) {
  EXPECT_THAT(summary_of(one_needle()), HasSubstr("structural engineer"));
}

TEST(StagedSummary, HasARowForEachStage) {
  const std::string text = summary_of(test::made_up_staged_result());
  std::istringstream cells(line_with(text, "cut  "));
  std::string stage;
  std::string needle;
  double load = 0.0;
  double settlement = 0.0;
  double crack = 0.0;
  double loose = 0.0;
  double factor = 0.0;
  ASSERT_TRUE(cells >> stage >> needle >> load >> settlement >> crack >> loose >> factor) << text;
  EXPECT_EQ(stage, "cut");
  EXPECT_EQ(needle, "N2");
  EXPECT_EQ(load, 22.0);
  EXPECT_EQ(settlement, 2.41);
  EXPECT_EQ(crack, 1.4);
  EXPECT_EQ(loose, 1.25);
  EXPECT_EQ(factor, 1.25);
  for (const char* name : {"as built", "needles in", "packed", "finished"}) {
    EXPECT_NE(line_with(text, name), "") << name;
  }
}

TEST(StagedSummary, ComparesTheHandMethodWithTheCut) {
  const std::string text = summary_of(test::made_up_staged_result());
  EXPECT_THAT(text, HasSubstr("hand method beside stage cut"));
  EXPECT_THAT(line_with(text, "left pier"), HasSubstr("16.00"));
}

TEST(StagedSummary, SetsNothingAgainstTheHandMethodBeforeTheWallIsCut) {
  solver::JobResult result = test::made_up_staged_result();
  result.stages.resize(2);
  const std::string text = summary_of(result);
  EXPECT_THAT(text, HasSubstr("no stage was reached in which the wall is cut"));
  EXPECT_THAT(line_with(text, "left pier"), Not(HasSubstr("33.")));
}

TEST(StagedSummary, NamesTheStageOfLooseMasonryOnce) {
  const std::string text = summary_of(test::made_up_staged_result());
  EXPECT_THAT(text, HasSubstr("!! LOOSE MASONRY, cracked, stage cut: 1.25 kN"));
  EXPECT_EQ(text.find("LOOSE MASONRY"), text.rfind("LOOSE MASONRY"));
}

TEST(StagedSummary, IsLoudAboutTheStageThatFalls) {
  const solver::JobResult result = test::made_up_staged_result_that_falls("it spreads.");
  const std::string text = summary_of(result);
  EXPECT_THAT(line_with(text, "cut  "), HasSubstr("!! DOES NOT STAND"));
  EXPECT_THAT(text, HasSubstr("!! NO EQUILIBRIUM, cracked, stage cut: it spreads."));
  EXPECT_THAT(text, Not(HasSubstr("nan")));
  EXPECT_FALSE(verdict_of(result).nothing_fails());
}

TEST(StagedSummary, AWallThatNeedsTensionIsNotHeldUp) {
  solver::JobResult result = test::made_up_staged_result();
  result.stages[2].analyses.back().loose.clear();
  EXPECT_TRUE(verdict_of(result).nothing_fails());
  result.stages[1].safety->factor = 0.7;
  EXPECT_FALSE(verdict_of(result).nothing_fails());
  EXPECT_THAT(summary_of(result), HasSubstr("!! STANDS BY TENSION ALONE, stage needles in"));
}

TEST(StagedSummary, LooseMasonryInAWallThatStandsIsNoAlarm) {
  const std::string text = summary_of(test::made_up_staged_result());
  EXPECT_THAT(text, HasSubstr("! LOOSE WITHOUT TENSION, stage cut"));
  EXPECT_THAT(text, Not(HasSubstr("TENSION ALONE")));
}

TEST(StagedSummary, FitsEightyColumnsWhateverTheNames) {
  solver::JobResult result = test::made_up_staged_result();
  result.stages[2].name = "the old bread oven's flue and all that hangs on it out";
  for (solver::PanelResult& analysis : result.stages[2].analyses) {
    analysis.needles[1].name = "the needle beside the old bread oven's flue";
  }
  std::istringstream lines(summary_of(result));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

/// Whether a result with nothing but these checks holds.
bool holds(const std::vector<solver::Check>& checks) {
  solver::JobResult result;
  result.checks = checks;
  return verdict_of(result).holds();
}

TEST(CheckSummary, GivesTheUtilisationAndTheClause) {
  const std::vector<solver::Check> checks = {check_of(11.0)};
  const std::string row = line_with(summary_of(checks), "N1");
  EXPECT_THAT(row, HasSubstr("bending"));
  EXPECT_THAT(row, HasSubstr("0.50  EN 1993-1-1 6.2.5"));
  EXPECT_TRUE(holds(checks));
}

TEST(CheckSummary, IsLoudAboutWhatFails) {
  const std::vector<solver::Check> checks = {check_of(33.0), check_of(11.0)};
  EXPECT_THAT(summary_of(checks), HasSubstr("!! FAILS: N1, bending: 1.50 times what it bears"));
  EXPECT_FALSE(holds(checks));
}

TEST(CheckSummary, NamesWhatIsNotVerifiedAndNeverPassesIt) {
  const std::vector<solver::Check> checks =
      solver::labelled({solver::not_verified("suspended floor", "common practice", "look first")},
                       "N1 inner prop", "cut");
  EXPECT_THAT(summary_of(checks),
              HasSubstr("!! NOT VERIFIED: N1 inner prop, suspended floor: look first"));
  EXPECT_FALSE(holds(checks));
}

TEST(CheckSummary, ListsEightAndCountsTheRest) {
  const std::vector<solver::Check> checks(11, check_of(11.0));
  const std::string text = summary_of(checks);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 10);
  EXPECT_THAT(text, HasSubstr("and 3 more"));
}

TEST(CheckSummary, CountsAlarmsPastSixOfAKind) {
  std::vector<solver::Check> checks(9, check_of(33.0));
  const std::string text = check_alarms(checks);
  EXPECT_THAT(text, HasSubstr("!! FAILS: 3 more, all in the note"));
  EXPECT_THAT(text, Not(HasSubstr("NOT VERIFIED")));
}

TEST(CheckSummary, FitsEightyColumnsWhateverTheNames) {
  solver::Check check = check_of(1e9);
  check.member = "the needle beside the old bread oven's flue, second outer prop";
  check.check = "lateral-torsional buckling between the props on either side";
  check.clause = "a clause of a standard whose name is longer than the line";
  std::istringstream lines(summary_of(std::vector<solver::Check>{check}));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(CheckSummary, IsEmptyWithoutChecks) {
  EXPECT_EQ(summary_of(std::span<const solver::Check>()), "");
  solver::JobResult result = one_needle();
  EXPECT_THAT(summary_of(result), Not(HasSubstr("checks")));
  result.checks = {check_of(33.0)};
  EXPECT_THAT(summary_of(result), HasSubstr("!! FAILS"));
}

TEST(Timings, AddUp) {
  const std::vector<solver::PhaseTime> times = {{"mesh", 0.25}, {"cracked", 1.5}};
  EXPECT_THAT(line_with(timings_of(times, 312.0), "in all"), HasSubstr("1.75 s"));
  EXPECT_THAT(timings_of(times, 312.0), HasSubstr("312 MiB"));
}

}  // namespace
}  // namespace deadshore::io
