#include "mesh/wall_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::mesh {
namespace {

using ::testing::DoubleEq;
using ::testing::ElementsAre;

std::vector<double> places(const std::vector<FeatureLine>& lines) {
  std::vector<double> at;
  for (const FeatureLine& line : lines) at.push_back(line.at);
  return at;
}

TEST(FeatureLines, HardLinesComeBeforeSoftOnesWhateverTheirOrder) {
  const std::vector<FeatureLine> lines = {
      {103.0, LineKind::soft, "s"}, {0.0, LineKind::hard, "a"}, {100.0, LineKind::hard, "b"}};
  EXPECT_THAT(places(keep_lines(lines, 5.0)), ElementsAre(0.0, 100.0));
}

TEST(FeatureLines, OfTwoHardLinesTheEarlierGivenStays) {
  const std::vector<FeatureLine> lines = {{103.0, LineKind::hard, "a"},
                                          {100.0, LineKind::hard, "b"}};
  EXPECT_THAT(places(keep_lines(lines, 5.0)), ElementsAre(103.0));
}

TEST(FeatureLines, LinesAtTheToleranceBothStay) {
  const std::vector<FeatureLine> lines = {{100.0, LineKind::hard, "a"},
                                          {105.0, LineKind::soft, "b"}};
  EXPECT_THAT(places(keep_lines(lines, 5.0)), ElementsAre(100.0, 105.0));
}

TEST(FeatureLines, GapsAreCutIntoEqualStepsNotAboveTheSize) {
  const std::vector<FeatureLine> lines = {
      {0.0, LineKind::hard, ""}, {100.0, LineKind::hard, ""}, {160.0, LineKind::hard, ""}};
  EXPECT_THAT(subdivide(lines, 50.0), ElementsAre(0.0, 50.0, 100.0, 130.0, 160.0));
  EXPECT_THAT(subdivide(lines, 100.0 / 3.0),
              ElementsAre(0.0, DoubleEq(100.0 / 3.0), DoubleEq(200.0 / 3.0), 100.0, 130.0, 160.0));
}

TEST(FeatureLines, NearestIsFoundPastBothEndsAndBetween) {
  const std::vector<double> values = {0.0, 10.0, 20.0};
  EXPECT_EQ(nearest_index(values, -5.0), 0);
  EXPECT_EQ(nearest_index(values, 4.0), 0);
  EXPECT_EQ(nearest_index(values, 6.0), 1);
  EXPECT_EQ(nearest_index(values, 99.0), 2);
}

}  // namespace
}  // namespace deadshore::mesh
