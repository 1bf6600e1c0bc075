// The page itself: that it tells a moved number from rounding. No outside source.

#include "tests/published/page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace deadshore::published {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

Row row(const std::string& what, double theirs, double ours) {
  return {Field::props, Certainty::memory, "a book", what, theirs, ours, 0.5, 0.5, "kN"};
}

std::string page_with(double theirs, double ours) {
  const std::vector<Row> rows = {row("strength", theirs, ours), row("weight", 7.0, 7.0)};
  return page_of(rows);
}

TEST(PublishedPage, ShowsBothValuesTheirDifferenceAndTheSource) {
  EXPECT_THAT(page_with(23.08, 23.2),
              HasSubstr("| strength | 23.08 | 23.20 | +0.12 | ±0.50 | kN | a book | from memory, "
                        "unverified |\n| weight | 7.000 | 7.000 | 0 |"));
  EXPECT_THAT(page_with(23.08, 23.2), HasSubstr("| Props | 2 | 0.24 |"));
  EXPECT_THAT(page_with(23.08, 23.2), HasSubstr("| all | 2 |"));
}

TEST(PublishedPage, SaysSoWhereMoreIsAcceptedOnOneSide) {
  Row order = row("rate", 3.0, 3.1);
  order.above = std::numeric_limits<double>::infinity();
  Row bound = row("bound", 3.0, 2.9);
  bound.above = 0.0;
  const std::vector<Row> rows = {order, bound};
  EXPECT_THAT(page_of(rows), HasSubstr("| -0.50 to any more |"));
  EXPECT_THAT(page_of(rows), HasSubstr("| -0.50 to +0 |"));
}

TEST(PublishedPage, SaysWhereOnlyRoundingIsAccepted) {
  Row same = row("same", 3.0, 3.0);
  same.below = same.above = 1e-9;
  EXPECT_THAT(page_of(std::span(&same, 1)), HasSubstr("| 3.000 | 3.000 | 0 | rounding |"));
  same.below = same.above = 0.0;
  EXPECT_THAT(page_of(std::span(&same, 1)), HasSubstr("| 3.000 | 3.000 | 0 | none |"));
}

TEST(PublishedPage, RoundingIsNoDisagreement) {
  EXPECT_THAT(disagreements(page_with(2.0, 2.001), page_with(2.0, 2.0022)), IsEmpty());
}

TEST(PublishedPage, AMovedNumberIsADisagreement) {
  const auto wrong = disagreements(page_with(2.0, 2.0), page_with(2.0, 2.01));
  ASSERT_THAT(wrong, SizeIs(1));
  EXPECT_THAT(wrong.front(), HasSubstr("| strength | 2.000 | 2.010 | +0.010 |"));
  EXPECT_THAT(disagreements(page_with(2.0, 2.0), page_with(2.0, 20.0)), SizeIs(1));
}

TEST(PublishedPage, OtherWordsOrRowsAreDisagreements) {
  const std::vector<Row> one = {row("strength", 2.0, 2.0)};
  const std::vector<Row> renamed = {row("stiffness", 2.0, 2.0)};
  EXPECT_THAT(disagreements(page_of(one), page_of(renamed)), SizeIs(1));
  EXPECT_FALSE(disagreements(page_of(one), page_with(2.0, 2.0)).empty());
}

TEST(PublishedPage, TwoComparisonsOfTheSameNameAreRefused) {
  const std::vector<Row> rows = {row("strength", 2.0, 2.0), row("strength", 3.0, 3.0)};
  EXPECT_THROW((void)page_of(rows), std::runtime_error);
}

}  // namespace
}  // namespace deadshore::published
