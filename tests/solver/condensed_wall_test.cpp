#include "solver/panel/condensed_wall.h"

#include "solver/panel/wall_panel.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/staged_samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace deadshore::solver {
namespace {

/// The invented wall with lintels, condensed, and in full beside it.
class Condensed : public ::testing::Test {
 protected:
  Condensed()
      : job_(invented_wall()),
        mesh_(mesh_of(job_, 150.0)),
        model_(mesh_.quads, supports_of(job_, mesh_.quads)) {}

  [[nodiscard]] CondensedWall::Reactions condensed(const Job& needles, const Job& wall) {
    const CondensedWall condensed(model_, loading_of(wall, model_, MasonryModel::uncracked));
    return condensed.on(loading_of(needles, model_, MasonryModel::uncracked).beds);
  }
  [[nodiscard]] CondensedWall::Reactions condensed(const Job& needles) {
    return condensed(needles, job_);
  }

  void expect_same_in_full(const Job& needles) {
    const CondensedWall::Reactions found = condensed(needles);
    const PanelResult full = testing::at_once(needles, mesh_, MasonryModel::uncracked);
    const double tolerance = 1e-9 * full.load_total;
    for (std::size_t i = 0; i < needles.needles.size(); ++i) {
      EXPECT_NEAR(found.beds[i], full.needles[i].force, tolerance) << i;
    }
    EXPECT_NEAR(found.base_left, full.base_left, tolerance);
    EXPECT_NEAR(found.base_right, full.base_right, tolerance);
    const double up =
        std::accumulate(found.beds.begin(), found.beds.end(), found.base_left + found.base_right);
    EXPECT_NEAR(up, full.load_total, tolerance);
  }

  Job job_;
  mesh::WallMesh mesh_;
  PanelModel model_;
};

TEST_F(Condensed, GivesTheFullSolutionForTheNeedlesAsTheyAre) {
  expect_same_in_full(job_);
}

TEST_F(Condensed, GivesTheFullSolutionForOtherNeedles) {
  Job stiff = job_;
  for (Needle& needle : stiff.needles) needle.stiffness *= 2.0;
  expect_same_in_full(stiff);
  Job slack = job_;
  slack.needles[1].slack = 1.0;
  expect_same_in_full(slack);
  Job preloaded = job_;
  preloaded.needles[2].preload = 15e3;
  expect_same_in_full(preloaded);
  Job nowhere = job_;
  for (Needle& needle : nowhere.needles) needle.slack = 1000.0;
  expect_same_in_full(nowhere);
}

TEST_F(Condensed, StifferNeedleTakesMoreFromItsNeighbours) {
  Job stiffer = job_;
  stiffer.needles[1].stiffness *= 2.0;
  const auto before = condensed(job_);
  const auto after = condensed(stiffer);
  EXPECT_GT(after.beds[1], 1.05 * before.beds[1]);
  EXPECT_LT(after.beds[0], before.beds[0]);
  EXPECT_LT(after.beds[2], before.beds[2]);
}

TEST_F(Condensed, SlackShedsLoadToNeighbours) {
  Job slack = job_;
  slack.needles[1].slack = 0.5;
  const auto before = condensed(job_);
  const auto after = condensed(slack);
  EXPECT_LT(after.beds[1], before.beds[1]);
  EXPECT_GT(after.beds[0], before.beds[0]);
  EXPECT_GT(after.beds[2], before.beds[2]);
  EXPECT_GT(after.base_left, before.base_left);
}

TEST_F(Condensed, AllStiffnessesTogetherMoveNothing) {
  Job twice = job_;
  twice.masonry.E *= 2.0;
  for (Needle& needle : twice.needles) needle.stiffness *= 2.0;
  const auto before = condensed(job_);
  const auto after = condensed(twice, twice);
  for (std::size_t i = 0; i < before.beds.size(); ++i) {
    EXPECT_NEAR(after.beds[i], before.beds[i], 1e-8 * before.beds[i]);
  }
}

TEST_F(Condensed, StifferMasonrySpansPastTheNeedles) {
  Job stiffer = job_;
  stiffer.masonry.E *= 2.0;
  const auto before = condensed(job_);
  const auto after = condensed(job_, stiffer);
  EXPECT_GT(after.base_left + after.base_right, before.base_left + before.base_right);
}

}  // namespace
}  // namespace deadshore::solver
