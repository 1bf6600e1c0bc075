#include "solver/panel/support_reactions.h"
#include "solver/study/analyse.h"
#include "solver/study/envelope.h"
#include "tests/solver/staged_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace deadshore::solver {
namespace {

Job coarse_job() {
  Job job = testing::staged_wall_job();
  job.analysis.mesh_size = 300.0;
  job.analysis.masonry = {MasonryModel::uncracked, MasonryModel::cracked};
  job.left_end = job.right_end = WallEnd::held;
  return job;
}

const JobResult& sound_result() {
  static const JobResult result = analyse(coarse_job());
  return result;
}

TEST(AnalyseStaged, AnswersForEveryStageUnderEveryModel) {
  const JobResult& result = sound_result();
  ASSERT_EQ(result.stages.size(), usual_stages(coarse_job()).size());
  for (const StageResult& stage : result.stages) {
    ASSERT_EQ(stage.analyses.size(), 2u) << stage.name;
    EXPECT_EQ(stage.analyses[0].model, MasonryModel::uncracked);
    EXPECT_EQ(stage.analyses[1].model, MasonryModel::cracked);
    EXPECT_TRUE(stage.safety.has_value()) << stage.name;
    for (const PanelResult& analysis : stage.analyses) {
      EXPECT_EQ(analysis.beam.has_value(), stage.day > 7.0) << stage.name;
      EXPECT_EQ(analysis.fields.quad_out.size(),
                static_cast<std::size_t>(result.mesh.quads.quad_count()));
    }
  }
  const std::optional<Damage>& first = result.stages.front().analyses.front().damage;
  ASSERT_TRUE(first.has_value());
  EXPECT_EQ(first->tensile_strain, 0.0);  // damage is measured from the first stage on
}

TEST(AnalyseStaged, SetsHandAgainstTheWallAsCutAndAgainstTheBeamAsStaged) {
  const JobResult& result = sound_result();
  ASSERT_NE(compared_stage(result), nullptr);
  EXPECT_EQ(compared_stage(result)->name, "cut");
  ASSERT_EQ(result.comparison.size(), 4u);
  EXPECT_DOUBLE_EQ(result.comparison[0].uncracked,
                   compared_stage(result)->analyses[0].needles[0].force);
  ASSERT_EQ(result.mesh_effects.size(), 2u);
  EXPECT_EQ(result.mesh_effects[0].stage, "cut");
  const auto by_hand = std::ranges::count_if(result.checks, [](const Check& check) {
    return check.check == "bending" && check.stage == "hand, full load";
  });
  EXPECT_EQ(by_hand, 1);
  EXPECT_EQ(std::ranges::count(result.checks, std::string("bending"), &Check::check), 2);
}

TEST(AnalyseStaged, KnowsTheMeshErrorOfEverySupportThatCarriesAnythingAtEveryStage) {
  const JobResult& result = sound_result();
  for (const StageResult& stage : result.stages) {
    for (const PanelResult& analysis : stage.analyses) {
      for (const SupportReaction& support : reactions_of(result.job, analysis)) {
        EXPECT_EQ(support.mesh_error.has_value(), support.force != 0.0)
            << stage.name << ' ' << label_of(result.job, support.support);
      }
    }
  }
}

TEST(AnalyseStaged, AsksWhatIfOfBothModels) {
  const JobResult& result = sound_result();
  ASSERT_EQ(result.sensitivities.size(), 2u);
  for (const Sensitivity& sensitivity : result.sensitivities) {
    EXPECT_EQ(sensitivity.mesh_size, 600.0);
    EXPECT_TRUE(sensitivity.by_differences);
    EXPECT_GE(sensitivity.supports.size(), 6u);
  }
}

// Free ends and no tension: nothing resists the arch's thrust once the wall is cut.
TEST(AnalyseStaged, EndsWithTheStageThatHasNoEquilibrium) {
  Job job = coarse_job();
  job.left_end = job.right_end = WallEnd::free;
  job.masonry.tensile_strength = 0.0;
  const JobResult result = analyse(job);
  ASSERT_LT(result.stages.size(), usual_stages(job).size());
  for (std::size_t k = 0; k + 1 < result.stages.size(); ++k) {
    EXPECT_TRUE(result.stages[k].analyses[1].stands()) << result.stages[k].name;
  }
  EXPECT_FALSE(result.stages.back().analyses[1].stands());
  EXPECT_FALSE(stands(result));
}

TEST(AnalyseStaged, AJobAtOnceHasOneStage) {
  Job job = coarse_job();
  job.analysis.sequence = Sequence::at_once;
  job.analysis.masonry = {MasonryModel::uncracked};
  const JobResult result = analyse(job);
  ASSERT_EQ(result.stages.size(), 1u);
  EXPECT_EQ(result.stages[0].name, "cut");
  EXPECT_FALSE(result.stages[0].safety.has_value());
}

}  // namespace
}  // namespace deadshore::solver
