// What is in a beam's way: lengths, widths and heights that a builder would lay a tape on. No
// outside source.
#include "solver/site/lift_plan.h"
#include "tests/solver/lift_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <ostream>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using testing::check_of;
using testing::endways_job;
using ::testing::HasSubstr;
using testing::lift_job;

/// A change to a sample after which a length is short by a millimetre or two, and one after which
/// it is enough by as much.
struct Way {
  const char* member;
  const char* check;
  const char* piece;  ///< named where it clashes
  bool endways;
  std::function<void(Job&)> too_tight;
  std::function<void(Job&)> enough;

  friend std::ostream& operator<<(std::ostream& out, const Way& way) {
    return out << way.member << ": " << way.check << ", " << way.piece;
  }
};

Job sample_of(const Way& way) {
  return way.endways ? endways_job() : lift_job();
}

class ClearWay : public ::testing::TestWithParam<Way> {};

TEST_P(ClearWay, ClashesWhereAMillimetreIsMissing) {
  Job job = sample_of(GetParam());
  GetParam().too_tight(job);
  const Check check = check_of(plan_lift(job), GetParam().member, GetParam().check);
  EXPECT_FALSE(check.passes()) << check.working;
  EXPECT_LT(check.demand - check.capacity, 5.0) << check.working;
  EXPECT_THAT(check.caution, HasSubstr(GetParam().piece));
  EXPECT_EQ(check.unit, "mm");
  EXPECT_EQ(check.clause, "geometry");
}

TEST_P(ClearWay, IsFreeWhereThereIsEnough) {
  Job job = sample_of(GetParam());
  GetParam().enough(job);
  const Check check = check_of(plan_lift(job), GetParam().member, GetParam().check);
  EXPECT_TRUE(check.passes()) << check.working;
  EXPECT_LT(check.capacity - check.demand, 5.0) << check.working;
  EXPECT_EQ(check.caution, "");
}

std::function<void(Job&)> set(double Lifting::*length, double value) {
  return [=](Job& job) { *job.lifting.*length = value; };
}

std::function<void(Job&)> pockets(double left, double right) {
  return [=](Job& job) {
    job.lifting->pocket_left = left;
    job.lifting->pocket_right = right;
  };
}

std::function<void(Job&)> outer_props_at(double distance) {
  return [=](Job& job) { job.needle_frames[0].props[1].distance = distance; };
}

std::function<void(Job&)> lifter_at(double at) {
  return [=](Job& job) { job.lifting->lifters[0].at = at; };
}

std::function<void(Job&)> stand_at(double at) {
  return [=](Job& job) { job.lifting->stands[0].at = at; };
}

std::function<void(Job&)> deep_stand_at(double at) {
  return [=](Job& job) {
    job.lifting->stands[0].at = at;
    job.lifting->stands[0].depth = 1400.0;
  };
}

/// From inside, past a dead shore on props.
std::function<void(Job&)> past_a_row(double distance, double place) {
  return [=](Job& job) {
    job.lifting->side = PropSide::inside;
    DeadShore shore;
    shore.name = "row";
    shore.carries = LineLoadId{0};
    shore.frame.emplace();
    shore.frame->distance = distance;
    PropRow row;
    row.base = 120.0;
    row.places = {place, 5800.0};
    shore.frame->uprights = row;
    job.dead_shores = {shore};
  };
}

std::function<void(Job&)> two_together(double distance) {
  return [=](Job& job) {
    job.beam->count = 2;
    job.lifting->one_at_a_time = false;
    job.needle_frames[0].props[1].distance = distance;
  };
}

// The beam: x 1275 to 4725, 251.4 mm deep on padstones at 2123.6 mm, 146.1 mm wide; 25 mm clear.
INSTANTIATE_TEST_SUITE_P(
    Beam, ClearWay,
    ::testing::Values(Way{"B1", "height under the needles", "needles' underside", false,
                          set(&Lifting::needle_underside, 2399.0),
                          set(&Lifting::needle_underside, 2401.0)},
                      Way{"B1", "way between wall and props", "N1 outer prop", false,
                          outer_props_at(255.0), outer_props_at(257.0)},
                      Way{"B1", "way between wall and props", "N1 outer prop", false,
                          two_together(401.0), two_together(403.0)},
                      Way{"B1", "way between wall and props", "row P1", false,
                          past_a_row(255.0, 200.0), past_a_row(257.0, 200.0)},
                      Way{"B1", "length between the pockets", "back of the pockets", false,
                          pockets(249.0, 250.0), pockets(251.0, 250.0)},
                      Way{"B1", "one end past its place", "back of the left pocket", true,
                          pockets(499.0, 225.0), pockets(501.0, 225.0)},
                      Way{"B1", "one end past its place", "back of the right pocket", true,
                          pockets(225.0, 499.0), pockets(225.0, 501.0)},
                      Way{"B1", "room to the left", "to the left", false,
                          set(&Lifting::room_left, 1251.0), set(&Lifting::room_left, 1249.0)},
                      Way{"B1", "room to the right", "to the right", false,
                          set(&Lifting::room_right, 4749.0), set(&Lifting::room_right, 4751.0)},
                      Way{"B1", "room to the left", "to the left", true,
                          set(&Lifting::room_left, 1001.0), set(&Lifting::room_left, 999.0)},
                      Way{"B1", "room to the right", "to the right", true,
                          set(&Lifting::room_right, 4749.0), set(&Lifting::room_right, 4751.0)}));

// Lifters are 600 mm wide, so 325 mm to each side; props stand at 2000, 3000 and 4000 with bases of
// 120 mm. Stands are 300 mm wide, so 175 mm to each side.
INSTANTIATE_TEST_SUITE_P(
    Pieces, ClearWay,
    ::testing::Values(
        Way{"lifter L1", "room to stand", "N1 outer prop", false, lifter_at(1109.0),
            lifter_at(1111.0)},
        Way{"lifter L1", "room to stand", "N2 outer prop", false, lifter_at(1341.0),
            lifter_at(1339.0)},
        Way{"lifter L1", "room to stand", "row P1", false, past_a_row(2000.0, 2116.0),
            past_a_row(2000.0, 2114.0)},
        Way{"stand S1", "room to stand", "left jamb", false, stand_at(399.0), stand_at(401.0)},
        Way{"stand S1", "room to stand", "lifter L1", false, stand_at(751.0), stand_at(749.0)},
        Way{"stand S1", "room to stand", "N1", false, deep_stand_at(491.0), deep_stand_at(489.0)}));

TEST(ClearWayOf, AStandThatKeepsToTheWallMayStandBetweenTheProps) {
  Job job = lift_job();
  job.lifting->stands[0].at = 725.0;  // at N1
  job.lifting->stands[0].depth = 1100.0;
  EXPECT_TRUE(check_of(plan_lift(job), "stand S1", "room to stand").passes());
}

TEST(ClearWayOf, StudsStandInALiftersWay) {
  Job job = lift_job();
  past_a_row(900.0, 0.0)(job);
  ShoreFrame& frame = *job.dead_shores[0].frame;
  frame.x = {500.0, 5500.0};
  frame.uprights = StudRow{{{47.0, 97.0}, {}}, 400.0, false};
  const Check check = check_of(plan_lift(job), "lifter L1", "room to stand");
  EXPECT_FALSE(check.passes());
  EXPECT_THAT(check.caution, HasSubstr("row stud 6 "));  // at 500 + 5 x 400 = 2500, its middle
  EXPECT_EQ(check.capacity, 0.0);
}

TEST(ClearWayOf, ShoresOnAFloorAboveTheBeamAreNotInItsWay) {
  Job job = lift_job();
  past_a_row(100.0, 2500.0)(job);
  EXPECT_FALSE(check_of(plan_lift(job), "B1", "way between wall and props").passes());
  job.dead_shores[0].frame->floor_level = 2700.0;
  EXPECT_TRUE(check_of(plan_lift(job), "B1", "way between wall and props").passes());
}

TEST(ClearWayOf, ShoresInsideAreNotInTheWayOfABeamFromOutside) {
  Job job = lift_job();
  past_a_row(100.0, 2500.0)(job);
  job.lifting->side = PropSide::outside;
  for (const Check& check : plan_lift(job).checks) EXPECT_TRUE(check.passes()) << check.check;
}

TEST(ClearWayOf, ATailHeldDownAboveTheNeedleIsNotInTheWay) {
  Job job = lift_job();
  NeedleProp tail = job.needle_frames[0].props[1];
  tail.mark = "tail";
  tail.action = PropAction::down;
  tail.distance = 100.0;
  job.needle_frames[0].props.push_back(tail);
  for (const Check& check : plan_lift(job).checks) EXPECT_TRUE(check.passes()) << check.check;
}

TEST(ClearWayOf, MasonryOverAPocketMuchDeeperThanTheBearingIsNotVerified) {
  const Check deep = check_of(plan_lift(endways_job()), "left pocket", "masonry over it");
  EXPECT_TRUE(deep.not_verified);
  EXPECT_THAT(deep.caution, HasSubstr("520 mm deep"));
  Job job = lift_job();
  pockets(225.0 + 102.0, 225.0 + 103.0)(job);
  const LiftPlan plan = plan_lift(job);
  EXPECT_TRUE(check_of(plan, "right pocket", "masonry over it").not_verified);
  for (const Check& check : plan.checks) EXPECT_NE(check.member, "left pocket");
}

TEST(ClearWayOf, PropsThatNobodyPlacedAreNotVerified) {
  Job job = lift_job();
  job.needles[1].frame.reset();
  const Check needle = check_of(plan_lift(job), "beam and lifters", "clear of all props");
  EXPECT_TRUE(needle.not_verified);
  EXPECT_THAT(needle.caution, HasSubstr("N2"));

  job = lift_job();
  job.lifting->side = PropSide::inside;
  job.dead_shores = {{"D1", LineLoadId{0}, 1.0, {}, {}, {}}};
  const Check shore = check_of(plan_lift(job), "beam and lifters", "clear of all props");
  EXPECT_TRUE(shore.not_verified);
  EXPECT_THAT(shore.caution, HasSubstr("D1"));
}

}  // namespace
}  // namespace deadshore::solver
