#include "viz/view/view_state.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

namespace deadshore::viz {
namespace {

const ViewChoices choices{
    {"as built", "cut", "finished"}, {"uncracked", "cracked"}, {"stress", "settlement"}, 200.0};

ViewState pressed(ViewState state, std::initializer_list<const char*> keys) {
  for (const char* key : keys) {
    const std::optional<AfterKey> after = after_key(state, choices, key);
    EXPECT_TRUE(after.has_value()) << key;
    if (after) state = after->state;
  }
  return state;
}

TEST(ViewState, BeginsAsBuiltWithCrackedMasonryAndTheFirstField) {
  const ViewState state = first_view(choices);
  EXPECT_EQ(state.stage, 0U);
  EXPECT_EQ(state.analysis, 1U);
  EXPECT_EQ(state.field, 0U);
  EXPECT_EQ(state.magnification, 200.0);
}

TEST(ViewState, StagesGoByArrowsAndEndAtTheirEnds) {
  const ViewState first = first_view(choices);
  EXPECT_EQ(pressed(first, {"Left"}).stage, 0U);
  EXPECT_EQ(pressed(first, {"Right"}).stage, 1U);
  EXPECT_EQ(pressed(first, {"Right", "Right", "Right"}).stage, 2U);
  EXPECT_EQ(pressed(first, {"End", "Left"}).stage, 1U);
  EXPECT_EQ(pressed(first, {"End", "Home"}).stage, 0U);
}

TEST(ViewState, FieldsGoRoundWithNoneAfterTheLast) {
  const ViewState first = first_view(choices);
  EXPECT_EQ(pressed(first, {"Down"}).field, 1U);
  EXPECT_EQ(pressed(first, {"Down", "Down"}).field, std::nullopt);
  EXPECT_EQ(pressed(first, {"Down", "Down", "Down"}), first);
  EXPECT_EQ(pressed(first, {"Up"}).field, std::nullopt);
  EXPECT_EQ(pressed(first, {"n"}).field, std::nullopt);
  EXPECT_EQ(pressed(first, {"2"}).field, 1U);
  EXPECT_FALSE(after_key(first, choices, "7"));
}

TEST(ViewState, ASwitchPressedTwiceIsAsBefore) {
  const ViewState first = first_view(choices);
  for (const char* key : {"a", "w", "v", "h"}) {
    EXPECT_NE(pressed(first, {key}), first) << key;
    EXPECT_EQ(pressed(first, {key, key}), first) << key;
  }
}

TEST(ViewState, MagnificationsGoOneTwoFiveFromNoneUpAndBack) {
  double magnification = 0.0;
  std::vector<double> up;
  for (int i = 0; i < 7; ++i) up.push_back(magnification = magnified_more(magnification));
  EXPECT_THAT(up, ::testing::ElementsAre(1, 2, 5, 10, 20, 50, 100));
  std::vector<double> down;
  for (int i = 0; i < 7; ++i) down.push_back(magnification = magnified_less(magnification));
  EXPECT_THAT(down, ::testing::ElementsAre(50, 20, 10, 5, 2, 1, 0));
  EXPECT_EQ(magnified_more(1e5), 1e5);
  EXPECT_EQ(magnified_less(0.0), 0.0);
  EXPECT_EQ(magnified_more(30.0), 50.0);
  EXPECT_EQ(magnified_less(30.0), 20.0);
}

TEST(ViewState, MovementsFitWhenTheLargestShowsAsAThirtiethOfTheWallAtMost) {
  EXPECT_EQ(fitting_magnification(1.0, 6000.0), 200.0);
  EXPECT_EQ(fitting_magnification(1.01, 6000.0), 100.0);
  EXPECT_EQ(fitting_magnification(500.0, 6000.0), 1.0);
  EXPECT_EQ(fitting_magnification(0.0, 6000.0), 1.0);
}

TEST(ViewState, WhatOnlyTheWindowCanDoIsLeftToIt) {
  const ViewState first = first_view(choices);
  EXPECT_EQ(after_key(first, choices, "q"), (AfterKey{first, WindowTask::quit}));
  EXPECT_EQ(after_key(first, choices, "p"), (AfterKey{first, WindowTask::save_picture}));
  EXPECT_EQ(after_key(first, choices, "f"), (AfterKey{first, WindowTask::front_view}));
  ViewState changed = pressed(first, {"plus", "Right"});
  changed.magnification = first.magnification;
  EXPECT_EQ(after_key(pressed(first, {"plus", "Right"}), choices, "r"),
            (AfterKey{changed, WindowTask::reset_view}));
}

TEST(ViewState, EscapeLeavesTheHelpFirst) {
  const ViewState first = first_view(choices);
  EXPECT_EQ(pressed(first, {"question", "Escape"}), first);
  EXPECT_EQ(after_key(first, choices, "Escape")->task, WindowTask::quit);
}

TEST(ViewState, OtherKeysMeanNothing) {
  for (const char* key : {"x", "Shift_L", "", "F9"}) {
    EXPECT_FALSE(after_key(first_view(choices), choices, key)) << key;
  }
}

TEST(ViewState, ANameMayBeBegunIfOneAloneBeginsSo) {
  const std::vector<std::string> names = {"cut", "cut back", "N1 out", "N2 out"};
  EXPECT_EQ(find_name(names, "cut"), 0U);
  EXPECT_EQ(find_name(names, "n2"), 3U);
  EXPECT_EQ(find_name(names, "N"), std::nullopt);
  EXPECT_EQ(find_name(names, "beam"), std::nullopt);
}

TEST(ViewState, SaysWhatIsShownInWords) {
  EXPECT_EQ(in_words(pressed(first_view(choices), {"Right", "2", "plus"}), choices),
            "stage 2 of 3 (cut), cracked, settlement, movements 500 x");
  EXPECT_THAT(in_words(pressed(first_view(choices), {"n"}), choices),
              ::testing::HasSubstr("no field"));
}

TEST(ViewState, EveryLetterOfTheHelpIsAKey) {
  std::set<std::string> letters;
  for (const std::string& line : key_help()) {
    if (line.size() > 1 && line[1] == ' ') letters.insert(line.substr(0, 1));
  }
  EXPECT_GE(letters.size(), 7U);
  for (const std::string& letter : letters) {
    EXPECT_TRUE(after_key(first_view(choices), choices, letter)) << letter;
  }
}

}  // namespace
}  // namespace deadshore::viz
