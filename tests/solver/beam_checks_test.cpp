#include "solver/beam/beam_checks.h"

#include "solver/checks/steel_checks.h"
#include "tests/solver/beam_samples.h"
#include "tests/solver/sample_sections.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using testing::beam_job;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::row_of;
using testing::rows_of;
using testing::staged_result;
using testing::with_beam;

constexpr double kNm = 1e6;
constexpr double kN = 1e3;

std::vector<Check> checks_by_hand(const Job& job) {
  return check_beam(staged_result(job, {}));
}

TEST(BeamChecks, AreNoneWithoutABeam) {
  EXPECT_THAT(check_beam({}), IsEmpty());
}

TEST(BeamChecks, GiveEveryCheckUnderTheFullLoadAndAsStaged) {
  const auto checks = check_beam(
      staged_result(beam_job(), {with_beam(MasonryModel::cracked, 20.0 * kNm, 30.0 * kN)}));
  struct Row {
    const char* member;
    const char* check;
  };
  for (const Row row : {Row{"B1", "bending"},
                        {"B1", "shear"},
                        {"B1", "bending with shear"},
                        {"B1", "lateral-torsional buckling"},
                        {"B1", "web bearing at the left bearing"},
                        {"B1", "web bearing at the right bearing"},
                        {"B1", "deflection"},
                        {"B1 left padstone", "padstone under the beam"},
                        {"B1 right padstone", "padstone under the beam"},
                        {"B1 left pier", "masonry under the padstone"},
                        {"B1 right pier", "masonry under the padstone"}}) {
    EXPECT_THAT(row_of(checks, row.member, row.check).working, HasSubstr("hand"));
    EXPECT_THAT(row_of(checks, row.member, row.check, "packed").working, HasSubstr("cracked"));
  }
  EXPECT_TRUE(std::is_sorted(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
    return a.utilisation() > b.utilisation();
  }));
}

TEST(BeamChecks, EachStagedRowHasItsOwnWorstStageAndAnalysis) {
  JobResult result =
      staged_result(beam_job(), {with_beam(MasonryModel::uncracked, 10.0 * kNm, 40.0 * kN),
                                 with_beam(MasonryModel::cracked, 20.0 * kNm, 30.0 * kN)});
  StageResult later;
  later.name = "N1 out";
  later.analyses = {with_beam(MasonryModel::uncracked, 25.0 * kNm, 35.0 * kN)};
  result.stages.push_back(later);
  const auto checks = check_beam(result);
  EXPECT_THAT(row_of(checks, "B1", "bending", "N1 out").working, HasSubstr("uncracked: 25.00 kNm"));
  EXPECT_THAT(row_of(checks, "B1", "shear", "packed").working, HasSubstr("uncracked: 40.00 kN"));
  EXPECT_EQ(rows_of(checks, "B1", "bending").size(), 2U);
}

TEST(BeamChecks, FactorBothByTheSharesOfTheFullLoad) {
  const Job job = beam_job();
  const HandBeam hand = hand_beam(job);
  const double mean = (1.35 * hand.dead + 1.5 * (hand.load - hand.dead)) / hand.load;
  const auto checks =
      check_beam(staged_result(job, {with_beam(MasonryModel::cracked, 20.0 * kNm, 30.0 * kN)}));
  EXPECT_NEAR(row_of(checks, "B1", "bending").demand, mean * hand.largest_moment / kNm, 1e-9);
  EXPECT_NEAR(row_of(checks, "B1", "bending", "packed").demand, mean * 20.0, 1e-9);
}

TEST(BeamChecks, LeaveLoadsUnfactoredUnderPermissibleStresses) {
  Job job = beam_job();
  job.check_rules.basis = permissible_stresses();
  const auto checks = checks_by_hand(job);
  EXPECT_NEAR(row_of(checks, "B1", "bending").demand, hand_beam(job).largest_moment / kNm, 1e-9);
  EXPECT_NEAR(row_of(checks, "B1", "bending").capacity,
              bending_resistance(job.beam->member, permissible_stresses()) / kNm, 1e-9);
}

TEST(BeamChecks, GiveEachOfTwoSectionsHalfAndLeaveTheirBoltsToOthers) {
  Job job = beam_job();
  const auto one = checks_by_hand(job);
  EXPECT_THAT(rows_of(one, "B1", "bolts and separators"), IsEmpty());
  job.beam->member.properties.mass = 0.0;  // so that the load stays the same
  const double single = row_of(checks_by_hand(job), "B1", "bending").demand;
  job.beam->count = 2;
  const auto two = checks_by_hand(job);
  EXPECT_NEAR(row_of(two, "B1", "bending").demand, 0.5 * single, 1e-9);
  EXPECT_TRUE(row_of(two, "B1", "bolts and separators").not_verified);
}

TEST(BeamChecks, WarnWhereArchingHidesAFailure) {
  Job job = beam_job();
  job.line_loads.front().dead = 80.0;
  const auto checks =
      check_beam(staged_result(job, {with_beam(MasonryModel::cracked, 20.0 * kNm, 30.0 * kN)}));
  EXPECT_FALSE(row_of(checks, "B1", "bending").passes());
  EXPECT_TRUE(row_of(checks, "B1", "bending", "packed").passes());
  EXPECT_THAT(row_of(checks, "B1", "bending", "packed").caution, HasSubstr("never passes a beam"));
}

TEST(BeamChecks, WarnOfMoreThanHalfRelief) {
  Job job = beam_job();
  const double hand = hand_beam(job).largest_moment;
  const auto caution = [&](double part) {
    const auto checks =
        check_beam(staged_result(job, {with_beam(MasonryModel::cracked, part * hand, 30.0 * kN)}));
    return row_of(checks, "B1", "bending", "packed").caution;
  };
  EXPECT_THAT(caution(0.49), HasSubstr("only 49%"));
  EXPECT_THAT(caution(0.51), IsEmpty());
}

TEST(BeamChecks, PressOnPackingAtItsAge) {
  PanelResult young = with_beam(MasonryModel::cracked, 10.0 * kNm, 20.0 * kN);
  young.beam->packing_pressure = 0.4;
  young.beam->packing_strength = 5.0;
  PanelResult old = young;
  old.beam->packing_pressure = 0.8;
  old.beam->packing_strength = 20.0;
  JobResult result = staged_result(beam_job(), {young});
  StageResult later;
  later.name = "finished";
  later.analyses = {old};
  result.stages.push_back(later);
  const auto rows = rows_of(check_beam(result), "B1 packing", "packing over the beam");
  ASSERT_EQ(rows.size(), 1U);  // staged alone
  EXPECT_EQ(rows.front().stage, "packed");
  EXPECT_NEAR(rows.front().capacity, 5.0 / 3.0, 1e-12);
}

TEST(BeamChecks, DoNotVerifyHardeningPackingWithoutTheTemperatureOfTheSite) {
  PanelResult hardening = with_beam(MasonryModel::cracked, 10.0 * kNm, 20.0 * kN);
  hardening.beam->packing_pressure = 0.4;
  hardening.beam->packing_strength = 13.8;  // at a week
  PanelResult hard = hardening;
  hard.beam->packing_strength = 20.0;
  Job job = beam_job();
  const auto packing = [&](const PanelResult& analysis) {
    return row_of(check_beam(staged_result(job, {analysis})), "B1 packing", "packing over the beam",
                  "packed");
  };
  EXPECT_TRUE(packing(hardening).not_verified);
  EXPECT_THAT(packing(hardening).caution, HasSubstr("give the temperature"));
  EXPECT_FALSE(packing(hard).not_verified);
  job.beam->packing.temperature = 10.0;
  EXPECT_FALSE(packing(hardening).not_verified);
}

TEST(BeamChecks, SayWhereTheWallHasNoEquilibrium) {
  PanelResult fallen = with_beam(MasonryModel::cracked, 0.0, 0.0);
  fallen.beam.reset();
  fallen.no_equilibrium = "the wall spreads";
  const auto checks =
      check_beam(staged_result(beam_job(), {with_beam(MasonryModel::uncracked, kNm, kN), fallen}));
  const Check row = row_of(checks, "B1", "load from the cracked wall", "packed");
  EXPECT_TRUE(row.not_verified);
  EXPECT_THAT(row.caution, HasSubstr("the wall spreads"));
}

TEST(BeamChecks, LeaveAStageBeforeTheBeamAlone) {
  PanelResult fallen;
  fallen.no_equilibrium = "the wall spreads";
  JobResult result = staged_result(beam_job(), {fallen});
  result.stages.front().operations = {{Act::remove, WorkPart::cut}};
  EXPECT_THAT(rows_of(check_beam(result), "B1", "load from the uncracked wall"), IsEmpty());
}

TEST(BeamChecks, DoNotVerifyTheWebsOfChannels) {
  Job job = beam_job();
  job.beam->member = steel_member(testing::pfc_200x90, SteelGrade::s275);
  job.beam->count = 2;
  const auto checks =
      check_beam(staged_result(job, {with_beam(MasonryModel::cracked, 20.0 * kNm, 30.0 * kN)}));
  const auto rows = rows_of(checks, "B1", "web bearing at the left bearing");
  ASSERT_EQ(rows.size(), 1U);  // the same whatever the load
  EXPECT_TRUE(rows.front().not_verified);
}

TEST(BeamChecks, RefuseAShortBearing) {
  Job job = beam_job();
  EXPECT_TRUE(row_of(checks_by_hand(job), "B1", "bearing length").passes());
  job.beam->bearing = 90.0;
  EXPECT_FALSE(row_of(checks_by_hand(job), "B1", "bearing length").passes());
}

TEST(BeamChecks, CountTheTopFlangeAsFreeWithoutRestraints) {
  Job job = beam_job();
  const Check free = row_of(checks_by_hand(job), "B1", "lateral-torsional buckling");
  job.beam->restraint_spacing = 1000.0;
  const Check held = row_of(checks_by_hand(job), "B1", "lateral-torsional buckling");
  EXPECT_LT(free.capacity, held.capacity);
  EXPECT_THAT(free.caution, HasSubstr("destabilising"));
  job.beam->restraint_spacing = 1e6;  // no longer than the span counts
  EXPECT_THAT(row_of(checks_by_hand(job), "B1", "lateral-torsional buckling").working,
              HasSubstr("L 3.23 m"));
}

// From its bearing at the jamb the load spreads through the padstone at 45 degrees, no further,
// even where a heavy wall on the padstone's tail would bring the resultant further in.
TEST(BeamChecks, CountNoMoreOfAPadstoneThanTheLoadReaches) {
  Job job = beam_job();
  job.beam->padstone.length = 900.0;
  job.beam->padstone.unit_weight = 24e-3;  // so heavy that the resultant is in its middle
  const auto working = [&] {
    return row_of(checks_by_hand(job), "B1 left pier", "masonry under the padstone").working;
  };
  EXPECT_THAT(working(), HasSubstr("440 x 215 mm"));  // 225 + 215
  job.beam->padstone.depth = 100.0;
  EXPECT_THAT(working(), HasSubstr("325 x 215 mm"));
}

TEST(BeamChecks, StopThePiersSpreadAtAnOpening) {
  Job job = beam_job();
  const double whole =
      row_of(checks_by_hand(job), "B1 left pier", "masonry under the padstone").capacity;
  job.wall.openings = {{"hatch", 300.0, 500.0, 700.0, 900.0, 0.0}};  // 500 mm from the jamb
  const auto beside = checks_by_hand(job);
  EXPECT_LT(row_of(beside, "B1 left pier", "masonry under the padstone").capacity, whole);
  EXPECT_NEAR(row_of(beside, "B1 right pier", "masonry under the padstone").capacity, whole, 1e-9);
  job.wall.openings.front().left = 500.0;  // 300 mm from the jamb, under the padstone
  EXPECT_TRUE(
      row_of(checks_by_hand(job), "B1 left pier", "masonry under the padstone").not_verified);
}

TEST(BeamChecks, AddThePadstoneToWhatPressesOnThePier) {
  Job job = beam_job();
  job.beam->padstone.unit_weight = 0.0;
  const double bare =
      row_of(checks_by_hand(job), "B1 right pier", "masonry under the padstone").demand;
  job.beam->padstone.unit_weight = 24e-6;
  EXPECT_NEAR(row_of(checks_by_hand(job), "B1 right pier", "masonry under the padstone").demand,
              bare + 1.35 * 440.0 * 215.0 * 215.0 * 24e-6 / kN, 1e-9);
}

TEST(BeamChecks, SayWhereASectionBucklesBeforeItYields) {
  Job job = beam_job();
  job.beam->member.class_in_bending = 4;
  const auto checks = checks_by_hand(job);
  ASSERT_EQ(checks.size(), 1U);
  EXPECT_TRUE(checks.front().not_verified);
}

}  // namespace
}  // namespace deadshore::solver
