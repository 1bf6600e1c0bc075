#include "viz/page/labels.h"

#include <gtest/gtest.h>

#include <array>

namespace deadshore::viz {
namespace {

constexpr Rect page{0.0, 0.0, 100.0, 100.0};

TEST(LabelRoom, GivesTheFirstFreePlace) {
  LabelRoom room(page);
  room.take({0.0, 0.0, 50.0, 20.0});
  const auto place = room.place(std::array<Rect, 3>{
      {{10.0, 5.0, 40.0, 15.0}, {10.0, 15.0, 40.0, 25.0}, {10.0, 25.0, 40.0, 35.0}}});
  ASSERT_TRUE(place);
  EXPECT_DOUBLE_EQ(place->top, 25.0);
}

TEST(LabelRoom, KeepsEveryLabelClearOfTheOthers) {
  LabelRoom room(page);
  std::vector<Rect> placed;
  for (int i = 0; i < 12; ++i)
    if (const auto place = room.place(boxes_around({40.0, 45.0, 60.0, 55.0}, {5.0, 5.0}, 10)))
      placed.push_back(*place);
  EXPECT_GE(placed.size(), 9U);
  for (std::size_t i = 0; i < placed.size(); ++i) {
    EXPECT_TRUE(page.holds(placed[i]));
    for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(placed[i].overlaps(placed[j]));
  }
}

TEST(LabelRoom, GivesNothingOffThePage) {
  LabelRoom room(page);
  EXPECT_FALSE(room.place(std::array{Rect{90.0, 10.0, 110.0, 20.0}}));
}

TEST(LabelRoom, BoxesThatOnlyTouchAreFree) {
  LabelRoom room(page);
  room.take({0.0, 0.0, 10.0, 10.0});
  EXPECT_TRUE(room.is_free({10.0, 0.0, 20.0, 10.0}));
}

}  // namespace
}  // namespace deadshore::viz
