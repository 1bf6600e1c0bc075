// Ranges that say themselves, and numbers of a job that are checked by its tables of fields. The
// rules are ours; no outside source.
#include "solver/job/field.h"

#include "solver/job/job_fields.h"
#include "solver/job/needle_frame_fields.h"
#include "solver/job/number_faults.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace deadshore::solver {
namespace {

using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::IsEmpty;

TEST(Range, HoldsItsEndsUnlessTheyAreOut) {
  EXPECT_TRUE(fields::not_negative.holds(0.0));
  EXPECT_FALSE(fields::not_negative.holds(-1e-9));
  EXPECT_FALSE(fields::positive.holds(0.0));
  EXPECT_TRUE(fields::zero_to_one.holds(1.0));
  EXPECT_FALSE(fields::poisson.holds(0.5));
  EXPECT_TRUE(fields::any.holds(-1e300));
}

TEST(Range, MayHoldWholeNumbersOnlyOrAZeroThatStandsForNone) {
  const Range whole{.least = 1.0, .most = 3.0, .whole = true};
  EXPECT_TRUE(whole.holds(2.0));
  EXPECT_FALSE(whole.holds(2.5));
  EXPECT_FALSE(whole.holds(4.0));
  EXPECT_TRUE(fields::positive_or_none.holds(0.0));
  EXPECT_FALSE(fields::positive_or_none.holds(-1.0));
}

TEST(Range, SaysItself) {
  const auto words = [](const Range& range, const Unit& unit) { return in_words(range, unit); };
  EXPECT_EQ(words(fields::any, fields::m), "");
  EXPECT_EQ(words(fields::positive, fields::kN), "more than 0");
  EXPECT_EQ(words({.least = 10.0}, fields::mm), "10 mm or more");
  EXPECT_EQ(words({.most = 8.0}, fields::mm), "up to 8 mm");
  EXPECT_EQ(words(fields::above_zero_to_one, fields::number), "more than 0, up to 1");
  EXPECT_EQ(words({.least = 0.0, .most = 90.0, .below_most = true}, fields::degrees),
            "0 or more and less than 90 degrees");
  EXPECT_EQ(words({.least = 1.0, .most = 2.0, .whole = true}, fields::number), "1 or 2");
  EXPECT_EQ(words({.least = 1.0, .most = 9.0, .whole = true}, fields::number),
            "a whole number from 1 to 9");
}

TEST(Unit, IsWhatANumberIsSaidIn) {
  EXPECT_EQ(in_words(19e-6, fields::kN_per_m3), "19 kN/m3");
  EXPECT_EQ(in_words(0.03, fields::MN_per_m3), "30 MN/m3");
  EXPECT_EQ(in_words(150.0, fields::m), "150 mm");
  EXPECT_EQ(in_words(5600.0, fields::mm), "5.6 m");
  EXPECT_EQ(in_words(0.2, fields::number), "0.2");
}

std::vector<Fault> faults_in(const Needle& needle) {
  FaultList faults;
  check_numbers(fields::needle, std::vector<Needle>{needle}, faults);
  return faults;
}

const Needle sound{"N1", 2000.0, 150.0, 20e3};

TEST(NumberFaults, SayWhatWasFoundAndWhatIsDueAtThePathOfTheKey) {
  EXPECT_THAT(faults_in(sound), IsEmpty());
  Needle needle = sound;
  needle.slack = -2.0;
  const std::vector<Fault> faults = faults_in(needle);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].key, "needle[0].slack");
  EXPECT_EQ(faults[0].found, "-2 mm");
  EXPECT_EQ(faults[0].due, "0 or more");
}

TEST(NumberFaults, ANumberThatIsNoneIsOutOfEveryRange) {
  Needle needle = sound;
  needle.x = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THAT(faults_in(needle), ElementsAre(Field(&Fault::key, "needle[0].x")));
}

TEST(NumberFaults, KeysThatDoNotCountAreNotLookedAt) {
  Needle needle = sound;
  needle.stiffness = 0.0;
  EXPECT_THAT(faults_in(needle), ElementsAre(Field(&Fault::key, "needle[0].stiffness")));
  needle.frame = 0;  // which gives the stiffness
  EXPECT_THAT(faults_in(needle), IsEmpty());
}

TEST(NumberFaults, ReachIntoWhatIsInsideAMember) {
  NeedleFrame frame;
  frame.member = TimberMember{.section = {.b = 100.0, .h = 0.0}, .strength_class = {}};
  FaultList faults;
  check_numbers(fields::needle_frame, frame, faults, "needle_frame[2]");
  EXPECT_THAT(faults, ElementsAre(Field(&Fault::key, "needle_frame[2].depth")));
}

}  // namespace
}  // namespace deadshore::solver
