#include "solver/loads/chimney_checks.h"

#include "tests/solver/invented_wall.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

/// A breast of 1.2 m x 300 mm x 4 m at 20 kN/m3: 28.8 kN, on a level 300 mm over the soffit.
Job wall_with_breast_at(double x) {
  Job job = invented_wall();
  Chimney chimney;
  chimney.name = "breast";
  chimney.x = x;
  chimney.level = job.wall.cut.soffit + 300.0;
  chimney.width = 1200.0;
  chimney.projection = 300.0;
  chimney.height = 4000.0;
  chimney.unit_weight = 20e-6;
  job.house.chimneys.push_back(chimney);
  return job;
}

std::vector<Check> checks_of(const Job& job) {
  return check_chimneys(job, take_down(job.house));
}

TEST(ChimneyChecks, ABreastOverTheCutIsNeverPassed) {
  const Job job = invented_wall();
  const double middle = 0.5 * (job.wall.cut.left + job.wall.cut.right);
  const std::vector<Check> checks = checks_of(wall_with_breast_at(middle));
  ASSERT_EQ(checks.size(), 1u);
  EXPECT_TRUE(checks[0].not_verified);
  EXPECT_EQ(checks[0].member, "breast");
}

TEST(ChimneyChecks, SayTheMomentOfTheWeightAboutTheWallsMiddle) {
  const Job job = invented_wall();
  ASSERT_EQ(job.thickness, 215.0);
  const std::vector<Check> checks =
      checks_of(wall_with_breast_at(0.5 * (job.wall.cut.left + job.wall.cut.right)));
  ASSERT_EQ(checks.size(), 1u);
  // 28.8 kN x (215 + 300)/2 mm
  EXPECT_THAT(checks[0].caution, HasSubstr("28.8 kN stand 300 mm proud"));
  EXPECT_THAT(checks[0].caution, HasSubstr("7.4 kNm"));
}

TEST(ChimneyChecks, LeaveABreastAloneThatStandsBesideTheSpread) {
  const Job job = invented_wall();
  // Its near side 300 mm over the soffit: the 45-degree line has come in as far.
  EXPECT_THAT(checks_of(wall_with_breast_at(job.wall.cut.right - 300.0 + 600.0)), IsEmpty());
  EXPECT_EQ(checks_of(wall_with_breast_at(job.wall.cut.right - 301.0 + 600.0)).size(), 1u);
}

}  // namespace
}  // namespace deadshore::solver
