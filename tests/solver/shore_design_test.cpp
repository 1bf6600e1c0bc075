// A dead shore worked out: invariants, the places of its uprights, and which checks are made. The
// head plate against textbooks: tests/published/shore_published_test.cpp.
#include "solver/shoring/shore_design.h"

#include "solver/shoring/head_plate.h"
#include "solver/shoring/shore_checks.h"
#include "tests/solver/sample_sections.h"
#include "tests/solver/shore_samples.h"
#include "tests/some.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>
#include <string>
#include <variant>

namespace deadshore::solver {
namespace {

using ::testing::Contains;
using ::testing::Each;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::SizeIs;

ShoreFrame& frame_of(Job& job) {
  return *job.dead_shores[0].frame;
}

PropRow& props_of(Job& job) {
  return std::get<PropRow>(frame_of(job).uprights);
}

ShoreDesign design_of(const Job& job) {
  return design_shores(job).at(0);
}

Job with_bath(Job job, double x = 2500.0) {
  job.point_loads = {{"bath", x, 2700.0, 600.0, 1000.0, 3000.0}};
  job.dead_shores[0].along_with = {PointLoadId{0}};
  return job;
}

double worst_of(const ShoreDesign& design, const std::string& member, const std::string& name) {
  double worst = -1.0;
  for (const Check& check : design.checks)
    if (check.member == member && check.check == name) worst = std::max(worst, check.utilisation());
  return worst;
}

double largest_load(const ShoreDesign& design) {
  double largest = 0.0;
  for (const UprightLoad& upright : design.uprights) largest = std::max(largest, upright.load);
  return largest;
}

TEST(HeadPlate, UprightsCarryAllLoads) {
  HeadPlate plate =
      head_plate_of(TimberMember{{100.0, 150.0}, testing::timber_c24()}, {0.0, 4000.0});
  plate.supports = {{150.0, 3000.0}, {1200.0, 2000.0}, {2600.0, {}}, {3850.0, 4000.0}};
  const std::vector<PlateForce> forces = {{0.0, 900.0}, {1500.0, 7000.0}, {3950.0, 1200.0}};
  const PlateAnswer answer = analyse_head_plate(plate, forces);
  const double up = std::accumulate(answer.reactions.begin(), answer.reactions.end(), 0.0);
  const double down = 9100.0 + 4000.0 * plate.weight;
  EXPECT_NEAR(up, down, 1e-6 * down);
}

TEST(HeadPlate, LetsGoOfAnUprightInsteadOfPullingIt) {
  HeadPlate plate =
      head_plate_of(TimberMember{{100.0, 150.0}, testing::timber_c24()}, {0.0, 3000.0}, 0.0);
  plate.supports = {{0.0, {}}, {1000.0, {}}, {3000.0, {}}};
  const std::vector<PlateForce> forces = {{2000.0, 5000.0}};
  const PlateAnswer answer = analyse_head_plate(plate, forces);
  EXPECT_EQ(answer.reactions[0], 0.0);
  EXPECT_NEAR(answer.reactions[1], 2500.0, 0.01);  // by moments, once the first lets go
}

TEST(HeadPlate, AJoistStraightOverAnUprightDoesNotBendIt) {
  HeadPlate plate =
      head_plate_of(TimberMember{{100.0, 150.0}, testing::timber_c24()}, {0.0, 2000.0}, 0.0);
  plate.supports = {{200.0, {}}, {1000.0, {}}, {1800.0, {}}};
  const PlateAnswer answer = analyse_head_plate(plate, std::vector<PlateForce>{{1000.0, 5000.0}});
  EXPECT_NEAR(answer.largest_moment(), 0.0, 5.0);
  EXPECT_NEAR(answer.largest_shear, 0.0, 0.01);
  EXPECT_NEAR(answer.reactions[1], 5000.0, 0.01);
}

TEST(JoistLoads, AddUpToTheFloorWhereverTheJoistsStand) {
  const Job job = testing::shored_job();
  const RowLoads loads = loads_on_row(job, job.dead_shores[0]);
  const ShoreFrame& frame = *job.dead_shores[0].frame;
  for (const double joist : {1000.0, 1037.0, 1200.0, 1399.0, 3100.0, 5000.0}) {
    const std::vector<HeadLoad> on_plate = head_loads(loads, frame, joist);
    EXPECT_NEAR(sum_of(on_plate), 1.25 * 5.0 * 4000.0, 1e-6) << joist;
    for (const HeadLoad& load : some(on_plate)) {
      EXPECT_LE(load.characteristic(), 1.25 * 5.0 * 400.0 + 1e-6);
      EXPECT_GE(load.x, frame.x.from);
      EXPECT_LE(load.x, frame.x.to);
    }
  }
}

TEST(JoistLoads, AreOnlyWhereTheFloorIs) {
  Job job = testing::shored_job();
  job.line_loads[0].x = {0.0, 2000.0};
  const RowLoads loads = loads_on_row(job, job.dead_shores[0]);
  const std::vector<HeadLoad> on_plate = head_loads(loads, frame_of(job), 1200.0);
  EXPECT_NEAR(sum_of(on_plate), 1.25 * 5.0 * 1000.0, 1e-6);
  for (const HeadLoad& load : on_plate) EXPECT_LE(load.x, 2200.0);
}

TEST(DeadShore, CarriesTheWholeFloorWhateverItsShare) {
  Job job = testing::shored_job();
  const ShoreDesign whole = design_of(job);
  job.dead_shores[0].share = 0.3;
  const ShoreDesign part = design_of(job);
  EXPECT_DOUBLE_EQ(part.total, whole.total);
  EXPECT_DOUBLE_EQ(part.largest_moment, whole.largest_moment);
  EXPECT_THAT(part.advice, Contains(HasSubstr("30% of the floor")));
}

TEST(DeadShore, CarriesMoreTheFartherItStandsFromTheWall) {
  Job job = testing::shored_job();
  const ShoreDesign near = design_of(job);
  frame_of(job).distance = 1600.0;
  const ShoreDesign far = design_of(job);
  EXPECT_DOUBLE_EQ(far.lever / near.lever, 3.2 / 2.4);
  EXPECT_GT(far.total, near.total);
}

// No upright carries less than its even share, and the worst cases together no less than all.
TEST(DeadShore, TheUprightsWorstLoadsAreNoLessThanAllOfIt) {
  const ShoreDesign design = design_of(testing::shored_job());
  double sum = 0.0;
  for (const UprightLoad& upright : design.uprights) sum += upright.load;
  EXPECT_GE(sum, design.total);
  EXPECT_GT(design.total, 1.25 * 5.0 * 4000.0);  // the head plate weighs something
}

TEST(DeadShore, ProposesEvenPropsNearTheRowsEnds) {
  const ShoreDesign design = design_of(testing::shored_job());
  ASSERT_GE(design.uprights.size(), 4U);
  EXPECT_DOUBLE_EQ(design.uprights.front().x, 1150.0);
  EXPECT_DOUBLE_EQ(design.uprights.back().x, 4850.0);
  EXPECT_EQ(design.uprights.front().mark, "floor shore P1");
  const double apart = design.uprights[1].x - design.uprights[0].x;
  for (std::size_t i = 1; i < design.uprights.size(); ++i)
    EXPECT_NEAR(design.uprights[i].x - design.uprights[i - 1].x, apart, 1e-9);
  EXPECT_LE(apart, 1200.0);
}

TEST(DeadShore, TheProposedPropsPassAndTheNextWiderRowFails) {
  Job job = testing::shored_job();
  frame_of(job).footing.ground.presumed_bearing = 0.06;  // so that the ground decides
  const ShoreDesign proposed = design_of(job);
  EXPECT_TRUE(passes_by_numbers(proposed.checks));
  EXPECT_GT(proposed.uprights.size(), 5U);
  props_of(job).most_apart =
      3700.0 / static_cast<double>(proposed.uprights.size() - 2) + 1e-6;  // one prop less
  const ShoreDesign wider = design_of(job);
  ASSERT_EQ(wider.uprights.size() + 1, proposed.uprights.size());
  EXPECT_FALSE(passes_by_numbers(wider.checks));
}

TEST(DeadShore, SaysSoWhereNoSpacingPasses) {
  Job job = testing::shored_job();
  frame_of(job).footing.ground.presumed_bearing = 0.001;
  EXPECT_THAT(design_of(job).advice, Contains(HasSubstr("At no spacing")));
}

TEST(DeadShore, PutsAPropUnderALoadAtAPoint) {
  const Job job = with_bath(testing::shored_job());
  const ShoreDesign design = design_of(job);
  const auto extra = std::ranges::find_if(
      design.uprights, [](const UprightLoad& upright) { return upright.extra_for == "bath"; });
  ASSERT_NE(extra, design.uprights.end());
  EXPECT_DOUBLE_EQ(extra->x, 2500.0);
  EXPECT_GE(extra->load, 1.25 * 4000.0);
  EXPECT_THAT(design.advice, Contains(HasSubstr("Put an extra prop under \"bath\" at x = 2.50 m")));
}

TEST(DeadShore, APropUnderTheLoadSparesItsNeighbours) {
  Job job = with_bath(testing::shored_job());
  props_of(job).places = {1150.0, 2000.0, 3300.0, 4850.0};
  const ShoreDesign without = design_of(job);
  props_of(job).places = {1150.0, 2000.0, 2500.0, 3300.0, 4850.0};
  const ShoreDesign with = design_of(job);
  EXPECT_LT(with.uprights[1].load, without.uprights[1].load);
  EXPECT_LT(with.uprights[3].load, without.uprights[2].load);
  EXPECT_THAT(without.advice, Contains(HasSubstr("A prop under \"bath\" at x = 2.50 m would")));
}

TEST(DeadShore, APropOfTheRowCloseByIsEnough) {
  Job job = testing::shored_job();
  props_of(job).most_apart = 1000.0;  // 1150, 2075, 3000, ...
  const ShoreDesign design = design_of(with_bath(job, 3150.0));
  for (const UprightLoad& upright : some(design.uprights)) EXPECT_EQ(upright.extra_for, "");
}

TEST(DeadShore, DoublesAStudUnderALoadAtAPoint) {
  const ShoreDesign design = design_of(with_bath(testing::stud_wall_job(), 2630.0));
  const auto doubled = std::ranges::find_if(
      design.uprights, [](const UprightLoad& upright) { return upright.extra_for == "bath"; });
  ASSERT_NE(doubled, design.uprights.end());
  EXPECT_DOUBLE_EQ(doubled->x, 1023.5 + 4 * 400.0);
  EXPECT_THAT(design.advice, Contains(HasSubstr("Double the stud under \"bath\"")));
}

TEST(DeadShore, ASuspendedFloorNeverPasses) {
  Job job = testing::shored_job();
  frame_of(job).footing.suspended_floor = "the kitchen floor";
  const ShoreDesign design = design_of(job);
  int found = 0;
  for (const Check& check : design.checks) {
    if (check.check != "suspended floor") continue;
    ++found;
    EXPECT_FALSE(check.passes());
  }
  EXPECT_EQ(found, static_cast<int>(design.uprights.size()));
  EXPECT_THAT(design.advice, Contains(HasSubstr("down to solid ground")));
}

TEST(DeadShore, HasEachPropItsSoleAndItsGroundChecked) {
  const ShoreDesign design = design_of(testing::shored_job());
  for (const UprightLoad& upright : some(design.uprights))
    for (const char* name :
         {"prop strength", "sole bending", "prop base on sole", "ground pressure"})
      EXPECT_GT(worst_of(design, upright.mark, name), 0.0) << upright.mark << " " << name;
  for (const char* name :
       {"bending", "shear", "bearing of a joist", "bearing on a prop's head", "deflection"})
    EXPECT_GT(worst_of(design, "floor shore head plate", name), 0.0) << name;
}

TEST(DeadShore, HasTheWorstStudChecked) {
  const ShoreDesign design = design_of(testing::stud_wall_job());
  for (const char* name : {"compression along the grain", "bearing on the sole",
                           "bearing on the head plate", "sole bending", "ground pressure"})
    EXPECT_GT(worst_of(design, "floor shore stud", name), 0.0) << name;
}

TEST(DeadShore, NoggingsHalveTheLengthAlongTheRow) {
  Job job = testing::stud_wall_job();
  const double held = worst_of(design_of(job), "floor shore stud", "compression along the grain");
  std::get<StudRow>(frame_of(job).uprights).nogging = false;
  const double free = worst_of(design_of(job), "floor shore stud", "compression along the grain");
  EXPECT_GT(free, 1.5 * held);
}

TEST(DeadShore, ASteelHeadPlateIsCheckedAsSteel) {
  Job job = testing::shored_job();
  frame_of(job).head = steel_member(testing::uc_152x23, SteelGrade::s275);
  const ShoreDesign design = design_of(job);
  for (const char* name : {"bending", "shear", "bending with shear", "lateral-torsional buckling"})
    EXPECT_GT(worst_of(design, "floor shore head plate", name), 0.0) << name;
  EXPECT_GT(worst_of(design, "floor shore head plate", "web bearing at an upright"), 0.0);
}

TEST(DeadShore, APlateThatWouldTipOffItsPropsNeverPasses) {
  Job job = testing::shored_job();
  props_of(job).places = {1200.0, 1400.0};
  const ShoreDesign design = design_of(job);
  ASSERT_THAT(design.checks, SizeIs(1));
  EXPECT_EQ(design.checks[0].check, "tipping");
  EXPECT_FALSE(design.checks[0].passes());
}

TEST(DeadShore, ChecksNameTheFirstStageInWhichItIsTight) {
  Job job = testing::shored_job();
  job.analysis.sequence = Sequence::staged;
  const auto stages_of_checks = [&] {
    std::set<std::string> stages;
    for (const Check& check : design_of(job).checks) stages.insert(check.stage);
    return stages;
  };
  EXPECT_THAT(stages_of_checks(), ElementsAre("floors propped"));
  job.analysis.sequence = Sequence::at_once;
  EXPECT_THAT(stages_of_checks(), ElementsAre(""));
}

TEST(DeadShore, PropsAndGroundTakeUnfactoredLoads) {
  Job job = testing::shored_job();
  props_of(job).most_apart = 1000.0;
  const ShoreDesign design = design_of(job);
  const double load = design.uprights[1].load / 1000.0;
  const auto strength = std::ranges::find_if(design.checks, [](const Check& check) {
    return check.member == "floor shore P2" && check.check == "prop strength";
  });
  ASSERT_NE(strength, design.checks.end());
  EXPECT_DOUBLE_EQ(strength->demand, load);
  job.check_rules.factors.gamma_Q = 3.0;
  const ShoreDesign heavier = design_of(job);
  EXPECT_DOUBLE_EQ(heavier.uprights[1].load, design.uprights[1].load);
  EXPECT_GT(worst_of(heavier, "floor shore head plate", "bending"),
            worst_of(design, "floor shore head plate", "bending"));
}

TEST(DeadShore, WhatFailsComesWithTheNextThingThatPasses) {
  Job job = testing::shored_job();
  props_of(job).places = {1150.0, 3000.0, 4850.0};
  std::get<TimberMember>(frame_of(job).head).section = {75.0, 100.0};
  frame_of(job).footing.ground.presumed_bearing = 0.6;
  const ShoreDesign design = design_of(job);
  ASSERT_GT(worst_of(design, "floor shore head plate", "bending"), 1.0);
  EXPECT_THAT(design.advice, Contains(::testing::AllOf(HasSubstr("floor shore head plate"),
                                                       HasSubstr("would pass"))));
}

TEST(DeadShore, StudsThatBuckleAreToldWhatHoldsThem) {
  Job job = testing::stud_wall_job();
  auto& studs = std::get<StudRow>(frame_of(job).uprights);
  studs.nogging = false;
  studs.stud.section.b = 30.0;
  frame_of(job).footing.ground.presumed_bearing = 3.0;
  ASSERT_GT(worst_of(design_of(job), "floor shore stud", "compression along the grain"), 1.0);
  EXPECT_THAT(design_of(job).advice, Contains(HasSubstr("noggings at mid-height would pass")));
}

TEST(DeadShore, ASoleBeyondTheRowsEndsSparesTheGroundThere) {
  Job job = testing::stud_wall_job();
  const double flush = worst_of(design_of(job), "floor shore stud", "ground pressure");
  frame_of(job).footing.sole.length += 400.0;
  const double beyond = worst_of(design_of(job), "floor shore stud", "ground pressure");
  EXPECT_GT(flush, 1.5 * beyond);
}

TEST(DeadShore, SaysWhichLoadsReachBeyondTheRow) {
  EXPECT_THAT(design_of(testing::shored_job()).advice,
              Contains(HasSubstr("\"floor\" reaches beyond the row")));
}

TEST(DeadShore, WithoutAFrameIsNotWorkedOut) {
  Job job = testing::shored_job();
  job.dead_shores[0].frame.reset();
  EXPECT_THAT(design_shores(job), SizeIs(0));
}

TEST(DeadShore, ItsLoadsAreThoseOfItsMirrorImage) {
  Job job = with_bath(testing::shored_job(), 2700.0);
  const ShoreDesign design = design_of(job);
  const ShoreDesign image = design_of(with_bath(testing::shored_job(), 3300.0));
  ASSERT_EQ(design.uprights.size(), image.uprights.size());
  for (std::size_t i = 0; i < design.uprights.size(); ++i)
    EXPECT_NEAR(design.uprights[i].load, image.uprights[image.uprights.size() - 1 - i].load,
                1e-3 * largest_load(design));
}

}  // namespace
}  // namespace deadshore::solver
