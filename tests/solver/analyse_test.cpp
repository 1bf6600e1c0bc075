#include "solver/study/analyse.h"

#include "mesh/error.h"
#include "solver/loads/house_loads.h"
#include "tests/solver/invented_wall.h"
#include "tests/solver/needle_samples.h"
#include "tests/some.h"

#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::solver {
namespace {

const PanelResult& analysis_of(const JobResult& result, MasonryModel model) {
  for (const PanelResult& analysis : result.stages.front().analyses) {
    if (analysis.model == model) return analysis;
  }
  throw std::logic_error("not analysed");
}

TEST(Analyse, InventedWallHasNoFaults) {
  EXPECT_TRUE(find_faults(invented_wall()).empty());
}

TEST(Analyse, EveryAnalysisIsInEquilibriumWithTheHandSumOfAllLoads) {
  const JobResult result = analyse(invented_wall());
  for (const PanelResult& analysis : some(result.stages.front().analyses)) {
    EXPECT_LT(analysis.equilibrium_error, 1e-8);
    EXPECT_NEAR(analysis.load_total, result.hand.load_total, 1e-9 * result.hand.load_total);
    double up = analysis.base_left + analysis.base_right;
    for (const NeedleReaction& needle : some(analysis.needles)) up += needle.force;
    EXPECT_NEAR(up, result.hand.load_total, 1e-8 * result.hand.load_total);
  }
}

TEST(Analyse, MirroredWallHasMirroredReactions) {
  for (const mesh::QuadOrder order : {mesh::QuadOrder::four_node, mesh::QuadOrder::eight_node}) {
    Job job = invented_wall();
    job.left_end = WallEnd::held;
    job.analysis.element = order;
    job.analysis.mesh_size = order == mesh::QuadOrder::four_node ? 100.0 : 200.0;
    const JobResult straight = analyse(job);
    const JobResult image = analyse(mirrored(job));
    for (const MasonryModel model : {MasonryModel::uncracked, MasonryModel::cracked}) {
      const PanelResult& a = analysis_of(straight, model);
      const PanelResult& b = analysis_of(image, model);
      const double tolerance = 1e-7 * a.load_total;
      EXPECT_NEAR(a.base_left, b.base_right, tolerance);
      EXPECT_NEAR(a.base_right, b.base_left, tolerance);
      EXPECT_NEAR(a.thrust_left, b.thrust_right, tolerance);
      for (std::size_t i = 0; i < a.needles.size(); ++i) {
        EXPECT_NEAR(a.needles[i].force, b.needles[b.needles.size() - 1 - i].force, tolerance);
      }
    }
  }
}

TEST(Analyse, StrongMasonryDoesNotCrack) {
  Job job = invented_wall();
  job.masonry.tensile_strength = 100.0;
  const JobResult result = analyse(job);
  const PanelResult& uncracked = analysis_of(result, MasonryModel::uncracked);
  const PanelResult& cracked = analysis_of(result, MasonryModel::cracked);
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    EXPECT_NEAR(cracked.needles[i].force, uncracked.needles[i].force, 1e-9 * cracked.load_total);
  }
}

TEST(Analyse, SlackNeedleTakesLessAndItsReasonSaysSo) {
  Job job = invented_wall();
  const double tight = analysis_of(analyse(job), MasonryModel::uncracked).needles[1].force;
  job.needles[1].slack = 1.0;
  const JobResult result = analyse(job);
  EXPECT_LT(analysis_of(result, MasonryModel::uncracked).needles[1].force, 0.5 * tight);
  EXPECT_NE(result.comparison[1].reason.find("1.0 mm clear"), std::string::npos);
}

TEST(Analyse, PreloadPutsMoreOnTheNeedle) {
  Job job = invented_wall();
  const double plain = analysis_of(analyse(job), MasonryModel::uncracked).needles[1].force;
  job.needles[1].preload = 10000.0;
  const double jacked = analysis_of(analyse(job), MasonryModel::uncracked).needles[1].force;
  EXPECT_GT(jacked, plain + 1000.0);
  EXPECT_LT(jacked, plain + 10000.0);
}

TEST(Analyse, UncrackedLoadsSuperpose) {
  Job both = invented_wall();
  both.analysis.masonry = {MasonryModel::uncracked};
  Job without = both;
  without.point_loads[0].dead = without.point_loads[0].imposed = 0.0;
  Job twice = both;
  twice.point_loads[0].dead *= 2.0;
  twice.point_loads[0].imposed *= 2.0;
  const auto pushes = [](const Job& job) { return analyse(job).stages[0].analyses[0].needles; };
  const auto once = pushes(both);
  const auto none = pushes(without);
  const auto doubled = pushes(twice);
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_NEAR(doubled[i].force - once[i].force, once[i].force - none[i].force, 1e-6);
  }
}

TEST(Analyse, MeshEffectOfNeedlesShrinksWithTheElements) {
  Job job = invented_wall();
  job.analysis.masonry = {MasonryModel::uncracked};
  const auto worst = [](const JobResult& result) {
    double most = 0.0;
    for (const double change : result.mesh_effects.at(0).needle_change) {
      most = std::max(most, std::abs(change));
    }
    return most;
  };
  const double coarse = worst(analyse(job));
  job.analysis.mesh_size = 50.0;
  EXPECT_LT(worst(analyse(job)), coarse);
}

TEST(Analyse, ReasonsAreGivenWhereMethodsDifferByOverFifteenPercent) {
  const JobResult result = analyse(invented_wall());
  for (const NeedleComparison& row : some(result.comparison)) {
    const bool differs = std::abs(row.hand - row.uncracked) > 0.15 * row.uncracked ||
                         std::abs(row.cracked - row.uncracked) > 0.15 * row.uncracked;
    EXPECT_EQ(!row.reason.empty(), differs) << row.needle << ": " << row.reason;
  }
}

/// The invented wall on needle frames whose ground is `softness` times as soft as stiff clay.
Job framed_wall(double softness) {
  Job job = invented_wall();
  job.analysis.masonry = {MasonryModel::uncracked};
  job.needle_frames = {sample_needle()};
  for (NeedleProp& prop : job.needle_frames[0].props) {
    prop.footing.subgrade_modulus /= softness;
    prop.footing.sole.timber.strength_class.E_0_mean /= softness;
  }
  for (Needle& needle : job.needles) needle.frame = 0;
  return job;
}

TEST(Coupling, NeedleTakesItsStiffnessFromItsFrame) {
  const JobResult result = analyse(framed_wall(1.0));
  const PanelResult& panel = result.stages[0].analyses[0];
  ASSERT_EQ(result.needle_designs.size(), 4U);
  for (std::size_t i = 0; i < 4; ++i) {
    const double stiffness = result.job.needles[i].stiffness;
    EXPECT_NEAR(panel.needles[i].force / panel.needles[i].settlement, stiffness, 0.02 * stiffness);
    EXPECT_NEAR(result.needle_designs[i].answer.stiffness, stiffness, 0.02 * stiffness);
  }
  EXPECT_GE(panel.coupling_passes, 1);
  EXPECT_FALSE(result.checks.empty());
}

TEST(Coupling, SofterGroundShedsLoadToThePiers) {
  double last = 0.0;
  for (const double softness : {0.01, 1.0, 10.0, 100.0}) {
    const PanelResult panel = analyse(framed_wall(softness)).stages[0].analyses[0];
    const double piers = panel.base_left + panel.base_right;
    EXPECT_GT(piers, last);
    last = piers;
  }
}

TEST(Coupling, StiffFramesGiveTheReactionsOfRigidSupports) {
  Job job = framed_wall(1e-4);
  NeedleFrame& frame = job.needle_frames[0];
  frame.member =
      steel_member({"a very stiff needle", SectionKind::i_section, 900.0, 400.0, 30.0, 60.0, 20.0},
                   SteelGrade::s275);
  for (NeedleProp& prop : frame.props) {
    prop.distance = 50.0;
    prop.prop.shortest = 1000.0;
    prop.prop.outer = prop.prop.inner = {500.0, 100.0};
  }
  Job rigid = job;
  rigid.needle_frames.clear();
  for (Needle& needle : rigid.needles) {
    needle.frame.reset();
    needle.stiffness = 1e9;
  }
  const auto stiff_needles = analyse(job).stages[0].analyses[0].needles;
  const auto rigid_needles = analyse(rigid).stages[0].analyses[0].needles;
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(stiff_needles[i].force, rigid_needles[i].force, 0.03 * rigid_needles[i].force);
  }
}

TEST(Coupling, NothingIsDesignedForAWallThatDoesNotStand) {
  Job job = framed_wall(1.0);
  job.analysis.masonry = {MasonryModel::cracked};
  job.masonry.tensile_strength = 0.0;
  const JobResult result = analyse(job);
  ASSERT_FALSE(result.stages[0].analyses[0].stands());
  EXPECT_TRUE(result.needle_designs.empty());
  for (const Check& check : result.checks)  // what loads press on straight under them stays
    EXPECT_EQ(check.check, "masonry under the load") << check.member;
}

TEST(Analyse, ProgressNeverGoesBack) {
  double last = 0.0;
  bool ordered = true;
  const JobResult result = analyse(invented_wall(), [&](std::string_view, double fraction) {
    ordered = ordered && fraction >= last;
    last = fraction;
  });
  EXPECT_TRUE(ordered);
  EXPECT_EQ(last, 1.0);
  EXPECT_FALSE(result.times.empty());
}

}  // namespace
}  // namespace deadshore::solver
