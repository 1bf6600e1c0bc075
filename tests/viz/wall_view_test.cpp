#include "viz/wall/wall_view.h"

#include "made_up_job.h"

#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

namespace deadshore::viz {
namespace {

TEST(WallView, LabelsWiderThanThePageLeaveAQuarterOfItToTheWall) {
  const mesh::WallShape wall = made_up_result().job.wall;
  const Margins wide{.left = 2.0 * page_width, .right = page_width, .top = 900.0, .bottom = 20.0};
  const WallPage page = fit_wall(wall, wide);
  EXPECT_GT(page.view.scale, 0.0);
  EXPECT_DOUBLE_EQ(page.size.width, 3.25 * page_width);
  EXPECT_GE(page.view.across(0.0), wide.left);
  EXPECT_LE(page.view.across(wall.length), page.size.width - wide.right);
}

TEST(WallView, LinesAreThinnedByHalvesUntilAnEyeTellsThemApart) {
  EXPECT_DOUBLE_EQ(readable_pitch(75.0, 1.0, 3.2), 75.0);
  EXPECT_DOUBLE_EQ(readable_pitch(75.0, 0.04, 3.2), 150.0);
  EXPECT_DOUBLE_EQ(readable_pitch(75.0, 0.04, 3.0), 75.0);
  EXPECT_DOUBLE_EQ(readable_pitch(75.0, 0.001, 3.2), 4800.0);
}

TEST(WallView, LinesAtNoScaleAreRefused) {
  for (const double scale : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
    EXPECT_THROW((void)readable_pitch(75.0, scale, 3.2), std::invalid_argument) << scale;
  }
}

}  // namespace
}  // namespace deadshore::viz
