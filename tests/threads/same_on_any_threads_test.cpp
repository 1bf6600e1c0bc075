#include "solver/fem/job_mesh.h"
#include "solver/panel/panel_model.h"
#include "solver/study/analyse.h"
#include "tests/solver/grid_mesh.h"
#include "tests/solver/staged_samples.h"

#include <gtest/gtest.h>
#include <omp.h>

#include <random>
#include <vector>

/// Several threads give what one gives, bit by bit, and get in each other's way nowhere: the preset
/// tsan runs these under ThreadSanitizer.
namespace deadshore::solver {
namespace {

using mesh::QuadOrder;

/// Runs with so many threads in OpenMP's loops, whatever the machine has.
class Threads {
 public:
  explicit Threads(int count) : before_(omp_get_max_threads()) { omp_set_num_threads(count); }
  ~Threads() { omp_set_num_threads(before_); }
  Threads(const Threads&) = delete;
  Threads& operator=(const Threads&) = delete;

 private:
  int before_;
};

struct Assembled {
  Eigen::VectorXd resistance;
  SparseStiffness stiffness;
};

/// A wall of 40 x 40 distorted elements (over 256 of each colour) that cracks all over and leans on
/// a needle.
Assembled assembled(QuadOrder order, int threads) {
  const Threads running(threads);
  const mesh::QuadMesh mesh = testing::distorted_mesh(40, 40, order, 4000.0, 3000.0, 5);
  std::vector<Support> supports;
  for (const int node : testing::nodes_on(mesh, testing::left_edge))
    supports.push_back({node, 0, 0.0});
  PanelModel model(mesh, supports);
  PanelLoading loading;
  loading.materials = {{1500.0, 0.2, 19e-6, 215.0, 0.05}};
  loading.load = model.weight(loading.materials);
  loading.beds.push_back(needle_bed(mesh, mesh.sides_of(testing::bottom_edge),
                                    Needle{"N1", 2000.0, 400.0, 20000.0, 0.0, 0.0}, NeedleId{}));
  std::mt19937 random(7);
  std::uniform_real_distribution<double> uniform(-0.1, 0.1);
  const Eigen::VectorXd free =
      Eigen::VectorXd::NullaryExpr(model.equations().count(), [&] { return uniform(random); });
  Assembled result{{}, model.empty_stiffness()};
  result.resistance =
      model.resistance(loading, model.start() + model.spread_out(free), &result.stiffness);
  return result;
}

class Assembly : public ::testing::TestWithParam<QuadOrder> {};
INSTANTIATE_TEST_SUITE_P(Orders, Assembly,
                         ::testing::Values(QuadOrder::four_node, QuadOrder::eight_node));

TEST_P(Assembly, IsTheSameBitByBitOnAnyNumberOfThreads) {
  const Assembled one = assembled(GetParam(), 1);
  EXPECT_GT(one.resistance.norm(), 0.0);
  for (const int threads : {2, 4, 7}) {
    const Assembled more = assembled(GetParam(), threads);
    EXPECT_TRUE(one.resistance == more.resistance) << threads;
    const Eigen::Map<const Eigen::VectorXd> values(one.stiffness.valuePtr(),
                                                   one.stiffness.nonZeros());
    const Eigen::Map<const Eigen::VectorXd> others(more.stiffness.valuePtr(),
                                                   more.stiffness.nonZeros());
    EXPECT_TRUE(values == others) << threads;
  }
}

std::vector<double> needle_forces(const JobResult& result) {
  std::vector<double> forces;
  for (const StageResult& stage : result.stages)
    for (const PanelResult& analysis : stage.analyses)
      for (const NeedleReaction& needle : analysis.needles) forces.push_back(needle.force);
  return forces;
}

TEST(WholeJob, StagesAndLimitAnalysisSideBySideGiveWhatOneThreadGives) {
  Job job = testing::staged_wall_job();
  job.analysis.sequence = Sequence::staged;
  job.analysis.masonry = {MasonryModel::uncracked, MasonryModel::cracked};
  job.analysis.mesh_size = 300.0;
  job.wall.openings.clear();
  job.wall.lintels.clear();
  job.stages = usual_stages(job);
  job.stages.resize(4);  // to the cut: the sanitizer is slow
  const auto forces_on = [&](int threads) {
    const Threads running(threads);
    return needle_forces(analyse(job));
  };
  const std::vector<double> one = forces_on(1);
  EXPECT_GT(one.size(), 10U);
  EXPECT_EQ(forces_on(3), one);
}

}  // namespace
}  // namespace deadshore::solver
