#include "solver/result/sensitivity.h"

#include "solver/fem/job_mesh.h"
#include "solver/stages/stage_sequence.h"
#include "solver/study/analyse.h"
#include "solver/study/reaction_brackets.h"
#include "solver/study/sensitivity_study.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/staged_samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <span>
#include <utility>

namespace deadshore::solver {
namespace {

SupportReaction carried(double force) {
  return {support_of(NeedleId{0}), 0.0, 0.0, force, {}};
}

/// One needle, and what its reaction is without and with each change; below 0: no answer.
Sensitivity brackets(const std::vector<Change>& changes, double found, double unchanged,
                     const std::vector<double>& changed) {
  ChangedReactions reactions{
      MasonryModel::uncracked, StageId{0}, {carried(found)}, {carried(unchanged)}, {}};
  for (const double force : changed) {
    auto& alone = reactions.changed.emplace_back();
    if (force >= 0.0) alone.push_back(carried(force));
  }
  return brackets_of(reactions, changes);
}

std::vector<Change> two_changes() {
  Change half{Unsure::masonry_stiffness, {}, "half", {}};
  Change twice{Unsure::masonry_stiffness, {}, "twice", {}};
  return {half, twice};
}

TEST(ReactionBrackets, AddTheChangesFoundElsewhereToTheReaction) {
  const Sensitivity found = brackets(two_changes(), 10.0, 11.0, {8.0, 15.0});
  const ReactionBracket& bracket = found.supports.at(0).brackets.at(0);
  EXPECT_DOUBLE_EQ(bracket.least, 7.0);
  EXPECT_DOUBLE_EQ(bracket.most, 14.0);
  EXPECT_TRUE(found.falls.empty());
}

TEST(ReactionBrackets, HoldTheReactionItselfEvenIfBothChangesRaiseIt) {
  const Sensitivity found = brackets(two_changes(), 10.0, 10.0, {12.0, 13.0});
  EXPECT_DOUBLE_EQ(found.supports.at(0).brackets.at(0).least, 10.0);
}

TEST(ReactionBrackets, NeverGoBelowNothing) {
  const Sensitivity found = brackets(two_changes(), 1.0, 4.0, {0.0, 4.0});
  EXPECT_DOUBLE_EQ(found.supports.at(0).brackets.at(0).least, 0.0);
}

TEST(ReactionBrackets, NameTheChangeThatHasNoAnswerAndKeepItOut) {
  const Sensitivity found = brackets(two_changes(), 10.0, 10.0, {-1.0, 12.0});
  EXPECT_EQ(found.falls, std::vector<std::string>{"half"});
  EXPECT_DOUBLE_EQ(found.supports.at(0).brackets.at(0).least, 10.0);
  EXPECT_DOUBLE_EQ(found.supports.at(0).brackets.at(0).most, 12.0);
}

TEST(ReactionBrackets, NameTheNeedleWhosePackingDoesMost) {
  const std::vector<Change> changes = {{Unsure::packing, NeedleId{0}, "", {}},
                                       {Unsure::packing, NeedleId{1}, "", {}}};
  const Sensitivity found = brackets(changes, 10.0, 10.0, {4.0, 13.0});
  EXPECT_EQ(found.supports.at(0).brackets.at(0).needle, NeedleId{0});
  EXPECT_EQ(found.supports.at(0).worst()->needle, NeedleId{0});
}

const SupportSensitivity& of(const Sensitivity& sensitivity, NeedleId needle) {
  return *std::ranges::find(sensitivity.supports, support_of(needle), &SupportSensitivity::support);
}

const ReactionBracket& of(const SupportSensitivity& support, Unsure what) {
  return *std::ranges::find(support.brackets, what, &ReactionBracket::what);
}

Job job_at_once() {
  Job job = invented_wall();
  job.analysis.mesh_size = 150.0;
  return job;
}

const JobResult& run_at_once() {
  static const JobResult result = analyse(job_at_once());
  return result;
}

TEST(Sensitivity, OfBothModelsHoldsTheReactionsOfTheRun) {
  const JobResult& result = run_at_once();
  ASSERT_EQ(result.sensitivities.size(), 2U);
  for (std::size_t m = 0; m < 2; ++m) {
    const Sensitivity& found = result.sensitivities[m];
    const std::vector<SupportReaction> reactions =
        reactions_of(result.job, result.stages.front().analyses[m]);
    ASSERT_EQ(found.supports.size(), reactions.size());
    for (std::size_t i = 0; i < reactions.size(); ++i) {
      const SupportSensitivity& support = found.supports[i];
      EXPECT_EQ(support.reaction, reactions[i].force);
      EXPECT_EQ(support.brackets.size(), m == 0 ? 3U : 4U);
      for (const ReactionBracket& bracket : support.brackets) {
        EXPECT_LE(bracket.least, support.reaction);
        EXPECT_GE(bracket.most, support.reaction);
        EXPECT_LT(bracket.least, bracket.most);
      }
    }
    EXPECT_TRUE(found.falls.empty());
  }
  EXPECT_EQ(result.sensitivities[0].mesh_size, 150.0);
  EXPECT_FALSE(result.sensitivities[0].by_differences);
  EXPECT_EQ(result.sensitivities[1].mesh_size, 300.0);
  EXPECT_TRUE(result.sensitivities[1].by_differences);
}

TEST(Sensitivity, BracketsAreWhatRunsOfTheChangedJobsGive) {
  const JobResult& result = run_at_once();
  Job slack = job_at_once();
  slack.needles[1].slack = packing_loss;
  const JobResult changed = analyse(slack);
  for (std::size_t m = 0; m < 2; ++m) {
    const double force = changed.stages.front().analyses[m].needles[1].force;
    const ReactionBracket& bracket = of(of(result.sensitivities[m], NeedleId{1}), Unsure::packing);
    EXPECT_EQ(bracket.needle, NeedleId{1});
    // Uncracked exactly; cracked but for a tenth of the change, which is found on larger elements.
    const PanelResult& before = result.stages.front().analyses[m];
    const double change = before.needles[1].force - force;
    EXPECT_GT(change, 0.0);
    EXPECT_NEAR(bracket.least, force, m == 0 ? 1e-9 * before.load_total : 0.1 * change);
  }
}

/// The staged wall on its own mesh, without what else a run finds.
struct StagedRun {
  explicit StagedRun(std::vector<MasonryModel> models) : job(testing::staged_wall_job()) {
    job.analysis.masonry = std::move(models);
    whole = whole_mesh_of(job, job.analysis.mesh_size);
    stages = run_stages(job, usual_stages(job), whole);
  }
  [[nodiscard]] std::vector<Sensitivity> sensitivities() const {
    return sensitivities_of(job, usual_stages(job), stages, whole);
  }

  Job job;
  mesh::WallMesh whole;
  std::vector<StageResult> stages;
};

TEST(Sensitivity, OfStagesIsThatOfTheOneInWhichTheNeedlesCarryMost) {
  const StagedRun run({MasonryModel::uncracked, MasonryModel::cracked});
  const std::vector<Sensitivity> found = run.sensitivities();
  ASSERT_EQ(found.size(), 2U);
  const StageId stage_looked_at = found[0].supports.at(0).stage;
  const StageResult& looked_at = run.stages.at(index_of(stage_looked_at));
  const auto on_needles = [](const StageResult& stage, std::size_t model) {
    double sum = 0.0;
    for (const NeedleReaction& needle : stage.analyses[model].needles) sum += needle.force;
    return sum;
  };
  for (std::size_t m = 0; m < 2; ++m) {
    for (const StageResult& stage : run.stages) {
      EXPECT_LE(on_needles(stage, m), 1.01 * on_needles(looked_at, m)) << stage.name;
    }
    for (std::size_t i = 0; i < run.job.needles.size(); ++i) {
      const NeedleReaction& needle = looked_at.analyses[m].needles[i];
      const SupportSensitivity& support = of(found[m], NeedleId{i});
      EXPECT_EQ(support.stage, stage_looked_at);
      EXPECT_EQ(support.reaction, needle.force);
      EXPECT_EQ(support.brackets.size(), m == 0 ? 3U : 4U);
      EXPECT_GT(of(support, Unsure::needle_stiffness).most, needle.force);
      EXPECT_LT(of(support, Unsure::packing).least, needle.force);
    }
  }
}

// A change taken through the stages on larger elements comes near what a run of the changed job
// gives.
TEST(Sensitivity, OfStagesIsWhatARunOfTheChangedJobGives) {
  const StagedRun run({MasonryModel::uncracked});
  const std::vector<Sensitivity> found = run.sensitivities();
  Job stiff = run.job;
  for (Needle& needle : stiff.needles) needle.stiffness *= greatest_factor;
  const std::vector<StageResult> stages = testing::run(stiff);
  const PanelResult& changed =
      stages.at(index_of(found.at(0).supports.at(0).stage)).analyses.front();
  const ReactionBracket& bracket = of(of(found[0], NeedleId{1}), Unsure::needle_stiffness);
  EXPECT_NEAR(bracket.most, changed.needles[1].force, 2e-3 * changed.load_total);
}

TEST(Sensitivity, IsNotGivenForAWallThatDoesNotStand) {
  const Job job = invented_wall();
  PanelResult fallen;
  fallen.model = MasonryModel::cracked;
  fallen.no_equilibrium = "it spreads";
  const StageResult cut{"cut", {fallen}};
  const std::vector<Stage> stages = {stage_at_once(job)};
  EXPECT_TRUE(sensitivities_of(job, stages, std::span(&cut, 1), mesh_of(job, 200.0)).empty());
}

TEST(Sensitivity, ComesOutTheSameBitForBit) {
  const StagedRun run({MasonryModel::uncracked});
  const Sensitivity first = run.sensitivities().at(0);
  const Sensitivity again = run.sensitivities().at(0);
  ASSERT_EQ(first.supports.size(), again.supports.size());
  for (std::size_t i = 0; i < first.supports.size(); ++i) {
    for (std::size_t k = 0; k < first.supports[i].brackets.size(); ++k) {
      EXPECT_EQ(first.supports[i].brackets[k].least, again.supports[i].brackets[k].least);
      EXPECT_EQ(first.supports[i].brackets[k].most, again.supports[i].brackets[k].most);
    }
  }
}

}  // namespace
}  // namespace deadshore::solver
