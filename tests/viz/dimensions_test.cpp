#include "viz/page/dimensions.h"

#include <gtest/gtest.h>

namespace deadshore::viz {
namespace {

/// Stops at these places along a wall drawn at 0.07 points a mm.
std::vector<DimensionStop> stops_at(const std::vector<double>& places) {
  std::vector<DimensionStop> stops;
  for (const double place : places) stops.push_back({0.07 * place, place});
  return sorted_stops(stops);
}

void expect_clear(const std::vector<DimensionLabel>& labels) {
  EXPECT_FALSE(labels.empty());
  for (std::size_t i = 0; i < labels.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      if (labels[i].row != labels[j].row) continue;
      EXPECT_TRUE(labels[i].from > labels[j].to || labels[j].from > labels[i].to)
          << labels[j].text << " and " << labels[i].text;
    }
}

TEST(Dimensions, StandOnTheLineBetweenTheirStops) {
  const auto stops = stops_at({0.0, 1200.0, 4600.0, 6000.0});
  const auto labels = lay_out_dimensions(stops, 0.0, 500.0);
  ASSERT_EQ(labels.size(), 3U);
  for (std::size_t i = 0; i < labels.size(); ++i) {
    EXPECT_EQ(labels[i].row, 0);
    EXPECT_GT(labels[i].from, stops[i].page);
    EXPECT_LT(labels[i].to, stops[i + 1].page);
  }
  EXPECT_EQ(labels[1].text, "3400");
}

TEST(Dimensions, TooWideForTheirStretchHangUnderTheLine) {
  const auto labels = lay_out_dimensions(stops_at({0.0, 2000.0, 2120.0, 4000.0}), 0.0, 500.0);
  ASSERT_EQ(labels.size(), 3U);
  EXPECT_EQ(labels[1].text, "120");
  EXPECT_EQ(labels[1].row, 1);
}

TEST(Dimensions, NeverRunIntoEachOther) {
  for (const double pitch : {20.0, 60.0, 110.0, 150.0, 240.0, 300.0, 333.3, 450.0}) {
    std::vector<double> places;
    for (int i = 0; i < 14; ++i) places.push_back(pitch * i);
    expect_clear(lay_out_dimensions(stops_at(places), -10.0, 500.0));
  }
  expect_clear(lay_out_dimensions(
      stops_at({0.0, 30.0, 90.0, 1000.0, 1010.0, 1200.0, 1290.0, 6000.0}), 0.0, 500.0));
}

TEST(Dimensions, OfManyCloseNeedlesAreAllThere) {
  for (const double pitch : {100.0, 150.0, 225.0, 300.0}) {
    std::vector<double> places{0.0, 1200.0};
    for (int i = 1; i <= 8; ++i) places.push_back(1200.0 + pitch * i);
    places.push_back(6000.0);
    const auto stops = stops_at(places);
    const auto labels = lay_out_dimensions(stops, 0.0, 500.0, tight_rows);
    EXPECT_EQ(labels.size(), stops.size() - 1) << pitch;
    expect_clear(labels);
  }
}

TEST(Dimensions, TakeAsMuchDepthAsTheirRowsNeed) {
  const double loose = level_pitch(stops_at({0.0, 1200.0, 4600.0, 6000.0}));
  EXPECT_DOUBLE_EQ(loose, dimension_pitch);
  const double tight = level_pitch(stops_at({0.0, 1000.0, 1150.0, 1300.0, 1450.0, 3000.0}));
  EXPECT_GT(tight, dimension_pitch + 7.0);
}

TEST(Dimensions, StayInTheRoomGiven) {
  const auto labels = lay_out_dimensions(stops_at({0.0, 400.0, 800.0, 1200.0}), 0.0, 60.0);
  ASSERT_FALSE(labels.empty());
  for (const DimensionLabel& label : labels) {
    EXPECT_GE(label.from, 0.0);
    EXPECT_LE(label.to, 60.0);
  }
}

TEST(Dimensions, StopsAtOnePlaceAreOneStop) {
  EXPECT_EQ(stops_at({1200.0, 0.0, 1200.4, 6000.0, 1200.0}).size(), 3U);
}

}  // namespace
}  // namespace deadshore::viz
