#include "io/results/reactions_csv.h"

#include "tests/io/made_up_result.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

TEST(ReactionsCsv, HasARowForEverySupportOfEveryAnalysis) {
  const std::string csv = reactions_csv(test::made_up_result());
  EXPECT_THAT(
      csv, StartsWith("stage,model,support,x [mm],force [kN],settlement [mm],mesh error [kN]\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\n,hand,N1,1500.0000,30.0000,,\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\ncut,cracked,N2,2500.0000,26.0500,2.3025,\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\ncut,uncracked,right pier,,32.0000,0.0000,\r\n"));
}

TEST(ReactionsCsv, EndsEachRowWithTheErrorOfTheMesh) {
  solver::JobResult result = test::made_up_result();
  result.stages.front().analyses.back().mesh_error = {{support_of(solver::NeedleId{1}), 250.0},
                                                      {solver::supports::right_pier, 120.0}};
  const std::string csv = reactions_csv(result);
  EXPECT_THAT(csv, HasSubstr("\r\ncut,cracked,N2,2500.0000,26.0500,2.3025,0.2500\r\n"));
  EXPECT_THAT(csv, HasSubstr(",0.0000,0.1200\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\ncut,uncracked,N2,2500.0000,18.7000,1.9350,\r\n"));
}

// RFC 4180, section 2, rules 6 and 7.
TEST(ReactionsCsv, QuotesNamesWithCommasAndQuotes) {
  solver::JobResult result = test::made_up_result();
  result.job.needles.front().name = "N1, \"west\"";
  EXPECT_THAT(reactions_csv(result), HasSubstr("cut,uncracked,\"N1, \"\"west\"\"\",1500"));
}

TEST(ReactionsCsv, EveryStageHasItsDayAndAllItsSupports) {
  const std::string csv = reactions_csv(test::made_up_staged_result());
  EXPECT_THAT(
      csv,
      StartsWith("stage,model,support,x [mm],force [kN],settlement [mm],day,mesh error [kN]\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\n,hand,N1,1500.0000,30.0000,,,\r\n"));
  EXPECT_THAT(csv, HasSubstr("as built,cracked,base under the cut,,29.0000,0.0000,0.0000,\r\n"));
  EXPECT_THAT(csv, HasSubstr("\r\ncut,cracked,joists on floor shore,,2.0000,,2.0000,\r\n"));
  EXPECT_THAT(csv, HasSubstr("finished,uncracked,beam left end,925.0000,13.0000,,37.0000,\r\n"));
  EXPECT_THAT(csv, HasSubstr("finished,uncracked,beam right end,3075.0000,13.0000,,37.0000,\r\n"));
  EXPECT_THAT(csv, Not(HasSubstr("cut,cracked,base under the cut")));
  EXPECT_THAT(csv, Not(HasSubstr("cut,cracked,beam")));
}

TEST(ReactionsCsv, AWallThatFallsHasOneRowWithoutNumbers) {
  const std::string csv = reactions_csv(test::made_up_result_that_falls("it spreads"));
  EXPECT_THAT(csv, HasSubstr("cut,cracked,no equilibrium,,,,\r\n"));
  EXPECT_THAT(csv, Not(HasSubstr("cut,cracked,N1")));
  EXPECT_THAT(csv, Not(HasSubstr("nan")));
}

}  // namespace
}  // namespace deadshore::io
