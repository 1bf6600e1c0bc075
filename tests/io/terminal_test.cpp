#include "io/commands/terminal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;

TEST(Broken, LinesHoldAsManyWordsAsFit) {
  EXPECT_THAT(broken("one two three four", 9), ElementsAre("one two", "three", "four"));
  EXPECT_THAT(broken("unbreakable a", 5), ElementsAre("unbreakable", "a"));
  EXPECT_THAT(broken("", 5), ElementsAre());
}

TEST(Wrapped, KeepsItsIndentWithinEightyColumns) {
  const std::string text = wrapped(std::string(50, 'a') + " " + std::string(50, 'b'), 6);
  EXPECT_EQ(text, "      " + std::string(50, 'a') + "\n      " + std::string(50, 'b') + "\n");
}

TEST(Coloured, AlarmsAreRedAndWarningsYellow) {
  EXPECT_EQ(coloured("a\n!! b\nc\n! d\n\ne\n"),
            "a\n\033[1;31m!! b\033[0m\n\033[1;31mc\033[0m\n\033[33m! d\033[0m\n\ne\n");
}

TEST(Coloured, AnAlarmInATableEndsWithItsLine) {
  EXPECT_EQ(coloured("cut  !! FALLS\nnext\n"), "\033[1;31mcut  !! FALLS\033[0m\nnext\n");
}

}  // namespace
}  // namespace deadshore::io
