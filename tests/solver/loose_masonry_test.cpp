#include "solver/study/analyse.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/staged_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

PanelResult cracked(Job job) {
  job.analysis.masonry = {MasonryModel::cracked};
  return analyse(job).stages.front().analyses.front();
}

/// An invented wall without any tension, between neighbours that hold it, on two needles.
Job dry_wall_between_neighbours() {
  Job job = invented_wall();
  job.wall.length = 3600.0;
  job.wall.top = {{0.0, 3600.0}, {3600.0, 3600.0}};
  job.wall.cut = {500.0, 3100.0, 1500.0};
  job.wall.openings = {{"landing window", 1300.0, 2200.0, 1000.0, 700.0, 0.0}};
  job.needles = {{"N1", 1000.0, 150.0, 20000.0, 0.0, 0.0},
                 {"N2", 2600.0, 150.0, 20000.0, 0.0, 0.0}};
  job.line_loads = {{"roof", 3600.0, false, {0.0, 3600.0}, 6.0, 3.0}};
  job.point_loads.clear();
  job.masonry.tensile_strength = 0.0;
  job.left_end = job.right_end = WallEnd::held;
  job.analysis.mesh_size = 50.0;
  return job;
}

TEST(LooseMasonry, SoundWallHasNone) {
  const PanelResult result = cracked(invented_wall());
  EXPECT_TRUE(result.stands());
  EXPECT_TRUE(result.loose.empty());
  EXPECT_LT(result.residual_load, 0.01 * result.load_total);
}

// With no tension a flat soffit with weight cannot be in equilibrium: what lies below the arches
// from needle to needle hangs on nothing (Heyman, The Stone Skeleton, 1995, ch. 2, from memory).
TEST(LooseMasonry, FringeBelowTheArchesIsNamedWithItsPlace) {
  const PanelResult result = cracked(dry_wall_between_neighbours());
  EXPECT_TRUE(result.stands());
  ASSERT_FALSE(result.loose.empty());
  const LoosePatch& heaviest = result.loose.front();
  EXPECT_THAT(heaviest.where, HasSubstr("on the soffit between N1 and N2"));
  EXPECT_GT(heaviest.x.from, 1000.0 + 75.0);
  EXPECT_LT(heaviest.x.to, 2600.0 - 75.0);
  EXPECT_EQ(heaviest.y.from, 1500.0);
  EXPECT_LT(heaviest.y.length(), 0.25 * heaviest.x.length()) << "a fringe, not a pier";
  EXPECT_GT(result.residual_load, 0.0);
}

TEST(LooseMasonry, LintelHoldsWhatIsOverAnOpening) {
  Job job = dry_wall_between_neighbours();
  const auto over_a_head = [](const PanelResult& result) {
    for (const LoosePatch& patch : result.loose) {
      if (patch.where.find("over the head") == 0) return true;
    }
    return false;
  };
  EXPECT_TRUE(over_a_head(cracked(job)));
  for (std::size_t i = 0; i < job.wall.openings.size(); ++i) {
    Lintel lintel;
    lintel.shape = {"lintel of the " + job.wall.openings[i].name, i, 150.0, 150.0};
    lintel.material = "concrete";
    lintel.unit_weight = 25e-6;
    lintel.E = 30000.0;
    lintel.nu = 0.2;
    lintel.thickness = job.thickness;
    job.lintels.push_back(lintel);
    job.wall.lintels.push_back(lintel.shape);
  }
  EXPECT_FALSE(over_a_head(cracked(job)));
}

// With free ends and no tension nothing resists
// the arch's thrust but the piers' weight.
TEST(LooseMasonry, SpreadingWallHasNoEquilibriumAndNeedsATie) {
  Job job = invented_wall();
  job.masonry.tensile_strength = 0.0;
  const JobResult result = analyse(job);
  const PanelResult& open = result.stages.front().analyses.back();
  EXPECT_FALSE(open.stands());
  EXPECT_THAT(open.no_equilibrium.value_or(""), HasSubstr("held, or a tie"));
  EXPECT_EQ(result.mesh_effects.size(), 1U) << "no mesh effect of reactions that mean nothing";
  EXPECT_TRUE(std::isnan(result.comparison.front().cracked));
}

TEST(LooseMasonry, EndThatLeansAwayNeedsAHold) {
  Job job = dry_wall_between_neighbours();
  job.right_end = WallEnd::free;
  const PanelResult result = cracked(job);
  ASSERT_FALSE(result.loose.empty());
  EXPECT_THAT(result.loose.front().where, HasSubstr("at the right end, which leans away"));
}

TEST(LooseMasonry, NoNeedleIsAdvisedBeforeTheCut) {
  Job job = dry_wall_between_neighbours();
  job.analysis.masonry = {MasonryModel::cracked};
  job.analysis.mesh_size = 200.0;
  job.left_end = job.right_end = WallEnd::free;
  job.wall.openings = {{"wide window", 300.0, 2200.0, 3000.0, 900.0, 0.0}};
  const std::vector<StageResult> stages = testing::run(job, {{"as built", 0.0, {}}});
  const PanelResult& as_built = testing::first_analysis(stages, "as built");
  ASSERT_FALSE(as_built.loose.empty());
  for (const LoosePatch& patch : as_built.loose) {
    EXPECT_THAT(patch.where, Not(HasSubstr("needle")));
  }
  EXPECT_THAT(as_built.no_equilibrium.value_or(""), Not(HasSubstr("needle or")));
}

TEST(LooseMasonry, WallWithoutNeedlesDoesNotStandCracked) {
  Job job = dry_wall_between_neighbours();
  job.wall.openings = {{"wide window", 700.0, 1600.0, 2200.0, 1800.0, 0.0}};
  job.needles.clear();
  const PanelResult result = cracked(job);
  EXPECT_FALSE(result.stands() && result.loose.empty());
}

}  // namespace
}  // namespace deadshore::solver
