#include "solver/job/stage_state.h"
#include "solver/job/usual_stages.h"
#include "tests/solver/staged_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

using ::testing::ElementsAre;
using testing::first_analysis;
using testing::run;
using testing::stage_named;
using testing::staged_wall_job;

std::vector<std::string> names_of(const std::vector<Stage>& stages) {
  std::vector<std::string> names;
  for (const Stage& stage : stages) names.push_back(stage.name);
  return names;
}

double needle_sum(const PanelResult& analysis) {
  double sum = 0.0;
  for (const NeedleReaction& needle : analysis.needles) sum += needle.force;
  return sum;
}

double base_sum(const PanelResult& analysis) {
  return analysis.base_left + analysis.base_right + analysis.base_cut;
}

/// Nothing weighs anything, so that history can have no effect before a load comes on.
Job weightless() {
  Job job = staged_wall_job();
  job.masonry.unit_weight = 0.0;
  job.dead_shores.clear();
  job.beam.reset();
  return job;
}

std::vector<Operation> all_loads(const Job& job, Act act) {
  std::vector<Operation> operations;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i)
    operations.push_back({act, LineLoadId{i}});
  for (std::size_t i = 0; i < job.point_loads.size(); ++i)
    operations.push_back({act, PointLoadId{i}});
  return operations;
}

std::vector<Operation> all_needles(const Job& job, Act act) {
  std::vector<Operation> operations;
  for (std::size_t i = 0; i < job.needles.size(); ++i) operations.push_back({act, NeedleId{i}});
  return operations;
}

TEST(UsualStages, FollowTheWorkFromTheWholeWallToTheLastNeedleOut) {
  EXPECT_THAT(names_of(usual_stages(staged_wall_job())),
              ElementsAre("as built", "floors propped", "needles in", "cut", "pockets", "padstones",
                          "beam in", "packed", "N1 out", "N2 out", "N3 out", "N4 out", "finished"));
}

TEST(UsualStages, WithoutABeamEndAtTheCut) {
  Job job = staged_wall_job();
  job.beam.reset();
  job.dead_shores.clear();
  EXPECT_THAT(names_of(usual_stages(job)), ElementsAre("as built", "needles in", "cut"));
}

TEST(UsualStages, DaysNeverFall) {
  const std::vector<Stage> stages = usual_stages(staged_wall_job());
  for (std::size_t i = 1; i < stages.size(); ++i) EXPECT_GE(stages[i].day, stages[i - 1].day);
}

TEST(StageState, AShoreTakesItsShareOffAndGivesItBack) {
  Job job = staged_wall_job();
  job.dead_shores[0].share = 0.75;
  StageState state = state_before(job);
  state = state_after(job, state, {"on", 0.0, {{Act::tighten, ShoreId{0}}}});
  EXPECT_DOUBLE_EQ(state.line_load_share[0], 0.25);
  EXPECT_DOUBLE_EQ(state.line_load_share[1], 1.0);
  state = state_after(job, state, {"off", 0.0, {{Act::slacken, ShoreId{0}}}});
  EXPECT_DOUBLE_EQ(state.line_load_share[0], 1.0);
}

// Without weight and with all loads off until the wall is cut, the history is empty and the answer
// is that of everything at once.
TEST(StagedWall, IsTheAtOnceAnswerWhereHistoryHasNoEffect) {
  const Job job = weightless();
  const std::vector<Stage> staged{{"bare", 0.0, all_loads(job, Act::load_off)},
                                  {"needles", 0.0, all_needles(job, Act::fit)},
                                  {"cut", 0.0, {{Act::remove, WorkPart::cut}}},
                                  {"loaded", 0.0, all_loads(job, Act::load_on)}};
  std::vector<Operation> everything = all_needles(job, Act::fit);
  everything.push_back({Act::remove, WorkPart::cut});
  const auto slow = run(job, staged);
  const auto at_once = run(job, {{"all", 0.0, everything}});
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const double expected = at_once[0].analyses[0].needles[i].force;
    ASSERT_GT(expected, 1000.0);
    EXPECT_NEAR(slow[3].analyses[0].needles[i].force, expected, 1e-8 * expected);
  }
  EXPECT_NEAR(slow[3].analyses[0].max_settlement, at_once[0].analyses[0].max_settlement, 1e-10);
}

/// Forces on the needles after the last of `stages`, with `preload` N in each needle.
std::vector<double> last_forces(double preload, const std::vector<Stage>& stages) {
  Job job = staged_wall_job();
  for (Needle& needle : job.needles) needle.preload = preload;
  const std::vector<StageResult> results = run(job, stages);
  std::vector<double> forces;
  for (const NeedleReaction& needle : results.back().analyses[0].needles) {
    forces.push_back(needle.force);
  }
  return forces;
}

// Elastic and in contact throughout, so states superpose: jacking before the cut and after it come
// to the same, and each newton of preload adds the same.
TEST(StagedWall, PreloadAndCutSuperpose) {
  const Job job = staged_wall_job();
  const Stage fit{"fit", 0.0, all_needles(job, Act::fit)};
  const Stage jack{"jack", 0.0, all_needles(job, Act::preload)};
  const Stage cut{"cut", 1.0, {{Act::remove, WorkPart::cut}}};
  const std::vector<double> none = last_forces(0.0, {fit, cut});
  const std::vector<double> jacked_first = last_forces(2000.0, {fit, jack, cut});
  const std::vector<double> cut_first = last_forces(2000.0, {fit, cut, jack});
  const std::vector<double> twice = last_forces(4000.0, {fit, jack, cut});
  for (std::size_t i = 0; i < none.size(); ++i) {
    EXPECT_GT(jacked_first[i], none[i] + 100.0);
    EXPECT_NEAR(jacked_first[i], cut_first[i], 1e-7 * cut_first[i]);
    EXPECT_NEAR(twice[i] - none[i], 2.0 * (jacked_first[i] - none[i]), 1e-6 * none[i]);
  }
}

TEST(StagedWall, ANeedleFittedToAWallAtRestCarriesNothing) {
  const auto stages = run(staged_wall_job());
  EXPECT_LT(needle_sum(first_analysis(stages, "needles in")), 1e-6);
}

TEST(StagedWall, ABeamPlacedUnderASettledWallCarriesNothingButItself) {
  const Job job = staged_wall_job();
  const auto stages = run(job);
  for (const char* name : {"beam in", "packed"}) {
    const PanelResult& analysis = first_analysis(stages, name);
    ASSERT_TRUE(analysis.beam.has_value());
    EXPECT_LT(analysis.beam->from_wall, 1e-3);
    const double weight = job.beam->weight() * (4200.0 + 2 * 150.0);
    EXPECT_NEAR(analysis.beam->reaction_left + analysis.beam->reaction_right, weight,
                1e-6 * weight);
  }
}

TEST(StagedWall, WhatANeedleLetsGoOfGoesToTheBeamTheOthersAndThePiers) {
  const Job job = staged_wall_job();
  const auto stages = run(job);
  std::size_t released = 0;
  for (std::size_t k = 1; k < stages.size(); ++k) {
    if (!stages[k].name.ends_with(" out")) continue;
    ++released;
    const PanelResult& before = stages[k - 1].analyses[0];
    const PanelResult& after = stages[k].analyses[0];
    // The beam stands on the piers, so all that needles lose arrives at the bases.
    EXPECT_NEAR(base_sum(after) - base_sum(before), needle_sum(before) - needle_sum(after), 1e-3);
    EXPECT_GT(after.beam->from_wall, before.beam->from_wall);
  }
  EXPECT_EQ(released, job.needles.size());
}

TEST(StagedWall, WithAllNeedlesOutTheBasesCarryEverything) {
  const auto stages = run(staged_wall_job());
  const PanelResult& last = first_analysis(stages, "N4 out");
  EXPECT_EQ(needle_sum(last), 0.0);
  EXPECT_NEAR(base_sum(last), last.load_total, 1e-6 * last.load_total);
  const BeamResult& beam = *last.beam;
  const double weight = staged_wall_job().beam->weight() * 4500.0;
  EXPECT_NEAR(beam.reaction_left + beam.reaction_right, beam.from_wall + weight,
              1e-6 * beam.from_wall);
}

// With packing that does not harden meanwhile and closed contact the end state is linear.
TEST(StagedWall, TheOrderOfReleaseMattersOnTheWayAndNotInTheEnd) {
  const Job job = staged_wall_job();
  std::vector<Stage> usual = usual_stages(job);
  std::vector<Stage> start;
  for (const Stage& stage : usual) {
    if (stage.name == "N1 out") break;
    start.push_back(stage);
  }
  const double day = start.back().day + 7.0;
  const auto released = [&](const std::vector<std::size_t>& order) {
    std::vector<Stage> stages = start;
    for (const std::size_t needle : order) {
      stages.push_back(
          {job.needles[needle].name + " out", day, {{Act::release, NeedleId{needle}}}});
    }
    return run(job, stages);
  };
  const auto outer_first = released({0, 3, 1, 2});
  const auto middle_first = released({1, 2, 0, 3});
  const BeamResult& a = *outer_first.back().analyses[0].beam;
  const BeamResult& b = *middle_first.back().analyses[0].beam;
  const std::size_t first_out = start.size();
  EXPECT_GT(middle_first[first_out].analyses[0].beam->largest_moment,
            outer_first[first_out].analyses[0].beam->largest_moment);
  EXPECT_NEAR(a.from_wall, b.from_wall, 0.02 * a.from_wall);
  EXPECT_NEAR(a.largest_moment, b.largest_moment, 0.02 * a.largest_moment);
}

TEST(StagedWall, PackingThatHardensKeepsItsLoad) {
  const Job job = staged_wall_job();
  std::vector<Stage> stages;
  for (const Stage& stage : usual_stages(job)) {
    stages.push_back(stage);
    if (stage.name == "N2 out") break;
  }
  stages.push_back({"weeks later", stages.back().day + 25.0, {}});
  const auto results = run(job, stages);
  const BeamResult& before = *results[results.size() - 2].analyses[0].beam;
  const BeamResult& after = *results.back().analyses[0].beam;
  ASSERT_GT(before.from_wall, 1000.0);
  EXPECT_NEAR(after.from_wall, before.from_wall, 1e-6 * before.from_wall);
  EXPECT_GT(after.packing_strength, before.packing_strength);
}

// The floor's load leaves the wall where its shore is tightened, to the newton.
TEST(StagedWall, ADeadShoreTakesTheFloorOffTheWall) {
  const auto stages = run(staged_wall_job());
  const double before = first_analysis(stages, "as built").load_total;
  const double after = first_analysis(stages, "floors propped").load_total;
  EXPECT_NEAR(before - after, 7.0 * 6000.0, 1e-6 * before);
}

/// A wall on needles that give, over joist ends that catch it after `gap`.
PanelResult wall_over_joists(double gap) {
  Job job = staged_wall_job();
  job.beam.reset();
  for (Needle& needle : job.needles) needle.stiffness = 4000.0;
  job.dead_shores[0].joist_ends = DeadShore::JoistEnds{gap, 2000.0, 400.0};
  return run(job).back().analyses[0];
}

TEST(StagedWall, JoistsCatchAWallOnlyOnceTheirGapHasClosed) {
  const PanelResult tight = wall_over_joists(0.0);
  const PanelResult slack = wall_over_joists(1.0);
  const PanelResult never = wall_over_joists(50.0);
  EXPECT_GT(tight.joists[0].force, 10e3);
  EXPECT_LT(slack.joists[0].force, tight.joists[0].force);
  EXPECT_EQ(never.joists[0].force, 0.0);
  EXPECT_GT(slack.max_settlement, tight.max_settlement);
  EXPECT_GE(never.max_settlement, slack.max_settlement);
  // It closes at the right load: just above and just below the drop of a wall without joists.
  double drop = 0.0;
  for (const NeedleReaction& needle : never.needles) drop = std::max(drop, needle.settlement);
  EXPECT_EQ(wall_over_joists(1.5 * drop).joists[0].force, 0.0);
  EXPECT_GT(wall_over_joists(0.5 * drop).joists[0].force, 0.0);
}

TEST(StagedWall, TheBeamsMomentIsInBalanceWithItsForces) {
  const auto stages = run(staged_wall_job());
  const BeamResult& beam = *first_analysis(stages, "N4 out").beam;
  EXPECT_NEAR(beam.stations.back().shear, 0.0, 1e-6 * beam.from_wall);
  EXPECT_NEAR(beam.stations.back().moment, 0.0, 1e-6 * beam.largest_moment);
}

TEST(StagedWall, EachStageIsInEquilibrium) {
  const auto stages = run(staged_wall_job());
  ASSERT_FALSE(stages.empty());
  for (const StageResult& stage : stages) {
    EXPECT_LT(stage.analyses[0].equilibrium_error, 1e-8) << stage.name;
  }
}

TEST(StagedWall, MasonryThatIsOutHasNoStress) {
  const auto stages = run(staged_wall_job());
  const PanelFields& fields = first_analysis(stages, "cut").fields;
  int out = 0;
  for (std::size_t quad = 0; quad < fields.quad_out.size(); ++quad) {
    if (fields.quad_out[quad] == 0) continue;
    ++out;
    EXPECT_EQ(fields.quad_stress[quad].yy, 0.0);
  }
  EXPECT_GT(out, 100);
}

}  // namespace
}  // namespace deadshore::solver
