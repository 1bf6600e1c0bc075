// What carries a beam on its way up. Statics of a stiff beam; no outside source but where one is
// named.
#include "solver/site/lift_plan.h"

#include "solver/job/needle_frame.h"
#include "solver/members/error.h"
#include "solver/site/beam_share.h"
#include "tests/solver/lift_samples.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using testing::check_of;
using testing::endways_job;
using ::testing::HasSubstr;
using testing::lift_job;

constexpr double length = 3450.0;
constexpr double middle = 0.5 * length;

double weight_of_one(const Job& job) {
  return weight_of(job.beam->member) * length;
}

/// The sample with its lifters moved.
Job with_lifters_at(std::vector<double> places) {
  Job job = lift_job();
  const Lifter like = job.lifting->lifters.front();
  job.lifting->lifters.clear();
  for (const double at : places) {
    job.lifting->lifters.push_back(like);
    job.lifting->lifters.back().name = "L" + std::to_string(job.lifting->lifters.size());
    job.lifting->lifters.back().at = at;
  }
  return job;
}

/// The sample with its stands moved.
Job with_stands_at(std::vector<double> places) {
  Job job = lift_job();
  const Stand like = job.lifting->stands.front();
  job.lifting->stands.clear();
  for (const double at : places) {
    job.lifting->stands.push_back(like);
    job.lifting->stands.back().name = "S" + std::to_string(job.lifting->stands.size());
    job.lifting->stands.back().at = at;
  }
  return job;
}

TEST(LiftPlan, EveryCheckOfTheSamplePassesAndIsOfTheStageThatPlacesTheBeam) {
  for (const Job& job : {lift_job(), endways_job()}) {
    const LiftPlan plan = plan_lift(job);
    EXPECT_GE(plan.checks.size(), 18U);
    EXPECT_LE(std::ranges::count(plan.checks, std::string("left pocket"), &Check::member), 2)
        << "what is let through below";
    for (const Check& check : some(plan.checks)) {
      if (check.member == "left pocket") continue;
      EXPECT_TRUE(check.passes()) << check.member << ", " << check.check << ": " << check.working
                                  << " " << check.caution;
      EXPECT_EQ(check.stage, "beam in");
      EXPECT_FALSE(check.member.empty());
      EXPECT_FALSE(check.clause.empty());
    }
  }
}

TEST(LiftPlan, ChecksAreOfTheStageOfTheJobThatPlacesTheBeam) {
  Job job = lift_job();
  job.stages = {{"cut", 0.0, {{Act::remove, WorkPart::cut}}},
                {"steel up", 1.0, {{Act::place, WorkPart::beam}}}};
  const LiftPlan plan = plan_lift(job);
  ASSERT_FALSE(plan.checks.empty());
  for (const Check& check : plan.checks) EXPECT_EQ(check.stage, "steel up");
}

TEST(LiftPlan, WeightsAreOfTheWholeLengthAndHeightIsFromTheFloor) {
  Job job = lift_job();
  job.beam->count = 2;
  job.lifting->floor_level = -100.0;
  const LiftPlan plan = plan_lift(job);
  EXPECT_DOUBLE_EQ(plan.length, length);
  EXPECT_NEAR(plan.weight_of_one, weight_of_one(job), 1e-9);
  EXPECT_NEAR(plan.weight, 2.0 * weight_of_one(job), 1e-9);
  // Soffit 2400 less packing 25 and beam 251.4, above -100.
  EXPECT_NEAR(plan.lift, 2223.6, 1e-9);
}

TEST(LiftPlan, TwoLiftersShareByMomentsAboutEachOther) {
  const Job job = with_lifters_at({500.0, 2500.0});
  const LiftPlan plan = plan_lift(job);
  const double moving = 1.25 * weight_of_one(job);
  EXPECT_NEAR(plan.lifters[0].load, moving * (2500.0 - middle) / 2000.0, 1e-9);
  EXPECT_NEAR(plan.lifters[1].load, moving * (middle - 500.0) / 2000.0, 1e-9);
  EXPECT_NEAR(plan.lifters[0].load + plan.lifters[1].load, moving, 1e-9);
  EXPECT_TRUE(check_of(plan, "B1 on its lifters", "balance").passes());
}

TEST(LiftPlan, SectionsThatGoUpTogetherWeighTogether) {
  Job job = lift_job();
  job.beam->count = 2;
  const double singly = plan_lift(job).lifters[0].load;
  job.lifting->one_at_a_time = false;
  EXPECT_NEAR(plan_lift(job).lifters[0].load, 2.0 * singly, 1e-9);
}

TEST(LiftPlan, ALoneLifterHasToBeInTheMiddle) {
  for (const double off : {-24.0, 0.0, 24.0}) {
    const LiftPlan plan = plan_lift(with_lifters_at({middle + off}));
    EXPECT_TRUE(check_of(plan, "B1 on its lifters", "balance").passes()) << off;
    EXPECT_NEAR(plan.lifters[0].load, 1.25 * weight_of_one(lift_job()), 1e-9);
  }
  for (const double off : {-26.0, 26.0}) {
    const LiftPlan plan = plan_lift(with_lifters_at({middle + off}));
    const Check check = check_of(plan, "B1 on its lifters", "balance");
    EXPECT_FALSE(check.passes()) << off;
    EXPECT_THAT(check.caution, HasSubstr("tips"));
  }
}

TEST(LiftPlan, LiftersOnOneSideOfTheMiddleLetTheBeamTipAndEachIsGivenAllOfIt) {
  const std::vector<std::vector<double>> one_sided = {
      {200.0, 1000.0}, {2500.0, 3400.0}, {500.0, middle - 10.0}};
  for (const std::vector<double>& places : some(one_sided)) {
    const LiftPlan plan = plan_lift(with_lifters_at(places));
    EXPECT_FALSE(check_of(plan, "B1 on its lifters", "balance").passes());
    for (const HeldLoad& lifter : some(plan.lifters))
      EXPECT_NEAR(lifter.load, 1.25 * weight_of_one(lift_job()), 1e-9);
  }
}

TEST(ForkTable, LoadsBetweenDistancesLieOnAStraightLine) {
  const ForkTable table{"plate", {{300.0, 2000.0}, {500.0, 1600.0}, {600.0, 1000.0}}};
  EXPECT_DOUBLE_EQ(lift_capacity_at(table, 300.0), 2000.0);
  EXPECT_DOUBLE_EQ(lift_capacity_at(table, 400.0), 1800.0);
  EXPECT_DOUBLE_EQ(lift_capacity_at(table, 500.0), 1600.0);
  EXPECT_DOUBLE_EQ(lift_capacity_at(table, 525.0), 1450.0);
  EXPECT_DOUBLE_EQ(lift_capacity_at(table, 600.0), 1000.0);
}

TEST(ForkTable, NothingIsGuessedOutsideIt) {
  const ForkTable table{"plate", {{300.0, 2000.0}, {600.0, 1000.0}}};
  for (const double distance : {0.0, 299.9, 600.1, 5000.0}) {
    EXPECT_THROW(static_cast<void>(lift_capacity_at(table, distance)), MemberError) << distance;
  }
  EXPECT_THROW(static_cast<void>(lift_capacity_at({"plate", {}}, 400.0)), MemberError);
}

TEST(LiftPlan, ALifterIsHeldAgainstItsTableAtTheLoadsDistance) {
  Job job = lift_job();
  job.lifting->lifters[0].load_distance = 550.0;
  const Check check = check_of(plan_lift(job), "lifter L1", "lift");
  EXPECT_EQ(check.clause, "invented plate");
  EXPECT_NEAR(check.demand, 0.5 * 1.25 * weight_of_one(job) / 1e3, 1e-12);
  EXPECT_NEAR(check.capacity, 1.75, 1e-12);
}

TEST(LiftPlan, ADistanceThatTheTableDoesNotCoverIsNotVerified) {
  Job job = lift_job();
  job.lifting->lifters[1].load_distance = 700.0;
  const Check check = check_of(plan_lift(job), "lifter L2", "lift");
  EXPECT_TRUE(check.not_verified);
  EXPECT_FALSE(check.passes());
  EXPECT_THAT(check.caution, HasSubstr("400 mm to 600 mm"));
}

TEST(LiftPlan, TippingIsMomentsAboutTheFrontFeetWithAFactorOfOneAndAHalf) {
  Job job = lift_job();
  job.lifting->lifters[0].tipping = Lifter::Tipping{800.0, 300.0, 250.0};
  const LiftPlan plan = plan_lift(job);
  const Check check = check_of(plan, "lifter L1", "tipping over its front feet");
  EXPECT_NEAR(check.demand, 1.5 * plan.lifters[0].load * 250.0 / 1e6, 1e-12);
  EXPECT_NEAR(check.capacity, 0.24, 1e-12);
  EXPECT_FALSE(check.demand > check.capacity && check.passes());
}

TEST(LiftPlan, ALoadWithinTheFeetCannotTipALifter) {
  Job job = lift_job();
  job.lifting->lifters[0].tipping = Lifter::Tipping{1.0, 1.0, -50.0};
  EXPECT_TRUE(check_of(plan_lift(job), "lifter L1", "tipping over its front feet").passes());
  job.lifting->lifters[0].tipping->load_beyond = 50.0;
  EXPECT_FALSE(check_of(plan_lift(job), "lifter L1", "tipping over its front feet").passes());
}

TEST(LiftPlan, StandsHoldAllSectionsAtRest) {
  Job job = lift_job();
  job.beam->count = 2;
  const LiftPlan plan = plan_lift(job);
  for (const HeldLoad& stand : some(plan.stands)) {
    EXPECT_NEAR(stand.load, weight_of_one(job), 1e-9);  // half of two
    EXPECT_NEAR(stand.per_leg, weight_of_one(job) / 4.0, 1e-9);
    EXPECT_NEAR(stand.per_fixing, weight_of_one(job) / 8.0, 1e-9);
  }
}

TEST(LiftPlan, OfThreeStandsTheWorstPairThatStraddlesTheMiddleCounts) {
  const Job job = with_stands_at({575.0, 1500.0, 2875.0});
  const LiftPlan plan = plan_lift(job);
  const double weight = weight_of_one(job);
  EXPECT_NEAR(plan.stands[0].load, weight * (2875.0 - middle) / 2300.0, 1e-9);
  EXPECT_NEAR(plan.stands[1].load, weight * (2875.0 - middle) / 1375.0, 1e-9);
  EXPECT_NEAR(plan.stands[2].load, weight * (middle - 575.0) / 2300.0, 1e-9);
}

TEST(LiftPlan, WithoutStandsTheLiftersAloneHoldTheBeamAndThatFails) {
  for (const std::vector<double>& places : {std::vector<double>{}, std::vector<double>{middle}}) {
    const LiftPlan plan = plan_lift(with_stands_at(places));
    const Check check = check_of(plan, "stands", "held while it waits");
    EXPECT_FALSE(check.passes());
    EXPECT_THAT(check.caution, HasSubstr("never be the only thing"));
  }
  EXPECT_THAT(plan_lift(with_stands_at({})).steps, ::testing::Contains(HasSubstr("Stop here")));
  EXPECT_TRUE(check_of(plan_lift(lift_job()), "stands", "held while it waits").passes());
}

TEST(LiftPlan, ABeamThatSlidesPastItsPlaceLoadsTheNearerStandMore) {
  const LiftPlan plan = plan_lift(endways_job());
  const double weight = weight_of_one(endways_job());
  const double past = 225.0 + 25.0;  // its far bearing and the clearance, to the left
  EXPECT_NEAR(plan.stands[0].load, weight * (2875.0 - middle + past) / 2300.0, 1e-9);
  EXPECT_NEAR(plan.stands[1].load, 0.5 * weight, 1e-9);
}

TEST(LiftPlan, ABeamThatSlidesOffItsStandsTips) {
  Job job = endways_job();
  job.lifting->stands[0].at = middle - 240.0;
  EXPECT_FALSE(check_of(plan_lift(job), "B1 on its stands", "balance").passes());
  job.lifting->entry = BeamEntry::sideways;
  EXPECT_TRUE(check_of(plan_lift(job), "B1 on its stands", "balance").passes());
}

TEST(LiftPlan, LegsAreCheckedUnderPermanentFactoredWeight) {
  Job job = lift_job();
  job.lifting->stands[0].leg.duration = LoadDuration::instantaneous;
  const LiftPlan plan = plan_lift(job);
  const Check leg = check_of(plan, "stand S1", "leg in compression");
  EXPECT_EQ(leg.clause, "EN 1995-1-1 6.3.2");
  EXPECT_NEAR(leg.demand, 1.35 * plan.stands[0].per_leg / (47.0 * 97.0), 1e-12);
  TimberMember timber = job.lifting->stands[0].leg;
  timber.duration = LoadDuration::permanent;
  const Check same = check_timber_compression(timber, 1.0, 1800.0, 1800.0, partial_factors());
  EXPECT_NEAR(leg.capacity, same.capacity, 1e-12);
}

TEST(LiftPlan, PermissibleStressesGoWithUnfactoredWeight) {
  Job job = lift_job();
  job.check_rules.basis = permissible_stresses();
  const LiftPlan plan = plan_lift(job);
  EXPECT_NEAR(check_of(plan, "stand S1", "leg in compression").demand,
              plan.stands[0].per_leg / (47.0 * 97.0), 1e-12);
  EXPECT_NEAR(check_of(plan, "stand S1", "fixing in shear").demand, plan.stands[0].per_fixing / 1e3,
              1e-12);
}

TEST(LiftPlan, AGivenCapacityOfAFixingIsUsableAsItStands) {
  Job job = lift_job();
  job.lifting->stands[0].fixing = {.number = 5, .capacity = 150.0};
  const LiftPlan plan = plan_lift(job);
  const Check check = check_of(plan, "stand S1", "fixing in shear");
  EXPECT_NEAR(check.demand, 0.5 * weight_of_one(job) / 5.0 / 1e3, 1e-12);
  EXPECT_NEAR(check.capacity, 0.15, 1e-12);
}

// Common practice, no source: a stand's leg under a beam of 4 to 5 m carries some tens of
// kilograms; here four legs under 25.1 kg/m by 4.5 m.
TEST(LiftPlan, ALegUnderAHouseBeamCarriesSomeTensOfKilograms) {
  Job job = lift_job();
  job.wall.length = 8000.0;
  job.wall.top = {{0.0, 5000.0}, {8000.0, 5000.0}};
  job.wall.cut = {2000.0, 6050.0, 2400.0};
  job.beam->member.properties.mass = 25.1;
  for (Stand& stand : job.lifting->stands) stand.legs = 2;
  job.lifting->stands[1].at = 4500.0 - 575.0;
  const LiftPlan plan = plan_lift(job);
  ASSERT_DOUBLE_EQ(plan.length, 4500.0);
  const double kilograms = plan.stands[0].per_leg / 9.80665;
  EXPECT_GT(kilograms, 10.0);
  EXPECT_LT(kilograms, 99.0);
}

TEST(LiftPlan, StepsGoFromBringingItInToThePadstones) {
  Job job = lift_job();
  job.beam->count = 2;
  const std::vector<std::string> steps = plan_lift(job).steps;
  EXPECT_THAT(steps,
              ::testing::ElementsAre(
                  HasSubstr("outside"),
                  ::testing::AllOf(HasSubstr("L1 (1225 mm), L2 (2225 mm)"), HasSubstr("2.15 m")),
                  HasSubstr("S1 (575 mm), S2 (2875 mm)"), HasSubstr("sideways"),
                  HasSubstr("next section"), HasSubstr("25 mm under the soffit")));
  const std::vector<std::string> endways = plan_lift(endways_job()).steps;
  EXPECT_THAT(endways, ::testing::Contains(::testing::AllOf(HasSubstr("left pocket"),
                                                            HasSubstr("250 mm past its place"),
                                                            HasSubstr("bears 225 mm"))));
}

}  // namespace
}  // namespace deadshore::solver
